import { type ReactElement, useState } from "react";
import { isNumber } from "../state/ledger";
import { toothText, worded } from "../values/tooth-number";
import type { PlainFinding } from "../wire/abutments";
import type { Plan, PlanFinding } from "../wire/plan";
import type { Fdi } from "../wire/types";
import { WhereText } from "./LedgerFamily";
import { limitText, toldText, VERDICT_SIGNS } from "./ledger-words";
import { useBench } from "./use-bench";

const ORDER = ["not met", "too close to call", "not known", "met"] as const;
const sorted = (findings: readonly PlanFinding[]): PlanFinding[] => [...findings].sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict));

/** The tooth that a finding is about; null where it is about the whole. */
export const toothOf = ({ place: { pieces } }: PlanFinding): Fdi | null => {
  const [words, tooth] = pieces;
  return words === "tooth " && typeof tooth === "number" ? tooth : null;
};

/** How many rules are not met or open, and where: a click goes to the tooth. Rules of the whole are told at once. */
export function PlanVerdict({ plan, listed }: { readonly plan: Plan; readonly listed: readonly Fdi[] }): ReactElement {
  const notation = useBench((s) => s.notation);
  const against = plan.findings.filter(({ verdict, putRight }) => verdict !== "met" && !putRight);
  const righted = plan.findings.filter(({ putRight }) => putRight).length;
  const at = (tooth: Fdi, verdict: PlanFinding["verdict"]): number => against.filter((each) => toothOf(each) === tooth && each.verdict === verdict).length;
  const goTo = (tooth: Fdi): void => window.document.querySelector(`[data-plantooth="${tooth}"]`)?.scrollIntoView({ block: "start" });
  return (
    <div className="planfindings">
      <h3>{against.length === 0 ? "Every rule asked is met" : `${against.length} of ${plan.findings.length} rules not met or open`}</h3>
      {righted > 0 && <p className="soft">{righted} more {righted === 1 ? "is" : "are"} put right in the mouth first</p>}
      <div className="chips num">
        {listed.map((tooth) => {
          const signs = (["not met", "too close to call", "not known"] as const).filter((each) => at(tooth, each) > 0);
          return (
            <button key={tooth} onClick={() => goTo(tooth)} title={signs.map((each) => `${at(tooth, each)} ${each}`).join(", ") || "all met"}>
              <b>{toothText(tooth, notation)}</b> {signs.length === 0 ? "✓" : signs.map((each) => `${VERDICT_SIGNS[each]}${at(tooth, each)}`).join(" ")}
            </button>
          );
        })}
      </div>
      <FindingList findings={plan.findings.filter((each) => !listed.includes(toothOf(each) ?? 0))} />
      {plan.questionPieces.length > 0 && (
        <>
          <h3>Not known, and could change the plan</h3>
          <ul className="lines questions">
            {plan.questionPieces.map((each) => (
              <li key={each.join("")}>{worded(each, notation)}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** What stands against a part first, each with number, limit and source; what is met folded away. */
export function FindingList({ findings }: { readonly findings: readonly PlanFinding[] }): ReactElement {
  const [all, setAll] = useState(false);
  const units = useBench((s) => s.units);
  const righted = findings.filter(({ putRight }) => putRight);
  const against = findings.filter(({ verdict, putRight }) => verdict !== "met" && !putRight);
  const met = findings.filter(({ verdict, putRight }) => verdict === "met" && !putRight);
  return (
    <>
      <ul className="findings num">
        {sorted(all ? [...against, ...met] : against).map((finding, i) => (
          <FindingLine key={`${finding.rule} ${finding.place.words} ${i}`} finding={finding} />
        ))}
      </ul>
      {righted.length > 0 && (
        <>
          <p className="soft">Put right by the mouth preparation</p>
          <ul className="findings num putright">
            {sorted(righted).map((finding, i) => (
              <FindingLine
                key={`${finding.rule} ${finding.place.words} ${i}`}
                finding={finding}
                beside={<span className="soft">→ {toldText(finding.putRight!.after, units)} by step {finding.putRight!.step} </span>}
              />
            ))}
          </ul>
        </>
      )}
      {met.length > 0 && (
        <button className="plain word metfold" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? "hide" : "show"} {met.length === 1 ? "the rule" : `the ${met.length} rules`} met
        </button>
      )}
    </>
  );
}

/** One rule: its sign, the number against its limit, its place; who says so by a click. */
export function FindingLine(props: {
  readonly finding: PlainFinding;
  /** False where it stands at its place already. */
  readonly placed?: boolean;
  readonly beside?: ReactElement | null;
}): ReactElement {
  const { finding, placed = true, beside = null } = props;
  const { what, place, reading, limit, verdict, source, standing } = finding;
  const units = useBench((s) => s.units);
  const [open, setOpen] = useState(false);
  const told = toldText(reading, units);
  return (
    <li data-verdict={verdict}>
      <i className="sign" title={verdict}>
        {VERDICT_SIGNS[verdict]}
      </i>
      <span>
        <button className="plain" aria-expanded={open} onClick={() => setOpen(!open)} title="Who says so">
          {what} {isNumber(reading) ? <b>{told}</b> : told}, wanted {limitText(limit, units)}
        </button>{" "}
        {beside}
        {placed && <WhereText place={place} />}
        {open && (
          <span className="line soft">
            {verdict} · {standing}
            {source && !source.startsWith("no published source") ? `: ${source}` : ""}
          </span>
        )}
      </span>
    </li>
  );
}
