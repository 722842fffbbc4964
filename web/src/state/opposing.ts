import type { Api } from "../wire/api";
import type { CastInfo, OpposingTold, PlaneOffer } from "../wire/types";
import type { ScanVec } from "../values/vec";
import type { BenchState } from "./bench-state";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** Keeps the room to the opposing teeth in step with the cast on the table and its frame. */
export class Opposing {
  private known: { readonly id: string; readonly frame: CastInfo["frame"] } | null = null;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly keeping: { changedBeside(): void },
  ) {}

  /** Another cast or another frame: what is known of its opposing scan is asked for. */
  follow(): void {
    const { cast } = this.store.get();
    if (!cast?.frame || (this.known?.id === cast.id && this.known.frame === cast.frame)) return;
    this.known = { id: cast.id, frame: cast.frame };
    void this.ask(cast.id, () => this.api.opposing(cast.id));
  }

  /** Lays another open cast over this one, as it bites; null takes it away. */
  async lay(opposing: string | null, bite: string | null): Promise<void> {
    const { cast } = this.store.get();
    if (!cast) return;
    this.store.set({ laying: true, problem: null });
    const done = await this.ask(cast.id, () => this.api.setOpposing(cast.id, opposing, bite));
    this.store.set({ laying: false });
    if (done) this.keeping.changedBeside();
  }

  /** The occlusal plane over the teeth found, or through three points; null where there is none, with the reason shown. */
  async plane(points: readonly ScanVec[] | null): Promise<PlaneOffer | null> {
    const { cast } = this.store.get();
    if (!cast) return null;
    try {
      return await this.api.planeOffer(cast.id, points);
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
      return null;
    }
  }

  private async ask(id: string, what: () => Promise<OpposingTold>): Promise<boolean> {
    try {
      const { opposing, kept } = await what();
      const clearance = opposing ? await this.api.clearance(id) : null;
      if (this.store.get().cast?.id !== id) return false;
      this.store.set({ opposing, opposingKept: kept ?? null, clearance, ...(clearance ? {} : { shading: "undercut" }) });
      return true;
    } catch (error) {
      if (this.store.get().cast?.id === id) this.store.set({ problem: problemOf(error) });
      return false;
    }
  }
}
