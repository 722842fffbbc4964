import { describe, expect, it } from "vitest";
import { mm } from "../values/units";
import { forceFrame, multiples, rangeText, roundStep, stressFrame } from "./force-frame";

describe("the frame of a force plot", () => {
  const ways = { leastPull: [[0, 0], [0.4, 2], [0.9, 0]], mostPull: [[0, 0], [0.5, 6], [0.9, -0.5]], freeAtMm: mm(0.9) } as const;

  it("holds every pull and travel of both ways out", () => {
    const { x, y, width, height } = forceFrame(ways, 2, 10);
    for (const [travel, pull] of [...ways.leastPull, ...ways.mostPull]) {
      expect(x(travel)).toBeGreaterThanOrEqual(0);
      expect(x(travel)).toBeLessThanOrEqual(width);
      expect(y(pull)).toBeGreaterThanOrEqual(0);
      expect(y(pull)).toBeLessThan(height);
    }
    expect(y(6)).toBeLessThan(y(2)); // more pull stands higher
  });

  it("keeps the pull that is wanted inside, and cuts a ceiling far above the curve", () => {
    const small = forceFrame({ leastPull: [[0, 0], [0.2, 0.1]], mostPull: [[0, 0], [0.2, 0.2]], freeAtMm: null }, 2, 10);
    expect(small.y(2)).toBeGreaterThan(0);
    expect(small.y(10)).toBeGreaterThan(0);
    expect(small.steps.length).toBeGreaterThan(1);
  });
});

describe("round steps", () => {
  it("cuts into few pieces of 1, 2 or 5", () => {
    expect(roundStep(10, 5)).toBeCloseTo(2);
    expect(roundStep(0.9, 6)).toBeCloseTo(0.2);
    expect(multiples(-0.5, 4, 2)).toEqual([0, 2, 4]);
  });
});

describe("a bar of stress", () => {
  it("shows the limit even where the stress is small, and the stress where it is great", () => {
    const low = stressFrame({ from: 0.1, to: 0.3 }, 1);
    expect(low.x(1)).toBeLessThan(low.width);
    const high = stressFrame({ from: 1.5, to: 4 }, 1);
    expect(high.x(4)).toBeLessThanOrEqual(high.width);
  });

  it("tells a range, or one figure", () => {
    expect(rangeText({ from: 2.04, to: 5.55 }, 1)).toBe("2.0–5.5");
    expect(rangeText({ from: 380, to: 380 }, 0)).toBe("380");
  });
});
