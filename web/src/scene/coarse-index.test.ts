import { describe, expect, it } from "vitest";
import { coarseIndex } from "./coarse-index";

/** A flat sheet of n × n squares of 0.2 mm, two triangles each. */
function sheet(n: number): { positions: Float32Array; corners: Uint32Array } {
  const positions: number[] = [];
  const corners: number[] = [];
  for (let i = 0; i <= n; i++) for (let j = 0; j <= n; j++) positions.push(0.2 * i, 0.2 * j, 0);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const a = i * (n + 1) + j;
      corners.push(a, a + n + 1, a + n + 2, a, a + n + 2, a + 1);
    }
  }
  return { positions: new Float32Array(positions), corners: new Uint32Array(corners) };
}

function area(positions: Float32Array, corners: Uint32Array): number {
  let sum = 0;
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * corners[t + k]!) as [number, number, number];
    const [ux, uy] = [positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!];
    const [vx, vy] = [positions[c]! - positions[a]!, positions[c + 1]! - positions[a + 1]!];
    sum += (ux * vy - uy * vx) / 2;
  }
  return sum;
}

describe("coarser triangles over the same vertices", () => {
  it("are about as many as asked, cover the surface, and face the same way", () => {
    const { positions, corners } = sheet(150);
    const coarse = coarseIndex(positions, corners, 5000);
    expect(coarse.length / 3).toBeLessThan(7500);
    expect(coarse.length / 3).toBeGreaterThan(2000);
    // Signed area: all of 30 × 30 mm but a rim narrower than a cell.
    expect(area(positions, coarse)).toBeGreaterThan(0.93 * 900);
    expect(area(positions, coarse)).toBeLessThanOrEqual(900.01);
  });
  it("are all of them when there are few", () => {
    const { positions, corners } = sheet(5);
    expect([...coarseIndex(positions, corners, 5000)]).toEqual([...corners]);
  });
});
