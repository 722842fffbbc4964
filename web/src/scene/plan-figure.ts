import { add, cross, length, type ScanVec, sub, times, unit } from "../values/vec";
import { partName, type Plan, type PlanLine } from "../wire/plan";
import type { Cut } from "../wire/preparation";
import type { Fdi } from "../wire/types";
import type { CastBody } from "./cast-body";
import { beads, chords, dashes, type Lay, laidChord, pieces } from "./hatching";

/** How a part is drawn: its line and hatching. The drawing on paper has lines of its own kinds too, as it has no depth. */
export type PlanLook = "base" | "mesh" | "connector" | "finish" | "minor" | "plate" | "rest" | "retentive" | "reciprocal" | "stop" | "torus" | "fulcrum" | "replaced" | "cut";

/** One part as drawn: ends of pieces of line, six numbers a piece; a piece without length is a dot. */
export interface PlanFigure {
  /** Which part it is, as the list of parts names it; empty: tissue of the mouth, no part. */
  readonly part: string;
  readonly look: PlanLook;
  readonly line: readonly number[];
  readonly hatch: readonly number[];
  readonly dots: readonly number[];
}

/** Where a border can be taken hold of, so far apart [mm]. */
export const KNOT_MM = 5;
const SAMPLE_MM = 0.8;
/** So near to its line a part is meant [mm]. */
const ON_LINE_MM = 0.9;
/** A ray starts so far above the surface [mm]. */
const ABOVE_MM = 25;

const dot = (point: ScanVec): number[] => [...point, ...point];

/** Every part of a plan as lines on the cast. */
export function planFigures(plan: Plan, front: ScanVec, body: Pick<CastBody, "hit" | "nearest">): PlanFigure[] {
  const up = plan.axis;
  const right = unit(cross(front, up));
  const ahead = cross(up, right);
  const slant = unit(add(right, ahead));
  const counter = unit(sub(ahead, right));
  // From above a ridge, a palate and a crown are seen; a lingual wall is not.
  const fromAbove: Lay = (near) => body.hit(add(near, times(up, ABOVE_MM)), times(up, -1))?.point ?? near;
  const nearest: Lay = (near) => body.nearest(near).point;
  const figures: PlanFigure[] = [];
  const put = (part: string, look: PlanLook, line: readonly number[], hatch: readonly number[] = [], dots: readonly number[] = []): void => {
    figures.push({ part, look, line, hatch, dots });
  };
  const whole = ({ points, closed }: PlanLine): number[] => pieces(points, closed);
  const hatched = (loops: readonly (readonly ScanVec[])[], along: ScanVec, across: ScanVec, step: number, lay: Lay): number[] =>
    chords(loops, along, across, step).flatMap((chord) => pieces(laidChord(chord, SAMPLE_MM, lay), false));

  for (const base of plan.bases) {
    const part = partName("base", base.missing.join("–"));
    const loop = [base.outline.points];
    const stipple = chords(loop, slant, counter, 1.8).flatMap((chord) => laidChord(chord, 1.8, fromAbove).slice(1, -1).flatMap(dot));
    put(part, "base", dashes(base.outline.points, true, 2, 0.8), [], stipple);
    const mesh = [base.connector.points];
    put(part, "mesh", whole(base.connector), [...hatched(mesh, slant, counter, 1.6, fromAbove), ...hatched(mesh, counter, slant, 1.6, fromAbove)]);
    put(part, "finish", whole(base.finishLine));
    if (base.tissueStop) put(part, "stop", square(base.tissueStop, right, ahead, fromAbove));
    for (const { point } of base.teeth) put(part, "replaced", dashes(circle(point, right, ahead, 2.6, fromAbove), true, 0.9, 0.7));
  }
  const major = plan.majorConnector;
  if (major) {
    const loops = [major.outline.points, ...(major.opening ? [major.opening.points] : [])];
    const lay = plan.jaw === "lower" ? nearest : fromAbove;
    put("connector", "connector", loops.flatMap((loop) => pieces(loop, true)), hatched(loops, slant, counter, 1.8, lay));
  }
  for (const { tooth, side, line } of plan.minorConnectors) put(partName("minor", tooth, side), "minor", whole(line));
  for (const { tooth, side, line } of plan.guidingPlates) put(partName("plate", tooth, side), "plate", whole(line));
  for (const { tooth, side, outline } of plan.rests) {
    put(partName("rest", tooth, side), "rest", whole(outline), hatched([outline.points], right, ahead, 0.35, fromAbove));
  }
  for (const { tooth, retentive, reciprocal, tip } of plan.clasps) {
    const part = partName("clasp", tooth);
    if (retentive) put(part, "retentive", whole(retentive), [], tip ? dot(tip) : []);
    if (reciprocal) put(part, "reciprocal", dashes(reciprocal.points, reciprocal.closed, 1.4, 0.7));
  }
  for (const { edge } of plan.tori) if (edge) put("", "torus", dashes(edge.points, edge.closed, 0.3, 0.9));
  if (plan.fulcrum) put("fulcrum", "fulcrum", dashes([plan.fulcrum.from, plan.fulcrum.to], false, 2.4, 1));
  return figures;
}

