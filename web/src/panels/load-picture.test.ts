import { expect, test } from "vitest";
import type { LoadRatio } from "../wire/comparison";
import { byBite, place, turned } from "./load-picture";

const load = (over: Partial<LoadRatio>): LoadRatio => ({ bitten: [25, 26], measure: "tipping moment", tooth: 24, answer: "more", interval: { from: 1.2, to: 3 }, ...over });

test("1 is the middle, inverse ratios lie as far to either side, what is beyond lies at the end", () => {
  expect(place(1, 160)).toBe(80);
  expect(place(2, 160) - 80).toBeCloseTo(80 - place(0.5, 160));
  expect(place(8, 160)).toBeCloseTo(160);
  expect(place(50, 160)).toBe(160);
  expect(place(0, 160)).toBe(0);
});

test("loads of one bite stay together, in their order", () => {
  const groups = byBite([load({}), load({ tooth: 27 }), load({ bitten: [14, 15] })]);
  expect(groups.map(({ bitten, loads }) => `${bitten.join(" ")}: ${loads.length}`)).toEqual(["25 26: 2", "14 15: 1"]);
});

test("the other way is told only where nine draws in ten agree, with both plans", () => {
  expect(turned(load({ tipsToDistal: { first: 0.02, other: 0.97 } }))).toEqual({ first: "to mesial", other: "to distal" });
  expect(turned(load({ tipsToDistal: { first: 0.3, other: 0.97 } }))).toBeNull();
  expect(turned(load({ tipsToDistal: { first: 0.95, other: 0.97 } }))).toBeNull();
  expect(turned(load({ answer: "hardly loaded in either", tipsToDistal: { first: 0, other: 1 } }))).toBeNull();
});
