import { scan, type ScanVec } from "../values/vec";
import type { BenchState } from "../state/bench-state";
import { curvePoints, type SurveyFrame } from "../wire/survey-frame";
import type { Curve } from "../wire/types";

/** Carries the rod along the chosen gauge's curves without a pointer: to the next curve, and on or back along it. */
export class CurveWalk {
  /** The next curve of the gauge after the one the rod stands on, at its middle. */
  nextCurve({ survey, gauge, carried }: BenchState): ScanVec | null {
    if (!survey || gauge === null) return null;
    const curves = ofGauge(survey, gauge);
    if (curves.length === 0) return null;
    const here = carried ? nearest(survey, curves, carried.point) : null;
    const next = curves[((here?.curve ?? -1) + 1) % curves.length]!;
    return pointAt(survey, next, next.count >> 1);
  }

  /** The point `distance` mm further along the curve that the rod stands nearest to; negative: back. Stops at open ends. */
  slide({ survey, gauge, carried }: BenchState, distance: number): ScanVec | null {
    if (!survey || gauge === null) return null;
    const curves = ofGauge(survey, gauge);
    if (!carried) return this.nextCurve({ survey, gauge, carried } as BenchState);
    const here = nearest(survey, curves, carried.point);
    if (!here) return null;
    const curve = curves[here.curve]!;
    const step = Math.sign(distance);
    let left = Math.abs(distance);
    let at = carried.point;
    let index = here.point;
    for (let guard = 0; guard <= 2 * curve.count; guard++) {
      const wanted = curve.closed ? (index + step + curve.count) % curve.count : index + step;
      if (wanted < 0 || wanted >= curve.count) return at;
      const next = pointAt(survey, curve, wanted);
      const gap = Math.hypot(next[0] - at[0], next[1] - at[1], next[2] - at[2]);
      if (gap >= left) {
        const t = left / gap;
        return scan(at[0] + t * (next[0] - at[0]), at[1] + t * (next[1] - at[1]), at[2] + t * (next[2] - at[2]));
      }
      left -= gap;
      at = next;
      index = wanted;
    }
    return at;
  }
}

const ofGauge = (survey: SurveyFrame, gauge: number): readonly Curve[] =>
  survey.head.curves.filter((curve) => curve.kind === "mark" && curve.gaugeMm === gauge && curve.count > 0);

function pointAt(survey: SurveyFrame, curve: Curve, i: number): ScanVec {
  const points = curvePoints(survey, curve);
  return scan(points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!);
}

function nearest(survey: SurveyFrame, curves: readonly Curve[], place: ScanVec): { curve: number; point: number } | null {
  let best: { curve: number; point: number } | null = null;
  let best2 = Infinity;
  curves.forEach((curve, c) => {
    const points = curvePoints(survey, curve);
    for (let i = 0; i < curve.count; i++) {
      const d2 = (points[3 * i]! - place[0]) ** 2 + (points[3 * i + 1]! - place[1]) ** 2 + (points[3 * i + 2]! - place[2]) ** 2;
      if (d2 < best2) [best, best2] = [{ curve: c, point: i }, d2];
    }
  });
  return best;
}
