import { expect, test } from "vitest";
import { scan } from "../values/vec";
import type { Plan } from "../wire/plan";
import { type BenchState, EMPTY_BENCH } from "./bench-state";
import { cutShown, partPlace, partShown } from "./plan-parts";

const LINE = { closed: false, points: [scan(0, 0, 0), scan(1, 0, 0), scan(2, 0, 0)] };
const PLAN = {
  rests: [{ tooth: 35, side: "mesial", point: scan(1, 2, 3) }],
  clasps: [{ tooth: 35, tip: null, retentive: LINE, reciprocal: LINE }],
  guidingPlates: [{ tooth: 35, side: "distal", line: LINE }],
  minorConnectors: [],
  bases: [{ missing: [36, 37], teeth: [{ tooth: 36, point: scan(9, 9, 9) }] }],
} as unknown as Plan;

test("each part by its name has a place to turn to", () => {
  expect(partPlace(PLAN, "rest 35 mesial")).toEqual([1, 2, 3]);
  expect(partPlace(PLAN, "clasp 35")).toEqual([1, 0, 0]);
  expect(partPlace(PLAN, "plate 35 distal")).toEqual([1, 0, 0]);
  expect(partPlace(PLAN, "base 36–37")).toEqual([9, 9, 9]);
  expect(partPlace(PLAN, "connector")).toBeNull();
  expect(partPlace(PLAN, "rest 34 mesial")).toBeNull();
});

test("what is pointed at stands out before what is chosen, a cut like a part", () => {
  const state = { ...EMPTY_BENCH, page: "plan", chosenPart: "connector", step: 2, planned: { sheet: { cuts: [{ step: 1 }, { step: 2 }] } } } as unknown as BenchState;
  expect(partShown(state)).toBe("connector");
  expect(partShown({ ...state, part: "clasp 35" })).toBe("clasp 35");
  expect(cutShown(state)?.step).toBe(2);
  expect(cutShown({ ...state, part: "cut 1" })?.step).toBe(1);
  expect(cutShown({ ...state, page: "ledger" })).toBeNull();
  expect(cutShown({ ...state, step: 7 })).toBeNull();
});
