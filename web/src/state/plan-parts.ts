import { partName, type Plan, type PlanLine } from "../wire/plan";
import type { ScanVec } from "../values/vec";
import type { Cut } from "../wire/preparation";
import type { BenchState } from "./bench-state";

const middle = (line: PlanLine | null): ScanVec | null => line?.points[Math.floor(line.points.length / 2)] ?? null;

/** Where to turn the stage for a part, by its name; null for a part that lies all over the arch, or is not there. */
export function partPlace(plan: Plan, part: string): ScanVec | null {
  for (const { tooth, side, point } of plan.rests) if (partName("rest", tooth, side) === part) return point;
  for (const { tooth, tip, retentive, reciprocal } of plan.clasps) if (partName("clasp", tooth) === part) return tip ?? middle(retentive ?? reciprocal);
  for (const { tooth, side, line } of plan.guidingPlates) if (partName("plate", tooth, side) === part) return middle(line);
  for (const { tooth, side, line } of plan.minorConnectors) if (partName("minor", tooth, side) === part) return middle(line);
  for (const { missing, teeth } of plan.bases) if (partName("base", missing.join("–")) === part) return teeth[0]?.point ?? null;
  return null;
}

/** The part that stands out: that pointed at, else that chosen. */
export const partShown = ({ part, chosenPart }: BenchState): string | null => part ?? chosenPart;

/** The cut of the mouth preparation that lies on the cast: that pointed at in the list, else that chosen there. */
export function cutShown({ page, planned, part, step }: BenchState): Cut | null {
  if (page !== "plan") return null;
  const pointed = /^cut (\d+)$/.exec(part ?? "")?.[1];
  const number = pointed === undefined ? step : Number(pointed);
  return planned?.sheet?.cuts.find((each) => each.step === number) ?? null;
}
