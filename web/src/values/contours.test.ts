import { describe, expect, it } from "vitest";
import { contour, type Lattice } from "./contours";

const lattice = (value: (x: number, y: number) => number, reach = 12, step = 0.5): Lattice => ({
  step,
  reach,
  at: (i, j) => (Math.hypot(i, j) <= reach ? value(i * step, j * step) : undefined),
});

describe("contours", () => {
  it("of a plane are straight, wherever the lattice has all corners", () => {
    const pieces = contour(lattice((x, y) => 2 * x + y), 1.3);
    expect(pieces.length).toBeGreaterThan(20);
    for (const piece of pieces) for (const [x, y] of piece) expect(2 * x + y).toBeCloseTo(1.3, 9);
  });

  it("of a cone are circles, closed", () => {
    const pieces = contour(lattice((x, y) => Math.hypot(x, y)), 3.1);
    for (const piece of pieces) for (const [x, y] of piece) expect(Math.abs(Math.hypot(x, y) - 3.1)).toBeLessThan(0.03);
    const ends = new Map<string, number>();
    for (const piece of pieces) for (const place of piece) ends.set(place.map((v) => v.toFixed(6)).join(), (ends.get(place.map((v) => v.toFixed(6)).join()) ?? 0) + 1);
    expect([...ends.values()].every((count) => count === 2)).toBe(true);
  });

  it("are none above and below all values", () => {
    expect(contour(lattice((x, y) => Math.hypot(x, y)), 99)).toEqual([]);
    expect(contour(lattice(() => 1), 1)).toEqual([]);
  });
});