/** A plan with one cut of its preparation laid open: the parts of that tooth would cover it, and are left away. */
export function withCut(figures: readonly PlanFigure[], { step, contours }: Cut, tooth: Fdi): readonly PlanFigure[] {
  const [edge, ...inner] = contours;
  if (!edge) return figures;
  const others = figures.filter(({ part }) => part.split(" ")[1] !== String(tooth));
  return [...others, { part: partName("cut", String(step)), look: "cut", line: edge.pieces, hatch: inner.flatMap(({ pieces: all }) => all), dots: [] }];
}

/** Where the connector's border can be taken hold of. */
export const knots = (plan: Plan | null): readonly ScanVec[] => (plan?.majorConnector ? beads(plan.majorConnector.outline.points, true, KNOT_MM) : []);

/** The part that lies at a place of the cast: of lines the nearest, else of the areas that which is hatched there; null for none. */
export function partAt(figures: readonly PlanFigure[], place: ScanVec): string | null {
  const nearest = (ends: (figure: PlanFigure) => readonly number[], within: number): string | null => {
    let found: string | null = null;
    let least = within;
    for (const figure of figures) {
      if (figure.part === "") continue;
      const all = ends(figure);
      for (let i = 0; i + 2 < all.length; i += 3) {
        const off = Math.hypot(all[i]! - place[0], all[i + 1]! - place[1], all[i + 2]! - place[2]);
        if (off < least) [found, least] = [figure.part, off];
      }
    }
    return found;
  };
  return nearest(({ line }) => line, ON_LINE_MM) ?? nearest(({ hatch, dots }) => [...hatch, ...dots], 2 * ON_LINE_MM);
}

/** The place of a curve nearest to a point. */
export function nearestOn(points: readonly ScanVec[], place: ScanVec): ScanVec | null {
  let best: ScanVec | null = null;
  let least = Infinity;
  for (const point of points) {
    const off = length(sub(point, place));
    if (off < least) [best, least] = [point, off];
  }
  return best;
}

function circle(middle: ScanVec, right: ScanVec, ahead: ScanVec, radiusMm: number, lay: Lay): ScanVec[] {
  return Array.from({ length: 40 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 40;
    return lay(add(middle, add(times(right, radiusMm * Math.cos(turn)), times(ahead, radiusMm * Math.sin(turn)))));
  });
}

function square(middle: ScanVec, right: ScanVec, ahead: ScanVec, lay: Lay): number[] {
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  return pieces(corners.map(([x, y]) => lay(add(middle, add(times(right, x), times(ahead, y))))), true);
}
