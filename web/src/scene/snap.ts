import { toWorld, type Pose } from "../values/pose";
import { scan, type ScanVec } from "../values/vec";
import { onScreen, type View } from "../values/view";
import { curvePoints, type SurveyFrame } from "../wire/survey-frame";

/**
 * The point of a gauge's curves that is nearest to `place` on the screen, or null when none lies within `reachMm` there. Only
 * curves near the place in space count, so that the rod never slides to the far side of the cast.
 */
export function nearestOnCurve(
  survey: SurveyFrame,
  gauge: number,
  place: ScanVec,
  pose: Pose,
  view: View,
  reachMm: number,
): ScanVec | null {
  const [px, py] = onScreen(view, toWorld(pose, place));
  const near2 = (2 * reachMm + 2) ** 2;
  let best: ScanVec | null = null;
  let best2 = reachMm * reachMm;
  for (const curve of survey.head.curves) {
    if (curve.kind !== "mark" || curve.gaugeMm !== gauge) continue;
    const points = curvePoints(survey, curve);
    const at = (i: number): ScanVec => scan(points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!);
    const last = curve.closed ? curve.count : curve.count - 1;
    for (let i = 0; i < Math.max(last, curve.count === 1 ? 1 : 0); i++) {
      const a = at(i);
      if ((a[0] - place[0]) ** 2 + (a[1] - place[1]) ** 2 + (a[2] - place[2]) ** 2 > near2) continue;
      const b = at((i + 1) % curve.count);
      const [ax, ay] = onScreen(view, toWorld(pose, a));
      const [bx, by] = onScreen(view, toWorld(pose, b));
      const len2 = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = len2 > 0 ? Math.max(0, Math.min(1, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / len2)) : 0;
      const d2 = (ax + t * (bx - ax) - px) ** 2 + (ay + t * (by - ay) - py) ** 2;
      if (d2 < best2) {
        best2 = d2;
        best = scan(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2]));
      }
    }
  }
  return best;
}
