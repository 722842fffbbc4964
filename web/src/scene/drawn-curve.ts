import { curvePoints, type SurveyFrame } from "../wire/survey-frame";
import type { Curve } from "../wire/types";
import { joinedCurves } from "./joined-curves";

/** Points closer than this to the one before are not drawn [mm]; a chord of it leaves a curve of 1 mm radius by 5 µm. */
const STEP_MM = 0.2;

/**
 * A curve as it is drawn: fewer points, and each moved towards the middle of its neighbours (weights 1 2 1), as a hand draws
 * over the grain of the scan. For the eye alone: sliding and reading use the curve itself. Open ends stay where they are.
 *
 * @param points x, y, z, stride 3
 */
export function drawnCurve(points: Float32Array, closed: boolean): Float32Array {
  const kept: number[] = [];
  const last = points.length - 3;
  for (let i = 0; i <= last; i += 3) {
    const n = kept.length;
    const gap = n === 0 ? Infinity : Math.hypot(points[i]! - kept[n - 3]!, points[i + 1]! - kept[n - 2]!, points[i + 2]! - kept[n - 1]!);
    if (gap >= STEP_MM || (i === last && !closed)) kept.push(points[i]!, points[i + 1]!, points[i + 2]!);
  }
  const count = kept.length / 3;
  if (count < 4) return points;
  const drawn = new Float32Array(kept);
  for (let i = closed ? 0 : 1; i < (closed ? count : count - 1); i++) {
    const before = 3 * ((i + count - 1) % count);
    const after = 3 * ((i + 1) % count);
    for (let k = 0; k < 3; k++) drawn[3 * i + k] = 0.25 * kept[before + k]! + 0.5 * kept[3 * i + k]! + 0.25 * kept[after + k]!;
  }
  return drawn;
}

/** Survey lines with a shorter gap than this are drawn in one stroke [mm]. */
const STROKE_GAP_MM = 0.3;

/** Both ends of every piece of the curves as drawn, six numbers a piece. */
export function segments(survey: SurveyFrame, curves: readonly Curve[]): Float32Array {
  const ends: number[] = [];
  const given = curves.map((curve) => ({ points: curvePoints(survey, curve), closed: curve.closed }));
  const strokes = curves.every(({ kind }) => kind === "mark") ? given : joinedCurves(given, STROKE_GAP_MM);
  for (const { points: own, closed } of strokes) {
    const points = drawnCurve(own, closed);
    const count = points.length / 3;
    const pieces = closed && count > 2 ? count : count - 1;
    for (let i = 0; i < pieces; i++) {
      for (const j of [3 * i, 3 * ((i + 1) % count)]) ends.push(points[j]!, points[j + 1]!, points[j + 2]!);
    }
  }
  return new Float32Array(ends);
}
