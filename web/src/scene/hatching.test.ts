import { describe, expect, it } from "vitest";
import { scan } from "../values/vec";
import { beads, chords, dashes, laidChord, pieces } from "./hatching";

const square = (half: number): readonly ReturnType<typeof scan>[] => [scan(-half, -half, 0), scan(half, -half, 0), scan(half, half, 0), scan(-half, half, 0)];
const X = scan(1, 0, 0);
const Y = scan(0, 1, 0);

describe("hatching", () => {
  it("fills an area and leaves an opening free", () => {
    const whole = chords([square(5)], X, Y, 1);
    expect(whole).toHaveLength(10); // rows −5 … 4
    for (const [a, b] of whole) expect(b[0] - a[0]).toBeCloseTo(10);
    const frame = chords([square(5), square(2)], X, Y, 1);
    expect(frame).toHaveLength(10 + 4); // the rows through the opening are cut in two
    const length = frame.reduce((sum, [a, b]) => sum + b[0] - a[0], 0);
    expect(length).toBeCloseTo(10 * 10 - 4 * 4);
  });

  it("lays a chord on the cast between its ends", () => {
    const way = laidChord([scan(0, 0, 0), scan(4, 0, 0)], 1, ([x, y]) => scan(x, y, 7));
    expect(way.map(([x]) => x)).toEqual([0, 1, 2, 3, 4]);
    expect(way.map(([, , z]) => z)).toEqual([0, 7, 7, 7, 0]);
  });

  it("dashes and beads a curve by its length, whatever its points", () => {
    const line = [scan(0, 0, 0), scan(0.7, 0, 0), scan(10, 0, 0)];
    const ends = dashes(line, false, 1, 1);
    let drawn = 0;
    for (let i = 0; i < ends.length; i += 6) drawn += ends[i + 3]! - ends[i]!;
    expect(drawn).toBeCloseTo(5);
    expect(beads(line, false, 2).map(([x]) => Math.round(x))).toEqual([0, 2, 4, 6, 8]);
    expect(pieces(square(1), true)).toHaveLength(24);
  });
});
