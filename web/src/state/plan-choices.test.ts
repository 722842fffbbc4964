import { expect, it } from "vitest";
import { changes, choicesSaid, NOTHING_CHOSEN, toggled, withIndirect } from "./plan-choices";
import type { ClaspChoice } from "./ledger";

const choice = (family: string): ClaspChoice => ({ family, name: family, answer: "serves", warnings: [] });

it("sends the clasps of the ledger by tooth, and none for a tooth without a clasp", () => {
  const said = choicesSaid({ ...NOTHING_CHOSEN, unclasped: [24], connector: "u-shaped" }, { "13 distal": choice("i-bar"), "24 distal": choice("rpa"), "45 mesial": choice("rpa"), "45 distal": choice("ring") });
  expect(said.clasps).toEqual({ 13: "i-bar", 24: "none", 45: "ring" });
  expect(said.connector).toBe("u-shaped");
  expect("connector" in choicesSaid(NOTHING_CHOSEN, {})).toBe(false);
});

it("sends the arms that were shaped by hand, by row", () => {
  const pulls = [{ at: 1, to: [1, 2, 3] as const }] as unknown as NonNullable<ClaspChoice["arm"]>;
  expect(choicesSaid(NOTHING_CHOSEN, { "13 distal": { ...choice("i-bar"), arm: pulls }, "24 distal": choice("rpa") }).arms).toEqual({ "13 distal": { family: "i-bar", pulls } });
  expect("arms" in choicesSaid(NOTHING_CHOSEN, { "24 distal": choice("rpa") })).toBe(false);
});

it("counts what was changed, and puts in and takes out", () => {
  expect(changes(NOTHING_CHOSEN)).toBe(0);
  expect(changes({ ...NOTHING_CHOSEN, notUsed: toggled([], 24), connector: "u-shaped" })).toBe(2);
  expect(toggled([24, 13], 24)).toEqual([13]);
});

it("adds an indirect retainer, takes one away, and forgets both", () => {
  const added = withIndirect({}, 43, { kind: "cingulum", side: "lingual" });
  const both = withIndirect(added, 33, "none");
  expect(both).toEqual({ 43: { kind: "cingulum", side: "lingual" }, 33: "none" });
  expect(changes({ ...NOTHING_CHOSEN, indirect: both })).toBe(2);
  expect(choicesSaid({ ...NOTHING_CHOSEN, indirect: both }, {}).indirect).toEqual(both);
  expect(withIndirect(withIndirect(both, 33, null), 43, null)).toEqual({});
  expect("indirect" in choicesSaid({ ...NOTHING_CHOSEN, indirect: {} }, {})).toBe(false);
});
