import { describe, expect, it } from "vitest";
import { mm } from "../values/units";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Curve, SurveyHead } from "../wire/types";
import { drawnCurve, segments } from "./drawn-curve";

const RADIUS = 5;

/** A circle of 5 mm radius, 600 points 0.05 mm apart. */
function circle(): { survey: SurveyFrame; curve: Curve } {
  const points = new Float32Array(3 * 600);
  for (let i = 0; i < 600; i++) points.set([RADIUS * Math.cos((i * Math.PI) / 300), RADIUS * Math.sin((i * Math.PI) / 300), 0], 3 * i);
  const curve: Curve = { kind: "line", gaugeMm: null, from: 0, count: 600, closed: true, lengthMm: mm(31.4) };
  return { survey: { head: { curves: [curve] } as unknown as SurveyHead, depth: new Float32Array(0), flags: new Uint8Array(0), points }, curve };
}

describe("a curve as drawn", () => {
  it("has fewer points and stays within a hundredth of a millimetre of a smooth curve", () => {
    const drawn = drawnCurve(circle().survey.points, true);
    expect(drawn.length / 3).toBeLessThan(170);
    expect(drawn.length / 3).toBeGreaterThan(100);
    for (let i = 0; i < drawn.length; i += 3) expect(Math.abs(Math.hypot(drawn[i]!, drawn[i + 1]!) - RADIUS)).toBeLessThan(0.01);
  });
  it("keeps its open ends", () => {
    const points = circle().survey.points.subarray(0, 300);
    const drawn = drawnCurve(points, false);
    expect([...drawn.subarray(0, 3)]).toEqual([...points.subarray(0, 3)]);
    expect([...drawn.subarray(-3)]).toEqual([...points.subarray(-3)]);
  });
  it("is left alone when it has hardly any points", () => {
    const three = new Float32Array([0, 0, 0, 0.01, 0, 0, 0.02, 0, 0]);
    expect(drawnCurve(three, false)).toBe(three);
    expect(drawnCurve(new Float32Array(0), false)).toHaveLength(0);
  });
  it("closes when closed, and is left open when open", () => {
    const { survey, curve } = circle();
    const closed = segments(survey, [curve]);
    expect([...closed.subarray(-3)]).toEqual([...closed.subarray(0, 3)]);
    expect(segments(survey, [{ ...curve, closed: false }]).length).toBe(closed.length);
    expect(segments(survey, [{ ...curve, closed: false, count: 1 }])).toHaveLength(0);
  });
});
