/** Sections of crowns as paths of an SVG. Pieces are four numbers each: outward and along the path at both ends [mm]. */

/** How much of the crown is shown [mm]: a seat is a large cut, the others are small. */
export const SEAT_WINDOW_MM = 7;
export const WINDOW_MM = 3.6;
/** The place of the cut, in shares of the window from its left: the tooth is there. */
const INWARD = 0.62;

export interface CutFrame {
  readonly x: (out: number) => number;
  readonly y: (up: number) => number;
}

/** @param size of the square picture */
export function cutFrame(windowMm: number, size: number): CutFrame {
  const scale = size / windowMm;
  return { x: (out) => INWARD * size + out * scale, y: (up) => size / 2 - up * scale };
}

const at = ({ x, y }: CutFrame, pieces: readonly number[], i: number): string => `${x(pieces[i]!).toFixed(1)} ${y(pieces[i + 1]!).toFixed(1)}`;

/** The line of a crown. */
export function crownLine(pieces: readonly number[], frame: CutFrame): string {
  let path = "";
  for (let i = 0; i + 3 < pieces.length; i += 4) path += `M${at(frame, pieces, i)}L${at(frame, pieces, i + 2)}`;
  return path;
}

/** What is taken: the area between each piece and where it comes to lie. */
export function taken(before: readonly number[], after: readonly number[], frame: CutFrame): string {
  let path = "";
  for (let i = 0; i + 3 < before.length; i += 4) {
    if ([0, 1, 2, 3].every((k) => before[i + k] === after[i + k])) continue;
    path += `M${at(frame, before, i)}L${at(frame, before, i + 2)}L${at(frame, after, i + 2)}L${at(frame, after, i)}Z`;
  }
  return path;
}
