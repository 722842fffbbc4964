import type { Profile, SectionPoint } from "../wire/types";

/** The window of the section that is drawn: which lengths, and how they fall on the paper. */
export interface ProfileFrame {
  readonly sFrom: number;
  readonly hTo: number;
  /** Paper units a millimetre. */
  readonly scale: number;
  /** Across the drawn rod [mm]. */
  readonly shankMm: number;
  readonly x: (s: number) => number;
  readonly y: (h: number) => number;
}

/** The paper, in its own units. */
export const WIDTH = 332;
export const HEIGHT = 268;
const WIDEST_PX_PER_MM = 27;
const MARGIN_MM = 1.6;

/** Shows the place read, the rod and the survey line, with a margin, as large as the paper allows. */
export function profileFrame({ place, rod, surveyLine }: Profile, shankRadiusMm: number): ProfileFrame {
  const s = [place[0], rod.s, ...(surveyLine ? [surveyLine[0]] : []), ...(rod.contact ? [rod.contact[0]] : [])];
  const h = [place[1], ...(surveyLine ? [surveyLine[1]] : []), ...(rod.contact ? [rod.contact[1]] : [])];
  const span = (values: number[]): readonly [number, number] => [Math.min(...values) - MARGIN_MM, Math.max(...values) + MARGIN_MM];
  const [s0, s1] = span(s);
  const [h0, h1] = span(h);
  const scale = Math.min(WIDEST_PX_PER_MM, WIDTH / (s1 - s0), HEIGHT / (h1 - h0));
  // More tooth than air: the rod stands right of the middle, and its words further right.
  const sFrom = (s0 + s1) / 2 - (0.5 * WIDTH) / scale;
  const hTo = (h0 + h1) / 2 + HEIGHT / scale / 2;
  return { sFrom, hTo, scale, shankMm: 2 * shankRadiusMm, x: (at) => (at - sFrom) * scale, y: (at) => (hTo - at) * scale };
}

/** The outline as an SVG path; an open one is closed far below, so that it can be filled. */
export function outline(line: readonly SectionPoint[], { x, y }: ProfileFrame, filled: boolean): string {
  const [first, last] = [line[0], line.at(-1)];
  if (!first || !last) return "";
  const path = line.map(([s, h], i) => `${i === 0 ? "M" : "L"}${x(s).toFixed(1)} ${y(h).toFixed(1)}`).join("");
  if (!filled) return path;
  const closed = Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-6;
  const deep = Math.min(...line.map(([, h]) => h)) - 40;
  return closed ? `${path}Z` : `${path}L${x(last[0]).toFixed(1)} ${y(deep).toFixed(1)}L${x(first[0]).toFixed(1)} ${y(deep).toFixed(1)}Z`;
}

/** The millimetres of the grid that fall within a length of paper. */
export function wholeMm(from: number, to: number): number[] {
  const lines: number[] = [];
  for (let k = Math.ceil(from); k <= to; k++) lines.push(k);
  return lines;
}
