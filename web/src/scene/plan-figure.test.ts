import { describe, expect, it } from "vitest";
import { scan, type ScanVec } from "../values/vec";
import type { Plan, PlanLine } from "../wire/plan";
import { partAt, planFigures } from "./plan-figure";

/** A flat cast at the height 0. */
const FLAT = {
  hit: (from: ScanVec) => ({ point: scan(from[0], from[1], 0), triangle: 0 }),
  nearest: (to: ScanVec) => ({ point: scan(to[0], to[1], 0), triangle: 0 }),
};

const line = (closed: boolean, ...points: (readonly [number, number])[]): PlanLine => ({ closed, points: points.map(([x, y]) => scan(x, y, 0)) });

const EMPTY = {
  jaw: "upper",
  axis: scan(0, 0, 1),
  rests: [],
  guidingPlates: [],
  clasps: [],
  minorConnectors: [],
  majorConnector: null,
  bases: [],
  fulcrum: null,
  tori: [],
} as unknown as Plan;

describe("the plan on the cast", () => {
  it("draws the edge of a torus as dots along all of it, and takes it for no part", () => {
    const edge = line(true, [0, 0], [10, 0], [10, 10], [0, 10]);
    const plan: Plan = { ...EMPTY, tori: [{ site: "palatal", edge, roomMm: null }, { site: "lingual-left", edge: null, roomMm: null }] as unknown as Plan["tori"] };
    const [torus, ...others] = planFigures(plan, scan(0, 1, 0), FLAT);
    expect(others).toEqual([]);
    expect(torus).toMatchObject({ part: "", look: "torus" });
    // 40 mm all round, a dot every 1.2 mm, some of them bent round a corner.
    const count = torus!.line.length / 6;
    expect(count).toBeGreaterThanOrEqual(33);
    expect(count).toBeLessThanOrEqual(38);
    for (const [x, y] of [[0.1, 0], [10, 5], [5, 10], [0, 5]] as const) {
      const near = Array.from({ length: count }, (_, i) => Math.hypot(torus!.line[6 * i]! - x, torus!.line[6 * i + 1]! - y));
      expect(Math.min(...near)).toBeLessThan(1.3);
    }
    expect(partAt([torus!], scan(5, 0, 0))).toBeNull();
  });

  it("names the part at a place, and none far from all", () => {
    const plan: Plan = { ...EMPTY, minorConnectors: [{ tooth: 14, side: "mesial", line: line(false, [0, 0], [4, 0]), lengthMm: 4 }] as unknown as Plan["minorConnectors"] };
    const figures = planFigures(plan, scan(0, 1, 0), FLAT);
    expect(partAt(figures, scan(4, 0.5, 0))).toBe("minor 14 mesial");
    expect(partAt(figures, scan(4, 5, 0))).toBeNull();
  });
});
