import { sameTilt, type Tilt } from "../values/tilt";
import type { Api } from "../wire/api";
import type { AnswersSaid } from "../wire/abutments";
import type { PlanSheet } from "../wire/plan";
import type { Problem, TeethInfo } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Document } from "./document";
import { atRest } from "./judging";
import { choicesSaid } from "./plan-choices";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** What was planned, and from what. */
export interface Planned {
  readonly sheet: PlanSheet | null;
  /** Why there is none. */
  readonly problem: Problem | null;
  readonly tilt: Tilt;
  readonly teeth: TeethInfo;
  readonly answers: AnswersSaid;
  /** What lay over the cast then. */
  readonly opposing: BenchState["opposing"];
  readonly clasps: Document["clasps"];
  readonly choices: Document["plan"];
}

/** Whether the plan still follows from the tilt, the teeth, the answers and the choices on the bench. */
export function planHolds(planned: Planned | null, { document, teeth, opposing }: Pick<BenchState, "document" | "teeth" | "opposing">): boolean {
  return (
    planned !== null &&
    document !== null &&
    planned.teeth === teeth &&
    planned.opposing === opposing &&
    sameTilt(planned.tilt, document.tilt) &&
    planned.answers === document.answers &&
    planned.clasps === document.clasps &&
    planned.choices === document.plan
  );
}

/** Keeps the plan in step with what it follows from while its page lies open: the newest wins, one is planned at a time. */
export class Planning {
  private running = false;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
  ) {}

  follow(): void {
    if (!this.running) void this.run();
  }

  /** Lays the cast with the cuts of the mouth preparation beside the one that stands, both surveyed at the plan's path. */
  async besidePrepared(): Promise<void> {
    const { cast, planned } = this.store.get();
    if (!cast || !planned?.sheet) return;
    const { tilt, answers, choices, clasps } = planned;
    try {
      const cut = await this.api.prepared(cast.id, tilt, answers, choicesSaid(choices, clasps));
      const mesh = await this.api.mesh(cut.id);
      if (this.store.get().planned !== planned) return;
      this.store.set({ beside: { from: { id: "stands", name: "as it stands", tilt }, to: { id: "prepared", name: "after preparation", tilt }, cut: { cast: cut, mesh } } });
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  /** Takes the prepared cast off the table; two tilts side by side stay. */
  endBeside(): void {
    if (this.store.get().beside?.cut) this.store.set({ beside: null });
  }

  private async run(): Promise<void> {
    this.running = true;
    for (;;) {
      const state = this.store.get();
      const { cast, document, teeth, page, planned, teething, opposing } = state;
      if (page !== "plan" || !cast || !document || !teeth || teeth.teeth.length === 0 || teething || !atRest(state) || planHolds(planned, state)) break;
      const from = { tilt: document.tilt, teeth, answers: document.answers, opposing, clasps: document.clasps, choices: document.plan };
      this.store.set({ planning: true });
      let next: Planned;
      try {
        next = { ...from, sheet: await this.api.plan(cast.id, from.tilt, from.answers, choicesSaid(from.choices, from.clasps)), problem: null };
      } catch (error) {
        next = { ...from, sheet: null, problem: problemOf(error) };
      }
      if (this.store.get().cast?.id === cast.id) this.store.set({ planned: next, step: null });
      this.endBeside();
    }
    this.running = false;
    if (this.store.get().planning) this.store.set({ planning: false });
  }
}
