import { describe, expect, it } from "vitest";
import { planOf } from "./plan";
import { relief, reliefWindow } from "./relief";
import { scan } from "./vec";

const FRAME = { origin: scan(0, 0, 0), x: scan(1, 0, 0), y: scan(0, 1, 0), z: scan(0, 0, 1) };

describe("the relief from above", () => {
  const positions = new Float32Array([0, 0, 0, 10, 0, 0, 0, 10, 0]);
  const plan = planOf(FRAME, "upper");
  it("covers the triangle and nothing else", () => {
    const window = reliefWindow(positions, plan, 120, 1);
    expect(window.grain).toBeCloseTo(0.1, 10);
    const picture = relief(positions, new Uint32Array([0, 1, 2]), plan, window);
    let covered = 0;
    for (let i = 3; i < picture.length; i += 4) if (picture[i]) covered++;
    // Half of a square of 10 mm, in pixels of 0.1 mm.
    expect(Math.abs(covered - 5000)).toBeLessThan(200); // both borders count;
  });
  it("lights level ground alike, and a slope to the upper left more", () => {
    const light = (z: number): number => {
      const tilted = positions.slice();
      tilted[5] = z;
      const window = reliefWindow(tilted, plan, 120, 1);
      const picture = relief(tilted, new Uint32Array([0, 1, 2]), plan, window);
      return picture[4 * (90 * window.width + 40)]!;
    };
    expect(light(4)).toBeGreaterThan(light(0));
    expect(light(-4)).toBeLessThan(light(0));
  });
});
