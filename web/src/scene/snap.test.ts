import { describe, expect, it } from "vitest";
import { poseOf } from "../values/pose";
import { mm } from "../values/units";
import { scan, world } from "../values/vec";
import { sideView } from "../values/view";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Curve, SurveyHead } from "../wire/types";
import { nearestOnCurve } from "./snap";

const RADIUS = 5;

/** A gauge curve: a circle of radius 5 round the axis, 90 points, closed; and a second of another gauge on the other side. */
function circle(): SurveyFrame {
  const points = new Float32Array(3 * 90);
  for (let i = 0; i < 90; i++) points.set([RADIUS * Math.cos((i * Math.PI) / 45), RADIUS * Math.sin((i * Math.PI) / 45), -1], 3 * i);
  const curve: Curve = { kind: "mark", gaugeMm: mm(0.25), from: 0, count: 90, closed: true, lengthMm: mm(31.4) };
  return { head: { curves: [curve] } as unknown as SurveyHead, depth: new Float32Array(0), flags: new Uint8Array(0), points };
}

const pose = poseOf(scan(0, 0, 1), scan(0, 1, 0), scan(0, 0, 0));
const front = sideView("front", "lower", world(0, 0, 0), 10);

describe("sliding on a gauge's curve", () => {
  it("finds the nearest point on the screen, on the side that is seen", () => {
    const found = nearestOnCurve(circle(), 0.25, scan(0, RADIUS, -0.4), pose, front, 1)!;
    expect(found[0]).toBeCloseTo(0, 1);
    expect(found[1]).toBeCloseTo(RADIUS, 1); // the near side, though the far side is as near on the screen
    expect(found[2]).toBeCloseTo(-1, 6);
  });
  it("lies on the chord between two points", () => {
    const found = nearestOnCurve(circle(), 0.25, scan(3, 4, -1), pose, front, 1)!;
    const sagitta = RADIUS * (1 - Math.cos(Math.PI / 90));
    expect(Math.hypot(found[0], found[1])).toBeGreaterThan(RADIUS - sagitta - 1e-6);
    expect(Math.hypot(found[0], found[1])).toBeLessThan(RADIUS + 1e-6);
  });
  it("lets go when the curve is too far, or of another gauge", () => {
    expect(nearestOnCurve(circle(), 0.25, scan(0, RADIUS, 0.5), pose, front, 1)).toBeNull();
    expect(nearestOnCurve(circle(), 0.5, scan(0, RADIUS, -1), pose, front, 1)).toBeNull();
  });
});
