import { describe, expect, it } from "vitest";
import { following, HANDLES, handles, placeAt, pulled } from "./arm-shape";
import { scan, type ScanVec } from "./vec";

const line: readonly ScanVec[] = Array.from({ length: 13 }, (_, i) => scan(i, 0, 0));

describe("an arm that is pulled", () => {
  it("has its handles at its ends and at both ends of its middle third", () => {
    expect(handles(line, []).map(({ point }) => Math.round(point[0]))).toEqual([0, 4, 8, 12]);
    expect(placeAt(line, 0.5)[0]).toBeCloseTo(6);
  });

  it("keeps one pull a handle, in order", () => {
    const once = pulled([], HANDLES[2], scan(8, 1, 0));
    const both = pulled(pulled(once, HANDLES[1], scan(4, 2, 0)), HANDLES[2], scan(8, 3, 0));
    expect(both.map(({ at, to }) => [at, to[1]])).toEqual([
      [HANDLES[1], 2],
      [HANDLES[2], 3],
    ]);
    expect(handles(line, both)[2]!.point[1]).toBe(3);
  });

  it("follows the hand at the handle, less and less towards the handles beside it, and not beyond", () => {
    const now = pulled([], HANDLES[1], scan(4, 1, 0));
    const moved = following(line, [], now);
    expect(moved[4]![1]).toBeCloseTo(1);
    expect(moved[2]![1]).toBeCloseTo(0.5);
    expect(moved[6]![1]).toBeCloseTo(0.5);
    for (const i of [0, 8, 9, 12]) expect(moved[i]![1]).toBeCloseTo(0);
  });

  it("takes a tip along, and lies still where nothing was pulled since it was laid", () => {
    const now = pulled([], 1, scan(12, 2, 0));
    expect(following(line, [], now).at(-1)![1]).toBeCloseTo(2);
    expect(following(line, now, now)).toBe(line);
    const laid = line.map((p, i) => (i === 12 ? scan(12, 2, 0) : p));
    expect(following(laid, now, [...now])).toBe(laid);
  });
});
