import { expect, test } from "vitest";
import { degrees } from "../values/units";
import type { Api } from "../wire/api";
import type { NamedChoices } from "../wire/comparison";
import type { Plan } from "../wire/plan";
import type { TeethInfo } from "../wire/types";
import { type BenchState, EMPTY_BENCH } from "./bench-state";
import { asked, behind, comparedHolds, Comparing, others } from "./comparing";
import { apply, type Command, emptyDocument, inverse } from "./document";
import { Store } from "./store";

const PLAN = { rests: [{ tooth: 16 }, { tooth: 13 }, { tooth: 24 }, { tooth: 27 }] } as unknown as Plan;
const SPACES = [
  { missing: [14, 15], closed: false },
  { missing: [25, 26], closed: false },
] as unknown as TeethInfo["spaces"];
const TEETH = { teeth: [], spaces: SPACES } as unknown as TeethInfo;

test("the abutments behind a space may be left out; a free end and a closed space have none", () => {
  expect(behind(PLAN, SPACES)).toEqual([16, 27]);
  expect(behind(PLAN, [{ missing: [16, 17, 18], closed: false }] as unknown as TeethInfo["spaces"])).toEqual([]);
  expect(behind(PLAN, [{ missing: [25, 26], closed: true }] as unknown as TeethInfo["spaces"])).toEqual([]);
  expect(behind({ rests: [{ tooth: 13 }, { tooth: 23 }] } as unknown as Plan, [{ missing: [12, 11, 21, 22], closed: false }] as unknown as TeethInfo["spaces"])).toEqual([13, 23]);
});

function bench(): { store: Store<BenchState>; comparing: Comparing; sent: (readonly NamedChoices[])[]; edits: Command[] } {
  const document = emptyDocument({ jaw: "upper", up: null, front: null });
  const planned = { sheet: { plan: PLAN }, problem: null, tilt: document.tilt, teeth: TEETH, answers: document.answers, opposing: null, clasps: document.clasps, choices: document.plan };
  const store = new Store<BenchState>({ ...EMPTY_BENCH, page: "plan", cast: { id: "cast-1" }, document, teeth: TEETH, planned } as unknown as BenchState);
  const sent: (readonly NamedChoices[])[] = [];
  const edits: Command[] = [];
  const api = { comparePlans: (...given: readonly unknown[]) => (sent.push(given[3] as readonly NamedChoices[]), Promise.resolve({ others: [] })) } as unknown as Api;
  const comparing = new Comparing(store, api, (command) => {
    edits.push(command);
    store.set({ document: apply(store.get().document!, command) });
  });
  store.subscribe(() => comparing.follow());
  return { store, comparing, sent, edits };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 5));

test("the plan on the table is held against the other that was asked for, once", async () => {
  const { store, sent } = bench();
  expect(others(store.get(), String).map(({ name }) => name)).toEqual(["without 16", "without 27"]);
  store.set({ against: "without 27" });
  await settled();
  expect(sent).toHaveLength(1);
  expect(sent[0]!.map(({ name }) => name)).toEqual(["this plan", "without 27"]);
  expect(sent[0]![0]!.choices.notUsed).toEqual([]);
  expect(sent[0]![1]!.choices.notUsed).toEqual([27]);
  expect(comparedHolds(store.get())).toBe(true);
  // Another tilt makes it void, and nothing is asked before the plan follows.
  store.set({ document: { ...store.get().document!, tilt: { anterior: degrees(2), right: degrees(0) } } });
  await settled();
  expect(comparedHolds(store.get())).toBe(false);
  expect(sent).toHaveLength(1);
});

test("a plan is kept by name, put on the table and removed, each one step to undo", () => {
  const { store, comparing, edits } = bench();
  comparing.keep("  ");
  expect(edits).toHaveLength(0);
  store.set({ document: { ...store.get().document!, plan: { ...store.get().document!.plan, connector: "palatal-plate" } } });
  comparing.keep(" with a plate ");
  const kept = store.get().document!.keptPlans[0]!;
  expect(kept.name).toBe("with a plate");
  store.set({ document: { ...store.get().document!, plan: { ...kept.plan, connector: null } }, against: kept.id });
  expect(asked(store.get())?.name).toBe("with a plate");
  comparing.take(kept.id);
  expect(store.get().document!.plan.connector).toBe("palatal-plate");
  expect(apply(store.get().document!, inverse(edits.at(-1)!)).plan.connector).toBeNull();
  comparing.remove(kept.id);
  expect(store.get().document!.keptPlans).toEqual([]);
  expect(store.get().against).toBeNull();
  expect(apply(store.get().document!, inverse(edits.at(-1)!)).keptPlans).toEqual([kept]);
});
