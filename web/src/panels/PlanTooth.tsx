import type { ReactElement, ReactNode } from "react";
import { toggled } from "../state/plan-choices";
import { toothText } from "../values/tooth-number";
import { lengthText } from "../values/units";
import { partName, type Plan, type PlannedRest, REST_KINDS, type RestKind, type RestSide } from "../wire/plan";
import type { Fdi } from "../wire/types";
import { FindingList, toothOf } from "./PlanFindings";
import { preparationText } from "./ledger-words";
import { useBench, useDesk } from "./use-bench";
import { usePart } from "./use-part";

/** Teeth that carry or hold, and those that were told not to, from the patient's right to left. */
export function plannedTeeth(plan: Plan, order: readonly { readonly tooth: Fdi }[], notUsed: readonly Fdi[]): readonly Fdi[] {
  const named = new Set<Fdi>([...plan.rests, ...plan.clasps, ...plan.guidingPlates].map(({ tooth }) => tooth).concat(notUsed));
  return order.map(({ tooth }) => tooth).filter((tooth) => named.has(tooth));
}

/** What one tooth carries, with its measures, each changed by a click. */
export function PlanTooth({ plan, tooth }: { readonly plan: Plan; readonly tooth: Fdi }): ReactElement | null {
  const { bench, hands } = useDesk();
  const choices = useBench((s) => s.document?.plan ?? null);
  const notation = useBench((s) => s.notation);
  const units = useBench((s) => s.units);
  const row = useBench((s) => s.judged?.sheet?.abutments.find((each) => each.tooth === tooth));
  if (!choices) return null;
  const number = toothText(tooth, notation);
  const used = !choices.notUsed.includes(tooth);
  const clasp = plan.clasps.find((each) => each.tooth === tooth);
  const rests = plan.rests.filter((each) => each.tooth === tooth);
  const point = clasp?.tip ?? rests[0]?.point ?? null;
  const toLedger = (): void => {
    bench.turnTo("ledger");
    if (row) bench.openRow(`${row.tooth} ${row.side}`);
  };
  return (
    <article className={used ? "planpart" : "planpart unused"} aria-label={`Tooth ${number}`} data-plantooth={tooth}>
      <h3>
        <button className="plain toothhead" disabled={!point} onClick={() => point && hands.show(point)} title="Turn the stage to this tooth">
          <b className="num">{number}</b>
        </button>
        <button
          className="quiet right"
          aria-pressed={!used}
          onClick={() => bench.changePlan(`${number} ${used ? "carries nothing" : "carries again"}`, { ...choices, notUsed: toggled(choices.notUsed, tooth) })}
        >
          {used ? "carry nothing" : "let it carry again"}
        </button>
      </h3>
      {rests.map((rest) => (
        <RestLine key={`${rest.kind} ${rest.side}`} rest={rest} several={rests.length > 1} />
      ))}
      {used && (
        <Entry part={partName("clasp", tooth)}>
          {clasp ? (
            <>
              <button className="plain there" disabled={!clasp.tip} onClick={() => clasp.tip && hands.show(clasp.tip)} title="Turn the stage to its tip">
                {clasp.name}
              </button>{" "}
              <span className="num">
                tip {lengthText(clasp.gaugeMm, units)} {clasp.surface}
              </span>{" "}
              <span className="soft">
                {clasp.material.replaceAll("-", " ")} · {clasp.answer}
                {clasp.chosen ? " · chosen" : ""}
                {clasp.byHand ? " · arm shaped by hand" : ""}
              </span>
              {!clasp.retentive && <span className="line soft">No retentive arm is drawn: its tip has no place on the tooth as it is.</span>}
              {clasp.preparations.length > 0 && (
                <span className="line soft num">{clasp.preparations.map((each) => preparationText(each, units)).join("; ")}</span>
              )}
            </>
          ) : (
            <span className="soft">no clasp</span>
          )}
          <span className="line">
            <button className="plain word" onClick={toLedger} title="The ledger says which families serve here, and why not">
              another clasp
            </button>{" "}
            <button
              className="plain word"
              aria-pressed={choices.unclasped.includes(tooth)}
              onClick={() => bench.changePlan(`clasp of ${number}`, { ...choices, unclasped: toggled(choices.unclasped, tooth) })}
            >
              {choices.unclasped.includes(tooth) ? "with a clasp again" : "without a clasp"}
            </button>
          </span>
        </Entry>
      )}
      {plan.guidingPlates
        .filter((each) => each.tooth === tooth)
        .map(({ side, heightMm, wantedHeightMm }) => (
          <Entry key={side} part={partName("plate", tooth, side)}>
            guiding plate {side}: plane there <b>{lengthText(heightMm, units)}</b>, wanted {lengthText(wantedHeightMm, units)}
          </Entry>
        ))}
      {plan.minorConnectors
        .filter((each) => each.tooth === tooth)
        .map(({ side, lengthMm }) => (
          <Entry key={side} part={partName("minor", tooth, side)}>
            minor connector {side} <b>{lengthText(lengthMm, units)}</b>
          </Entry>
        ))}
      {plan.indirectRetainers
        .filter((each) => each.tooth === tooth)
        .map(({ side, distanceMm, ratio }) => (
          <p key={side} className="partline num">
            indirect retainer {side}: <b>{lengthText(distanceMm, units)}</b> from the fulcrum line, {ratio.toFixed(2)} of the base end
          </p>
        ))}
      <FindingList findings={plan.findings.filter((each) => toothOf(each) === tooth)} />
    </article>
  );
}

