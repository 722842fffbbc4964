import { describe, expect, it } from "vitest";
import { joinedCurves, type Polyline } from "./joined-curves";

/** Points on the x axis from one place to another, 0.1 mm apart. */
const straight = (from: number, to: number): Polyline => {
  const n = Math.round(Math.abs(to - from) / 0.1);
  const points = new Float32Array(3 * (n + 1));
  for (let i = 0; i <= n; i++) points[3 * i] = from + ((to - from) * i) / n;
  return { points, closed: false };
};
/** An arc of a circle of 3 mm radius [degrees]. */
const arc = (from: number, to: number): Polyline => {
  const points: number[] = [];
  for (let d = from; d <= to; d += 2) points.push(3 * Math.cos((d * Math.PI) / 180), 3 * Math.sin((d * Math.PI) / 180), 0);
  return { points: new Float32Array(points), closed: false };
};

describe("pieces of a curve", () => {
  it("become one where their ends lie near, whichever way each runs", () => {
    const [one, ...rest] = joinedCurves([straight(0, 2), straight(4, 2.2), straight(4.1, 6)], 0.3);
    expect(rest).toEqual([]);
    const xs = [...one!.points].filter((_, i) => i % 3 === 0);
    const rising = xs[0]! < xs.at(-1)! ? xs : xs.toReversed();
    expect(rising).toEqual(rising.toSorted((a, b) => a - b));
    expect([rising[0], rising.at(-1)]).toEqual([0, 6]);
  });
  it("stay apart where they do not", () => {
    expect(joinedCurves([straight(0, 2), straight(2.5, 4)], 0.3)).toHaveLength(2);
  });
  it("make a ring of arcs that meet", () => {
    const [ring, ...rest] = joinedCurves([arc(0, 176), arc(180, 356)], 0.3);
    expect(rest).toEqual([]);
    expect(ring!.closed).toBe(true);
    expect(ring!.points.length / 3).toBe(178);
  });
  it("keep each point once, and closed curves as they are", () => {
    const closed = { ...arc(0, 356), closed: true };
    const parts = [closed, straight(10, 11), straight(11.1, 12), straight(20, 21)];
    const joined = joinedCurves(parts, 0.3);
    expect(joined).toHaveLength(3);
    expect(joined[0]).toBe(closed);
    expect(joined.reduce((sum, { points }) => sum + points.length, 0)).toBe(parts.reduce((sum, { points }) => sum + points.length, 0));
  });
});
