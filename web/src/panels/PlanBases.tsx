import type { ReactElement } from "react";
import { toothText } from "../values/tooth-number";
import { partName, type Plan } from "../wire/plan";
import type { FoundSpace } from "../wire/types";
import { useBench, useDesk } from "./use-bench";
import { usePart } from "./use-part";

/** The bases and the teeth that they carry; each missing tooth is replaced or left by a click. */
export function PlanBases({ plan }: { readonly plan: Plan }): ReactElement | null {
  const spaces = useBench((s) => s.teeth?.spaces ?? null);
  if (!spaces) return null;
  return (
    <>
      {spaces
        .filter(({ closed }) => !closed)
        .map((space) => (
          <BaseEntry key={space.missing.join("–")} plan={plan} space={space} />
        ))}
    </>
  );
}

function BaseEntry({ plan, space }: { readonly plan: Plan; readonly space: FoundSpace }): ReactElement {
  const { bench, hands } = useDesk();
  const notation = useBench((s) => s.notation);
  const { missing, positions } = space;
  const base = plan.bases.find((each) => each.missing.some((tooth) => missing.includes(tooth)));
  const entry = usePart<HTMLElement>(partName("base", (base?.missing ?? missing).join("–")), base ? "planpart" : "planpart unused");
  const stop = base?.tissueStop ?? null;
  const at = positions[0]?.at ?? null;
  return (
    <article {...entry} aria-label={`Base ${missing.map((tooth) => toothText(tooth, notation)).join(", ")}`}>
      <h3>
        <button className="plain" disabled={!at} onClick={() => at && hands.show(at)} title="Turn the stage to this space">
          {base ? `Base ${base.freeEnd ? "of a free end" : "of a bounded space"}` : "Space left open"}
        </button>
      </h3>
      <p className="num measures">
        {base && (
          <span>
            area <b>{(base.areaMm2 / 100).toFixed(1)} cm²</b>
          </span>
        )}
        {stop && (
          <button className="plain there" onClick={() => hands.show(stop)} title="Turn the stage to the tissue stop">
            tissue stop
          </button>
        )}
      </p>
      <p className="replaced">
        {missing.map((tooth) => {
          const there = plan.replaced.includes(tooth);
          return (
            <button
              key={tooth}
              className="num"
              aria-pressed={there}
              title={there ? "Leave it unreplaced" : "Replace it"}
              onClick={() => bench.charting.tooth(tooth, "replacement", { replace: there ? "no" : "yes" })}
            >
              {toothText(tooth, notation)} {there ? "replaced" : "left"}
            </button>
          );
        })}
      </p>
    </article>
  );
}