/** One part, which stands out on the cast and in the drawing while it is spoken of. */
function Entry({ part, title, children }: { readonly part: string; readonly title?: string; readonly children: ReactNode }): ReactElement {
  const entry = usePart<HTMLDivElement>(part, "partline num");
  return (
    <div {...entry} title={title}>
      {children}
    </div>
  );
}

const SIDES: readonly RestSide[] = ["mesial", "distal"];

/** One rest: kind and side are chosen; several of a tooth become the one that is chosen. */
function RestLine({ rest, several }: { readonly rest: PlannedRest; readonly several: boolean }): ReactElement | null {
  const { bench, hands } = useDesk();
  const choices = useBench((s) => s.document?.plan ?? null);
  const notation = useBench((s) => s.notation);
  const units = useBench((s) => s.units);
  if (!choices) return null;
  const { tooth, kind, side, lengthMm, widthMm, depthMm, because, point } = rest;
  const number = toothText(tooth, notation);
  const chosen = choices.rests[tooth];
  const set = (to: RestKind, at: RestSide): void =>
    bench.changePlan(`rest of ${number}`, { ...choices, rests: { ...choices.rests, [tooth]: { kind: to, side: to === "cingulum" ? "lingual" : at === "lingual" ? "mesial" : at } } });
  const back = (): void =>
    bench.changePlan(`rest of ${number} as proposed`, { ...choices, rests: Object.fromEntries(Object.entries(choices.rests).filter(([key]) => key !== String(tooth))) });
  return (
    <Entry part={partName("rest", tooth, side)} title={because}>
      <button className="plain there" onClick={() => hands.show(point)} title={`Turn the stage to the rest. ${because}`}>
        rest
      </button>{" "}
      <select aria-label={`Kind of rest of ${number}`} value={kind} onChange={(event) => set(event.target.value as RestKind, side)}>
        {REST_KINDS.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>{" "}
      {kind !== "cingulum" && (
        <select aria-label={`Side of the rest of ${number}`} value={side} onChange={(event) => set(kind, event.target.value as RestSide)}>
          {SIDES.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      )}{" "}
      {chosen && !several && (
        <button className="plain word" onClick={back}>
          as proposed
        </button>
      )}
      <span className="line num">
        {lengthText(lengthMm, units === "in" ? "in" : "mm")} × {lengthText(widthMm, units === "in" ? "in" : "mm")}, seat {lengthText(depthMm, units === "in" ? "in" : "mm")} deep
      </span>
    </Entry>
  );
}
