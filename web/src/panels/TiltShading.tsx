import type { ReactElement } from "react";
import { contour, type Lattice } from "../values/contours";
import { type Jaw, mapPlace, tilt } from "../values/tilt";
import { type Factor, type PathMap, worthColumn } from "../wire/path";

export type ShadedBy = "all" | Factor;

/** Contours stand at these shares of the way from the least to the greatest worth. */
const LEVELS = [0.2, 0.4, 0.6, 0.8, 0.95];

/** How good each tilt is, as a wash over the tilt map with contours: the darker the better, the heaviest line about the best. */
export function TiltShading(props: { readonly map: PathMap; readonly by: ShadedBy; readonly scale: number; readonly jaw: Jaw | null }): ReactElement {
  const { map, by, scale, jaw } = props;
  const column = worthColumn(by);
  const values = map.tilts.map((one) => one[column] ?? 0);
  const least = Math.min(...values);
  const most = Math.max(...values);
  const side = map.stepDeg * scale + 0.4;
  const lattice = latticeOf(map, column);
  const at = (anterior: number, right: number): readonly [number, number] => {
    const place = mapPlace(tilt(anterior, right), jaw);
    return [place.x * scale, -1 * place.y * scale];
  };
  const text = ([anterior, right]: readonly [number, number]): string => at(anterior, right).map((v) => v.toFixed(1)).join(" ");
  return (
    <g className="shading" data-testid="shading" data-tilts={map.tilts.length}>
      {map.tilts.map(([anterior, right], i) => {
        const share = most > least ? ((values[i] ?? least) - least) / (most - least) : 0;
        const [x, y] = at(anterior, right);
        return <rect key={`${anterior} ${right}`} x={x - side / 2} y={y - side / 2} width={side} height={side} fillOpacity={(share * share * 0.85).toFixed(3)} />;
      })}
      {most > least &&
        LEVELS.map((level) => {
          const pieces = contour(lattice, least + level * (most - least));
          return <path key={level} className={level === LEVELS.at(-1) ? "contour top" : "contour"} d={pieces.map(([a, b]) => `M${text(a)}L${text(b)}`).join("")} />;
        })}
    </g>
  );
}

function latticeOf(map: PathMap, column: number): Lattice {
  const step = map.stepDeg;
  const values = new Map(map.tilts.map((one) => [`${Math.round(one[0] / step)} ${Math.round(one[1] / step)}`, one[column]]));
  return { step, reach: Math.ceil(map.coneDeg / step), at: (i, j) => values.get(`${i} ${j}`) };
}
