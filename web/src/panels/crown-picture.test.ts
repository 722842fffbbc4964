import { describe, expect, it } from "vitest";
import type { ThirdTold, Told } from "../wire/abutments";
import { apart, columns } from "./crown-picture";

const mm = (value: number): Told => ({ kind: "measured", value, uncertainty: 0, unit: "mm", words: `${value} mm` });
const third = (zone: string, below: Told, marks: readonly [number, number][]): ThirdTold => ({
  zone,
  deepest: mm(0.4),
  roomAbove: mm(4),
  roomBelow: below,
  marks: marks.map(([gauge, belowLine]) => ({
    gaugeMm: gauge,
    place: { words: zone, point: null },
    depth: mm(gauge),
    atReference: mm(0.2),
    fromMargin: mm(1),
    belowLine: mm(belowLine),
    convergence: mm(0),
  })) as unknown as ThirdTold["marks"],
});

describe("the drawn crown", () => {
  it("stands on the lowest place an arm may take, mesial first, marks from the top down", () => {
    const drawn = columns([third("distofacial", mm(1), []), third("mesiofacial", mm(2), [[0.5, 1.5], [0.25, 1]]), third("midlingual", mm(9), [])], "facial");
    expect(drawn.map(({ zone, line, top }) => [zone, line, top])).toEqual([
      ["mesiofacial", 2, 6],
      ["distofacial", 1, 5],
    ]);
    expect(drawn[0]!.marks.map(({ gaugeMm, height }) => [gaugeMm, height])).toEqual([
      [0.25, 1],
      [0.5, 0.5],
    ]);
  });
  it("draws nothing of what is not known", () => {
    const [column] = columns([third("midfacial", { kind: "not-known", words: "not known: no line" }, [[0.25, 1]])], "facial");
    expect(column).toMatchObject({ line: null, top: null, marks: [] });
  });
  it("moves lettering apart", () => {
    expect(apart([10, 12, 40], 9)).toEqual([10, 19, 40]);
  });
});
