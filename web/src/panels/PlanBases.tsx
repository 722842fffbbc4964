import type { ReactElement } from "react";
import { toothText } from "../values/tooth-number";
import { partName, type Plan } from "../wire/plan";
import { useBench, useDesk } from "./use-bench";

/** The bases and the teeth that they carry; each missing tooth is replaced or left by a click. */
export function PlanBases({ plan }: { readonly plan: Plan }): ReactElement | null {
  const { bench, hands } = useDesk();
  const notation = useBench((s) => s.notation);
  const spaces = useBench((s) => s.teeth?.spaces ?? null);
  if (!spaces) return null;
  return (
    <>
      {spaces
        .filter(({ closed }) => !closed)
        .map(({ missing, positions }) => {
          const base = plan.bases.find((each) => each.missing.some((tooth) => missing.includes(tooth)));
          const part = partName("base", missing.join("–"));
          const stop = base?.tissueStop ?? null;
          const at = positions[0]?.at ?? null;
          return (
            <article
              key={part}
              className={base ? "planpart" : "planpart unused"}
              aria-label={`Base ${missing.join(", ")}`}
              onMouseEnter={() => bench.speakOf(part)}
              onMouseLeave={() => bench.speakOf(null)}
            >
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
        })}
    </>
  );
}
