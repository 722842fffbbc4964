import { sameTilt, type Tilt } from "../values/tilt";
import type { Api } from "../wire/api";
import type { AbutmentSheet, AnswersSaid } from "../wire/abutments";
import type { Problem, TeethInfo } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Document } from "./document";
import { armsSaid, sameArms } from "./ledger";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** What was judged, and from what. */
export interface Judged {
  readonly sheet: AbutmentSheet | null;
  /** Why there is none. */
  readonly problem: Problem | null;
  readonly tilt: Tilt;
  readonly teeth: TeethInfo;
  readonly answers: AnswersSaid;
  /** What lay over the cast then. */
  readonly opposing: BenchState["opposing"];
  /** The choices, for the arms that were shaped by hand. */
  readonly clasps: Document["clasps"];
}

/** Whether the ledger still says what holds for the tilt, the teeth, the opposing scan and the answers on the bench. */
export function holds(judged: Judged | null, { document, teeth, opposing }: Pick<BenchState, "document" | "teeth" | "opposing">): boolean {
  return judged !== null && document !== null && judged.teeth === teeth && judged.opposing === opposing && sameTilt(judged.tilt, document.tilt) && judged.answers === document.answers && sameArms(judged.clasps, document.clasps);
}

/** Whether the tilt has come to rest: what was surveyed exactly is what the document wants. */
export const atRest = ({ survey, document }: Pick<BenchState, "survey" | "document">): boolean =>
  survey?.head.exact === true && document !== null && sameTilt({ anterior: survey.head.tilt[0], right: survey.head.tilt[1] }, document.tilt);

/**
 * Keeps the ledger in step with tilt, teeth and answers while its page lies open: the newest wins, one is judged at a time, and
 * none before the tilt has come to rest.
 */
export class Judging {
  private running = false;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
  ) {}

  follow(): void {
    if (!this.running) void this.run();
  }

  private async run(): Promise<void> {
    this.running = true;
    for (;;) {
      const state = this.store.get();
      const { cast, document, teeth, page, judged, teething, opposing } = state;
      if (page !== "ledger" || !cast || !document || !teeth || teeth.teeth.length === 0 || teething || !atRest(state) || holds(judged, state)) break;
      const from = { tilt: document.tilt, teeth, answers: document.answers, opposing, clasps: document.clasps };
      this.store.set({ judging: true });
      let next: Judged;
      try {
        next = { ...from, sheet: await this.api.abutments(cast.id, document.tilt, document.answers, armsSaid(document.clasps)), problem: null };
      } catch (error) {
        next = { ...from, sheet: null, problem: problemOf(error) };
      }
      if (this.store.get().cast?.id === cast.id) this.store.set({ judged: next });
    }
    this.running = false;
    if (this.store.get().judging) this.store.set({ judging: false });
  }
}
