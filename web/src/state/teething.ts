import type { Api } from "../wire/api";
import type { Fdi, Spot, TeethInfo, TeethSaid, ToothPoint } from "../wire/types";
import type { BenchState } from "./bench-state";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** Whether a place is without its tooth: as was said, or as the scan shows it. A tooth yet to be extracted stands. */
export const isGap = (tooth: Fdi | null, said: TeethSaid, teeth: TeethInfo | null): boolean => {
  if (tooth === null) return false;
  if (said.missing.includes(tooth)) return true;
  const stands = teeth?.teeth.some((each) => each.tooth === tooth) ?? false;
  return !stands && (teeth?.spaces.some(({ missing }) => missing.includes(tooth)) ?? false);
};

/** Keeps the teeth in step with what the document says of them: the newest wins, one is looked for at a time. */
export class Teething {
  private running = false;
  private stale = false;
  /** What was last found, so that nothing is looked for twice. */
  private done: { readonly castId: string; readonly frame: unknown; readonly said: TeethSaid } | null = null;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly found: () => void,
  ) {}

  follow(): void {
    this.stale = true;
    if (!this.running) void this.run();
  }

  /** Points at a place that is no tooth yet: it gets the number that it most likely has, for a person to confirm. */
  async point(spot: Spot, cuts: ToothPoint | null): Promise<void> {
    const { cast } = this.store.get();
    if (!cast?.frame || !cast.jaw) return;
    try {
      const tooth = await this.api.toothNumber(cast.id, spot.point);
      if (this.store.get().cast?.id === cast.id) this.store.set({ adding: { ...spot, tooth, cuts } });
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  private async run(): Promise<void> {
    this.running = true;
    while (this.stale) {
      this.stale = false;
      const { cast, document } = this.store.get();
      if (!cast?.frame || !cast.jaw || !document) continue;
      const wanted = { castId: cast.id, frame: cast.frame, said: document.teeth };
      if (this.done && this.done.castId === wanted.castId && this.done.frame === wanted.frame && this.done.said === wanted.said) continue;
      this.store.set({ teething: true });
      try {
        const teeth = await this.api.teeth(cast.id, cast.jaw, document.teeth);
        const labels = teeth.teeth.length > 0 ? await this.api.toothLabels(cast.id) : null;
        const now = this.store.get();
        if (now.cast?.id !== cast.id || now.cast.frame !== cast.frame) continue;
        this.done = wanted;
        if (now.document?.teeth !== wanted.said) continue; // said otherwise meanwhile; looked for again
        const stays = teeth.teeth.some(({ tooth }: { tooth: Fdi }) => tooth === now.tooth) || isGap(now.tooth, wanted.said, teeth);
        this.store.set({ teeth, labels, ...(stays ? {} : { tooth: null, toothDepths: null }) });
        this.found();
      } catch (error) {
        this.store.set({ problem: problemOf(error) });
      }
    }
    this.running = false;
    this.store.set({ teething: false });
  }
}
