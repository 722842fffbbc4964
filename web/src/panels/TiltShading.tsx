import type { ReactElement } from "react";
import { type Jaw, mapPlace, tilt } from "../values/tilt";
import { FACTORS, type Factor, type PathMap } from "../wire/path";

export type ShadedBy = "all" | Factor;

/** How good each tilt is, as a wash over the tilt map: the darker the better. */
export function TiltShading(props: { readonly map: PathMap; readonly by: ShadedBy; readonly scale: number; readonly jaw: Jaw | null }): ReactElement {
  const { map, by, scale, jaw } = props;
  const column = by === "all" ? 2 : 3 + FACTORS.indexOf(by);
  const values = map.tilts.map((one) => one[column] ?? 0);
  const least = Math.min(...values);
  const most = Math.max(...values);
  const side = map.stepDeg * scale + 0.4;
  return (
    <g className="shading" data-testid="shading" data-tilts={map.tilts.length}>
      {map.tilts.map(([anterior, right], i) => {
        const share = most > least ? ((values[i] ?? least) - least) / (most - least) : 0;
        const at = mapPlace(tilt(anterior, right), jaw);
        return (
          <rect
            key={`${anterior} ${right}`}
            x={at.x * scale - side / 2}
            y={-1 * at.y * scale - side / 2}
            width={side}
            height={side}
            fillOpacity={(share * share * 0.85).toFixed(3)}
          >
            <title>{`anterior ${anterior.toFixed(1)}°, right ${right.toFixed(1)}°: ${(values[i] ?? 0).toFixed(2)}`}</title>
          </rect>
        );
      })}
    </g>
  );
}
