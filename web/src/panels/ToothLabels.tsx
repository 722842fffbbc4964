import type { ReactElement } from "react";
import { placesOf, toothText } from "../values/tooth-number";
import { useBench, useDesk } from "./use-bench";

/** The numbers of the teeth over the cast. The stage moves them. */
export function ToothNumbers(): ReactElement | null {
  const teeth = useBench((s) => (s.page === "profile" ? null : s.teeth));
  const notation = useBench((s) => s.notation);
  const chosen = useBench((s) => s.tooth);
  if (!teeth) return null;
  return (
    <>
      {teeth.teeth.map(({ tooth }) => (
        <span key={tooth} className={tooth === chosen ? "toothlabel num on" : "toothlabel num"} data-tooth={tooth}>
          {toothText(tooth, notation)}
        </span>
      ))}
    </>
  );
}

/** A place that is no tooth yet: shall it be one, and which? */
export function AddTooth(): ReactElement | null {
  const { bench } = useDesk();
  const adding = useBench((s) => s.adding);
  const jaw = useBench((s) => s.cast?.jaw ?? null);
  const notation = useBench((s) => s.notation);
  if (!adding || !jaw) return null;
  const add = (): void => bench.addTooth(adding.tooth, adding);
  return (
    <div className="addtooth num" role="group" aria-label="Tooth here">
      <label>
        tooth{" "}
        <select value={adding.tooth} onChange={(event) => bench.store.set({ adding: { ...adding, tooth: Number(event.target.value) } })}>
          {placesOf(jaw).map((each) => (
            <option key={each} value={each}>
              {toothText(each, notation)}
            </option>
          ))}
        </select>
      </label>
      <button onClick={add} autoFocus>
        add
      </button>
    </div>
  );
}
