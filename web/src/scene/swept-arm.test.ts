import { describe, expect, it } from "vitest";
import { scan } from "../values/vec";
import { alongMm, type ArmLine, calmed, sweptArm } from "./swept-arm";

const straight: ArmLine = {
  points: [0, 2, 4, 6].map((x) => scan(x, 0, 0)),
  outward: [0, 0, 0, 0].map(() => scan(0, 0, 1)),
  round: false,
  root: { widthMm: 2, thicknessMm: 1 },
  tip: { widthMm: 1, thicknessMm: 0.5 },
  springsFromMm: 4,
};

describe("a swept arm", () => {
  it("is half-round: half its width to each side, its thickness away from the tooth, nothing towards it", () => {
    const { positions } = sweptArm(straight);
    const origin = [...positions].slice(33, 66); // after the ring that shuts the end
    const [y, z] = [1, 2].map((k) => origin.filter((_, i) => i % 3 === k)) as [number[], number[]];
    expect(Math.max(...y)).toBeCloseTo(1, 6);
    expect(Math.min(...y)).toBeCloseTo(-1, 6);
    expect(Math.max(...z)).toBeCloseTo(1, 6);
    expect(Math.min(...z)).toBeCloseTo(0, 6);
  });

  it("tapers evenly to its tip and ends rounded half a tip's width further on", () => {
    const { positions } = sweptArm(straight);
    const at = (x: number): number[] => [...positions].filter((_, i) => i % 3 === 1 && Math.abs(positions[i - 1]! - x) < 1e-6);
    expect(Math.max(...at(4))).toBeCloseTo(1 - (4 / 6) * 0.5, 6);
    const xs = [...positions].filter((_, i) => i % 3 === 0);
    expect(Math.max(...xs)).toBeCloseTo(6.5, 6);
  });

  it("springs from where it is told", () => {
    const { springs } = sweptArm(straight);
    expect([...springs].filter((s) => s === 0)).toHaveLength(3 * 11);
  });

  it("is round about an axis off the tooth when it is a wire, and its index stays inside", () => {
    const { positions, index } = sweptArm({ ...straight, round: true, root: { widthMm: 1, thicknessMm: 1 }, tip: { widthMm: 1, thicknessMm: 1 } });
    for (let i = 33; i < 66; i += 3) expect(Math.hypot(positions[i + 1]!, positions[i + 2]! - 0.5)).toBeCloseTo(0.5, 6);
    expect(Math.max(...index)).toBeLessThan(positions.length / 3);
  });

  it("is nothing without a way to go", () => {
    expect(sweptArm({ ...straight, points: [scan(0, 0, 0)], outward: [scan(0, 0, 1)] }).index).toHaveLength(0);
  });

  it("measures along the curve and calms what shivers", () => {
    expect(alongMm(straight.points)).toEqual([0, 2, 4, 6]);
    const [, middle] = calmed([0, 0.5, 1].map((x) => scan(x, 0, 0)), [scan(0, 0, 1), scan(1, 0, 0), scan(0, 0, 1)]);
    expect(middle![2]).toBeGreaterThan(middle![0]);
  });
});
