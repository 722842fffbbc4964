import type { ReactElement } from "react";
import { kindsInTheWay, planInTheWay } from "../state/searching";
import { degreesText } from "../values/units";
import type { ZoneKind } from "../wire/path";
import { useBench, useDesk } from "./use-bench";

const WORDS: Readonly<Record<ZoneKind, string>> = {
  base: "bases",
  "lingual-strip": "lingual strip",
  palate: "palate",
  "facial-strip": "facial strips",
  "major-connector": "major connector",
  "bar-arm": "bar arms",
};

/** What a search counts as in the way of rigid parts: what anatomy suggests, or the parts of the plan; each kind can be left out. */
export function InTheWay(props: { readonly otherwise: boolean; readonly again: () => void }): ReactElement | null {
  const { otherwise, again } = props;
  const { bench } = useDesk();
  const cast = useBench((s) => s.cast);
  const planned = useBench((s) => s.planned);
  const inTheWay = useBench((s) => s.inTheWay);
  const plan = useBench((s) => planInTheWay(s));
  if (!cast) return null;
  return (
    <fieldset className="intheway" data-testid="in-the-way" data-by={plan ? "plan" : "anatomy"}>
      <legend>counted as in the way</legend>
      {kindsInTheWay(plan, cast.jaw).map((kind) => (
        <label key={kind}>
          <input type="checkbox" checked={!inTheWay.leftOut.includes(kind)} onChange={(event) => bench.searching.count(kind, event.target.checked)} /> {WORDS[kind]}
        </label>
      ))}
      {planned?.sheet && (plan || !inTheWay.byPlan) && (
        <label className="byplan">
          <input type="checkbox" checked={inTheWay.byPlan} onChange={(event) => bench.searching.goByPlan(event.target.checked)} /> the parts of the plan at{" "}
          {degreesText(planned.tilt.anterior)} / {degreesText(planned.tilt.right)}
        </label>
      )}
      {otherwise && (
        <button className="quiet" onClick={again}>
          the map counted otherwise: try every tilt again
        </button>
      )}
    </fieldset>
  );
}
