import type { Jaw, Tilt } from "../values/tilt";
import type { Api } from "../wire/api";
import type { InTheWaySaid, PathFound, PathsCompared, SearchListener, ZoneKind } from "../wire/path";
import type { BenchState } from "./bench-state";
import { choicesSaid } from "./plan-choices";
import { type Planned, planHolds } from "./planning";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** What a search for the path counts as in the way of rigid parts. */
export interface InTheWay {
  readonly leftOut: readonly ZoneKind[];
  /** Whether the parts of the plan, once there is one, stand for the surfaces that anatomy suggests. */
  readonly byPlan: boolean;
}

export const ALL_IN_THE_WAY: InTheWay = { leftOut: [], byPlan: true };

type Seen = Pick<BenchState, "planned" | "inTheWay" | "document" | "teeth" | "opposing">;

/** The plan whose parts a search goes by; null where it goes by anatomy. A plan of other teeth, answers or choices stands for nothing. */
export function planInTheWay({ planned, inTheWay, document, teeth, opposing }: Seen): Planned | null {
  if (!inTheWay.byPlan || !planned?.sheet || !document) return null;
  // The tilt may be another: a search tries them all.
  return planHolds(planned, { document: { ...document, tilt: planned.tilt }, teeth, opposing }) ? planned : null;
}

/** The kinds of surface that can count, as a person reads them. */
export function kindsInTheWay(plan: Planned | null, jaw: Jaw | null | undefined): readonly ZoneKind[] {
  return plan ? ["base", "major-connector", "bar-arm"] : ["base", jaw === "lower" ? "lingual-strip" : "palate", "facial-strip"];
}

function said(state: Seen): InTheWaySaid {
  const plan = planInTheWay(state);
  const { leftOut } = state.inTheWay;
  if (!plan) return { leftOut };
  const { tilt, answers, choices, clasps } = plan;
  return { leftOut, plan: { tilt: [tilt.anterior, tilt.right], answers, choices: choicesSaid(choices, clasps) } };
}

/** Asks the program for paths: which is best, and what one has before another. */
export class Searching {
  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
  ) {}

  /** Counts a kind of surface as in the way, or no longer. */
  count(kind: ZoneKind, counts: boolean): void {
    const { inTheWay } = this.store.get();
    const others = inTheWay.leftOut.filter((each) => each !== kind);
    this.store.set({ inTheWay: { ...inTheWay, leftOut: counts ? others : [...others, kind] } });
  }

  goByPlan(byPlan: boolean): void {
    this.store.set({ inTheWay: { ...this.store.get().inTheWay, byPlan } });
  }

  /**
   * Tries every tilt on the cast, whose teeth must be known.
   *
   * @returns null where it was stopped, or could not be; the reason is shown
   */
  async path(listener: SearchListener, signal: AbortSignal): Promise<PathFound | null> {
    const state = this.store.get();
    if (!state.cast) return null;
    try {
      return await this.api.path(state.cast.id, said(state), listener, signal);
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
      return null;
    }
  }

  /** @returns null where it could not be; the reason is shown */
  async compared(from: Tilt, to: Tilt): Promise<PathsCompared | null> {
    const state = this.store.get();
    if (!state.cast) return null;
    try {
      return await this.api.comparePaths(state.cast.id, from, to, said(state));
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
      return null;
    }
  }
}
