import type { ReactElement } from "react";
import { tilt, type Tilt } from "../values/tilt";
import { degreesText } from "../values/units";
import { type Factor, FACTORS, figureColumn, type MapTilt, type PathMap } from "../wire/path";

/** What each figure is; less is better. */
const FIGURES: Readonly<Record<Factor, string>> = {
  guiding: "enamel for planes",
  retention: "short of the gauge",
  interference: "in the way",
  appearance: "shows",
  tilt: "total tilt",
};

/** The tilt of a map that lies nearest to another. */
export function nearestTilt(map: PathMap, to: Tilt): MapTilt | null {
  let best: MapTilt | null = null;
  let least = Infinity;
  for (const one of map.tilts) {
    const distance = Math.hypot(one[0] - to.anterior, one[1] - to.right);
    if (distance < least) [best, least] = [one, distance];
  }
  return best;
}

/** The numbers of the tilt under the pointer, or of the cast's own where nothing is pointed at. */
export function TiltNumbers(props: { readonly map: PathMap; readonly at: Tilt; readonly pointed: boolean }): ReactElement | null {
  const { map, at, pointed } = props;
  const row = nearestTilt(map, at);
  if (!row) return null;
  const own = tilt(row[0], row[1]);
  return (
    <dl className="tiltnumbers num" data-testid="tilt-numbers" data-pointed={pointed} aria-label="Numbers of this tilt; less is better but for the worth">
      <dt>
        {pointed ? "here" : "dot"} {degreesText(own.anterior)} / {degreesText(own.right)}
      </dt>
      <dd>
        worth <b>{row[2].toFixed(2)}</b>
      </dd>
      {FACTORS.filter((factor) => factor !== "tilt").map((factor) => (
        <Figure key={factor} name={FIGURES[factor]} mm={row[figureColumn(factor)] ?? 0} />
      ))}
    </dl>
  );
}

function Figure({ name, mm }: { readonly name: string; readonly mm: number }): ReactElement {
  return (
    <>
      <dt>{name}</dt>
      <dd>{mm.toFixed(2)} mm</dd>
    </>
  );
}
