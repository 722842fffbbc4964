import type { ReactElement } from "react";
import type { Page } from "../state/bench-state";
import { ArchPage } from "./ArchPage";
import { LedgerPage } from "./LedgerPage";
import { Marks } from "./Marks";
import { PlanPage } from "./PlanPage";
import { ProfilePanel } from "./ProfilePanel";
import { ScanReport } from "./ScanReport";
import { useBench, useDesk } from "./use-bench";

const PAGES: readonly { page: Page; word: string }[] = [
  { page: "profile", word: "Profile" },
  { page: "arch", word: "Arch" },
  { page: "ledger", word: "Ledger" },
  { page: "plan", word: "Plan" },
];

/** Two pages on one stand. */
export function PageTurn(): ReactElement | null {
  const { bench } = useDesk();
  const open = useBench((s) => s.page);
  const cast = useBench((s) => s.cast !== null);
  if (!cast) return null;
  return (
    <div className="pageturn" role="tablist" aria-label="Page">
      {PAGES.map(({ page, word }) => (
        <button key={page} role="tab" aria-selected={open === page} title={`${word} (T turns the page)`} onClick={() => bench.turnTo(page)}>
          {word}
        </button>
      ))}
    </div>
  );
}

export function Pages(): ReactElement {
  const page = useBench((s) => s.page);
  if (page === "ledger") return <LedgerPage />;
  if (page === "plan") return <PlanPage />;
  return page === "arch" ? (
    <>
      <ArchPage />
      <Marks />
    </>
  ) : (
    <>
      <ProfilePanel />
      <Marks />
      <ScanReport />
    </>
  );
}
