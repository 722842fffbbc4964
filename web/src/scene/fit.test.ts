import { describe, expect, it } from "vitest";
import { poseOf } from "../values/pose";
import { sideView } from "../values/view";
import { scan, world } from "../values/vec";
import { fitted } from "./fit";

const BOX = new Float32Array([-30, -20, 0, 30, -20, 0, 30, 20, 0, -30, 20, 0]);

describe("fitting the cast", () => {
  it("keeps it clear of what lies over the bottom", () => {
    const view = fitted(sideView("above", null, world(0, 0, 0), 10), BOX, poseOf(scan(0, 0, 1), scan(0, 1, 0), scan(0, 0, 0)), 2, 0.2);
    const height = (y: number): number => (y - view.up[0] * view.target[0] - view.up[1] * view.target[1] - view.up[2] * view.target[2]) / view.half;
    // From −1 at the bottom of the canvas to 1 at its top; the lowest fifth is covered.
    expect(height(-20)).toBeGreaterThan(-0.6);
    expect(height(20)).toBeLessThan(1);
    expect((height(20) + height(-20)) / 2).toBeCloseTo(0.2, 6);
  });
});
