import type { ReactElement } from "react";
import { type IndirectChoice, withIndirect } from "../state/plan-choices";
import { toothText } from "../values/tooth-number";
import { lengthText } from "../values/units";
import { partName, type Plan } from "../wire/plan";
import type { Fdi } from "../wire/types";
import { useBench, useDesk } from "./use-bench";

/** How a tooth carries an indirect retainer as a rule: a front tooth on its cingulum, a back tooth in its mesial fossa. */
const usual = (tooth: Fdi): IndirectChoice => (tooth % 10 <= 3 ? { kind: "cingulum", side: "lingual" } : { kind: "occlusal", side: "mesial" });

/** What keeps the bases from lifting: each indirect retainer with its lever, taken away or added by a click. */
export function PlanRetainers({ plan }: { readonly plan: Plan }): ReactElement | null {
  const { bench, hands } = useDesk();
  const choices = useBench((s) => s.document?.plan ?? null);
  const notation = useBench((s) => s.notation);
  const units = useBench((s) => s.units);
  const teeth = useBench((s) => s.teeth?.teeth ?? null);
  if (!choices || !teeth) return null;
  const { indirect = {} } = choices;
  if (!plan.fulcrum && Object.keys(indirect).length === 0) return null;
  const { indirectRetainers: retainers } = plan;
  const set = (tooth: Fdi, to: IndirectChoice | "none" | null): void =>
    bench.changePlan(`indirect retainer on ${toothText(tooth, notation)}`, { ...choices, indirect: withIndirect(indirect, tooth, to) });
  const away = Object.entries(indirect).flatMap(([tooth, to]) => (to === "none" ? [Number(tooth)] : []));
  const free = teeth.filter(({ tooth }) => !plan.rests.some((rest) => rest.tooth === tooth) && !choices.notUsed.includes(tooth));
  return (
    <article className="planpart" aria-label="Indirect retainers" data-retainers={retainers.map(({ tooth }) => tooth).join(" ")}>
      <h3>Indirect retainers</h3>
      {retainers.length === 0 && <p className="soft">None.</p>}
      {retainers.map(({ tooth, side, distanceMm, ratio }) => {
        const point = plan.rests.find((rest) => rest.tooth === tooth && rest.side === side)?.point ?? null;
        return (
          <p key={`${tooth} ${side}`} className="num" onMouseEnter={() => bench.speakOf(partName("rest", tooth, side))} onMouseLeave={() => bench.speakOf(null)}>
            <button className="plain there" disabled={!point} onClick={() => point && hands.show(point)} title="Turn the stage to it">
              <b>{toothText(tooth, notation)}</b>
            </button>{" "}
            {lengthText(distanceMm, units === "in" ? "in" : "mm", 1)} from the fulcrum line, {ratio.toFixed(2)} of the base end{" "}
            <button className="plain word" onClick={() => set(tooth, indirect[tooth] ? null : "none")}>
              {indirect[tooth] ? "as proposed" : "take it away"}
            </button>
          </p>
        );
      })}
      {away.map((tooth) => (
        <p key={tooth} className="soft num">
          {toothText(tooth, notation)} taken away{" "}
          <button className="plain word" onClick={() => set(tooth, null)}>
            as proposed
          </button>
        </p>
      ))}
      {free.length > 0 && (
        <p>
          <select aria-label="Add an indirect retainer" value="" onChange={(event) => set(Number(event.target.value), usual(Number(event.target.value)))}>
            <option value="">add one on …</option>
            {free.map(({ tooth }) => (
              <option key={tooth} value={tooth}>
                {toothText(tooth, notation)}
              </option>
            ))}
          </select>
        </p>
      )}
    </article>
  );
}
