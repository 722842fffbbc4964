import type { Api } from "../wire/api";
import type { NamedChoices, PlansCompared } from "../wire/comparison";
import type { Plan } from "../wire/plan";
import type { Fdi, Problem, TeethInfo } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Command, Document, PlanChosen } from "./document";
import { changes, choicesSaid, NOTHING_CHOSEN } from "./plan-choices";
import { type Planned, planHolds } from "./planning";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** Two plans held against each other, and from what. */
export interface Compared {
  readonly told: PlansCompared | null;
  /** Why there is nothing. */
  readonly problem: Problem | null;
  readonly first: Planned;
  readonly other: PlanChosen;
}

/** A plan that this one can be held against. */
export interface Other {
  readonly key: string;
  readonly name: string;
  readonly chosen: PlanChosen;
}

const PROPOSED: PlanChosen = { plan: NOTHING_CHOSEN, clasps: {} };

/** The tooth behind each bounded space that carries something: the plan may do without it. */
export function behind(plan: Plan, spaces: TeethInfo["spaces"]): readonly Fdi[] {
  const carrying = new Set(plan.rests.map(({ tooth }) => tooth));
  return spaces
    .filter(({ closed }) => !closed)
    .flatMap(({ missing }) => [...new Set(missing.map((tooth) => Math.floor(tooth / 10)))].map((quadrant) => ({ quadrant, last: Math.max(...missing.filter((tooth) => Math.floor(tooth / 10) === quadrant)) })))
    .flatMap(({ quadrant, last }) => {
      const next = last + 1;
      return Math.floor(next / 10) === quadrant && carrying.has(next) ? [next] : [];
    });
}

/** What the plan on the table can be held against: what is proposed, itself without an abutment behind a space, what was kept. */
export function others(state: Pick<BenchState, "document" | "planned" | "teeth">, nameOf: (tooth: Fdi) => string): readonly Other[] {
  const { document, planned, teeth } = state;
  if (!document) return [];
  const { plan, clasps, keptPlans } = document;
  const made = planned?.sheet?.plan;
  const without = made && teeth ? behind(made, teeth.spaces) : [];
  return [
    ...(changes(plan) === 0 && Object.keys(clasps).length === 0 ? [] : [{ key: "proposed", name: "as proposed", chosen: PROPOSED }]),
    ...without.map((tooth) => ({ key: `without ${tooth}`, name: `without ${nameOf(tooth)}`, chosen: { plan: { ...plan, notUsed: [...plan.notUsed, tooth] }, clasps } })),
    ...keptPlans.map(({ id, name, plan: kept, clasps: with_ }) => ({ key: id, name, chosen: { plan: kept, clasps: with_ } })),
  ];
}

const same = (one: PlanChosen, other: PlanChosen): boolean => JSON.stringify(one) === JSON.stringify(other);
const named = (name: string, { plan, clasps }: PlanChosen): NamedChoices => ({ name, choices: choicesSaid(plan, clasps) });

/** The other plan that was asked for; null: none. */
export const asked = (state: BenchState): Other | null => others(state, String).find(({ key }) => key === state.against) ?? null;

/** Whether the comparison still is that of the plans on the bench. */
export const comparedHolds = (state: BenchState): boolean => {
  const other = asked(state);
  return other !== null && state.compared !== null && state.compared.first === state.planned && same(state.compared.other, other.chosen) && planHolds(state.planned, state);
};

/** Keeps plans by name, and holds the plan on the table against another while its page lies open. */
export class Comparing {
  private running = false;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly edit: (command: Command) => void,
  ) {}

  /** Keeps what is chosen now under a name. */
  keep(given: string): void {
    const { document } = this.store.get();
    const name = given.trim().slice(0, 40);
    if (!document || !name) return;
    const { plan, clasps, keptPlans } = document;
    this.edit({ kind: "kept-plan", index: keptPlans.length, from: null, to: { id: crypto.randomUUID(), name, plan, clasps } });
  }

  remove(id: string): void {
    const { document, against } = this.store.get();
    const index = document?.keptPlans.findIndex((kept) => kept.id === id) ?? -1;
    const from = document?.keptPlans[index];
    if (from) this.edit({ kind: "kept-plan", index, from, to: null });
    if (against === id) this.store.set({ against: null });
  }

  /** Puts a kept plan on the table; one step to undo. */
  take(id: string): void {
    const { document } = this.store.get();
    const kept = document?.keptPlans.find((each) => each.id === id);
    if (!document || !kept) return;
    this.edit({ kind: "chosen", what: `plan ${kept.name}`, from: chosenOf(document), to: chosenOf(kept) });
  }

  follow(): void {
    if (!this.running) void this.run();
  }

  private async run(): Promise<void> {
    this.running = true;
    for (;;) {
      const state = this.store.get();
      const { cast, document, planned, page, against } = state;
      if (page !== "plan" || against === null || !cast || !document || !planned?.sheet || !planHolds(planned, state) || comparedHolds(state)) break;
      const other = asked(state);
      if (!other) break;
      this.store.set({ comparing: true });
      const from = { first: planned, other: other.chosen };
      let compared: Compared;
      try {
        const told = await this.api.comparePlans(cast.id, planned.tilt, planned.answers, [named("this plan", chosenOf(document)), named(other.name, other.chosen)]);
        compared = { ...from, told, problem: null };
      } catch (error) {
        compared = { ...from, told: null, problem: problemOf(error) };
      }
      if (this.store.get().cast?.id === cast.id) this.store.set({ compared });
    }
    this.running = false;
    if (this.store.get().comparing) this.store.set({ comparing: false });
  }
}

const chosenOf = ({ plan, clasps }: Pick<Document, "plan" | "clasps">): PlanChosen => ({ plan, clasps });
