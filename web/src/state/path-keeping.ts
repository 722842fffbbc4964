import { sameTilt, tilt, type Tilt } from "../values/tilt";
import { degreesText } from "../values/units";
import { length, type ScanVec, sub } from "../values/vec";
import type { Api } from "../wire/api";
import type { TiltTold, Tripod } from "../wire/tripod";
import type { BenchState } from "./bench-state";
import type { Command } from "./document";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** A path as it was kept on one cast: by its tilt there, and by tripod marks where they were set. */
export interface KeptPath {
  readonly castId: string;
  readonly castName: string;
  readonly tilt: Tilt;
  readonly tripod: Tripod | null;
}

/** The three marks being picked on this scan. */
export interface Picking {
  readonly kept: KeptPath;
  readonly picked: readonly ScanVec[];
}

const MOST_KEPT = 8;
/** A click this near to a place picked before is the same mark again [mm]. */
const APART_MM = 2;

export const tiltTold = (told: TiltTold): Tilt => tilt(told.anteriorDeg, told.rightDeg);

/** Tripod marks, and the way back to a path that was kept: on the same scan, or on another of the same cast. */
export class PathKeeping {
  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly edit: (command: Command) => void,
    private readonly setTilt: (to: Tilt) => void,
    private readonly keepHabits: () => void,
  ) {}

  /** Sets the three marks that the program proposes for the tilt of now. */
  async propose(): Promise<void> {
    const { cast, document } = this.store.get();
    if (!cast?.frame || !document) return;
    await this.asking("Looking for tripod marks …", async () => {
      const made = await this.api.tripod(cast.id, document.tilt);
      if (this.store.get().cast?.id === cast.id) this.change("tripod marks", made);
    });
  }

  /** Moves one mark to the place nearest to a wanted one at the height of the others. */
  async move(which: number, to: ScanVec): Promise<void> {
    const { cast, document } = this.store.get();
    const { tripod } = document ?? {};
    if (!cast || !tripod) return;
    await this.asking(null, async () => {
      const moved = await this.api.moveTripod(cast.id, tripod, which, to);
      if (this.store.get().document?.tripod === tripod) this.change(`tripod mark ${which + 1}`, moved);
    });
  }

  remove(): void {
    this.change("removed tripod marks", null);
  }

  /** The paths that were kept on other scans, newest first; those of casts that are open can be laid on this one. */
  elsewhere(): readonly KeptPath[] {
    const { cast, keptPaths } = this.store.get();
    return keptPaths.filter(({ castId, castName }) => castId !== cast?.id || castName !== cast.name);
  }

  /** Remembers the tilt of now beside the cast, for another scan of it. */
  remember(): void {
    const { cast, document } = this.store.get();
    if (!cast || !document) return;
    const tripod = document.tripod?.tilt && sameTilt(tiltTold(document.tripod.tilt), document.tilt) ? document.tripod : null;
    const now: KeptPath = { castId: cast.id, castName: cast.name, tilt: document.tilt, tripod };
    const others = this.store.get().keptPaths.filter(({ castId, castName }) => castId !== cast.id || castName !== cast.name);
    this.store.set({ keptPaths: [now, ...others].slice(0, MOST_KEPT) });
    this.keepHabits();
  }

  /**
   * Puts the cast back where it was, in one action: on the scan that the marks were set on by their tilt; on another one by
   * laying the scans where the first is open, else by asking for the three marks.
   */
  async putBack(): Promise<void> {
    const own = this.store.get().document?.tripod;
    if (own?.tilt) {
      this.setTilt(tiltTold(own.tilt));
      return;
    }
    const [kept] = this.elsewhere();
    if (kept && this.isOpen(kept)) await this.layOn(kept);
    else if (kept?.tripod) this.pickMarks(kept);
  }

  isOpen({ castId, castName }: KeptPath): boolean {
    return this.store.get().casts.some(({ id, name }) => id === castId && name === castName);
  }

  /** Carries a path over from another open cast, of which this one is a rescan. */
  async layOn(kept: KeptPath): Promise<void> {
    const { cast } = this.store.get();
    if (!cast) return;
    await this.asking(`Laying this scan on ${kept.castName} …`, async () => {
      const { tilt: told, share, medianMm } = await this.api.carryOver(cast.id, kept.castId, kept.tilt);
      if (!told || this.store.get().cast?.id !== cast.id) return;
      this.setTilt(tiltTold(told));
      this.store.set({
        note: `As ${kept.castName} stood at ${degreesText(kept.tilt.anterior)} / ${degreesText(kept.tilt.right)}: ${Math.round(100 * share)} % of this scan lies on it, ${medianMm.toFixed(3)} mm off in the middle.`,
      });
    });
  }

  /** Asks for the three marks on this scan. */
  pickMarks(kept: KeptPath): void {
    this.store.set({ picking: { kept, picked: [] }, note: null, problem: null });
  }

  stopPicking(): void {
    this.store.set({ picking: null });
  }

  /** One of the three marks; the third gives the path back. A click on a place picked before takes it away. */
  async pick(place: ScanVec): Promise<void> {
    const { picking, cast } = this.store.get();
    if (!picking || !cast) return;
    const { kept } = picking;
    const others = picking.picked.filter((each) => length(sub(each, place)) > APART_MM);
    const picked = others.length < picking.picked.length ? others : [...others, place];
    this.store.set({ picking: { kept, picked } });
    if (picked.length < 3 || !kept.tripod) return;
    const { tripod } = kept;
    await this.asking(null, async () => {
      const { tilt: told, axisErrorDeg, disagreementMm } = await this.api.recover(cast.id, tripod, picked);
      if (!told || this.store.get().cast?.id !== cast.id) return;
      this.setTilt(tiltTold(told));
      this.store.set({
        picking: null,
        note: `Found again within ± ${axisErrorDeg.toFixed(2)}°, 95 times in 100; the distances agree to ${disagreementMm.toFixed(2)} mm.`,
      });
    });
  }

  private change(what: string, to: Tripod | null): void {
    const from = this.store.get().document?.tripod ?? null;
    this.edit({ kind: "tripod", what, from, to });
    if (to) this.remember();
  }

  private async asking(busy: string | null, ask: () => Promise<void>): Promise<void> {
    this.store.set({ problem: null, note: null, ...(busy ? { busy } : {}) });
    try {
      await ask();
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    } finally {
      if (busy && this.store.get().busy === busy) this.store.set({ busy: null });
    }
  }
}
