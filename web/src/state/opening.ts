import type { Jaw } from "../values/tilt";
import { type Api, type LengthUnit, Refused } from "../wire/api";
import type { CastInfo, FrameChoice, Problem } from "../wire/types";
import type { BenchState } from "./bench-state";
import { emptyDocument } from "./document";
import { NO_HISTORY } from "./history";
import type { Keep } from "./keep";
import type { Store } from "./store";
import type { Surveying } from "./surveying";

/** Puts casts on the bench. What cannot be opened leaves everything as it was, with the reason shown. */
export class Opening {
  /** The file on the bench, kept so that it can be read again in another unit of length. */
  private file: File | null = null;
  private turn = 0;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly keep: Keep,
    private readonly surveying: Surveying,
  ) {}

  /** What the bench starts with: the cast opened last on this program, or the lower demo cast. */
  async start(): Promise<void> {
    await this.opening("the bench", async () => {
      const { casts, demo } = await this.api.casts();
      const last = casts.at(-1);
      if (last) return this.api.cast(last.id);
      return demo[0] ? this.api.openDemo(demo[0]) : null;
    });
  }

  async demo(jaw: Jaw): Promise<void> {
    if (await this.opening(`the ${jaw} demo cast`, () => this.api.openDemo(jaw))) this.file = null;
  }

  async openFile(file: File, as: { jaw?: Jaw; unit?: LengthUnit } = {}): Promise<void> {
    if (await this.opening(file.name, () => this.api.openFile(file.name, file, as))) this.file = file;
  }

  /** Reads the same file again as written in another unit of length. */
  async inUnit(unit: LengthUnit): Promise<void> {
    if (this.file) await this.openFile(this.file, { unit });
  }

  get canChangeUnit(): boolean {
    return this.file !== null;
  }

  /** Sets the frame that a person chose; the server's refusal leaves the frame of before. */
  async reframe(choice: FrameChoice): Promise<void> {
    const { cast } = this.store.get();
    if (!cast) return;
    try {
      const next = await this.api.setFrame(cast.id, choice);
      if (this.store.get().cast?.id !== cast.id) return;
      // Bands and lines of the old frame would stand on the cast turned anew until the next survey comes.
      this.store.set({ cast: next, survey: null, profile: null, markReadings: new Map() });
      this.surveying.open(next);
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  private async opening(what: string, ask: () => Promise<CastInfo | null>): Promise<boolean> {
    const turn = ++this.turn;
    this.store.set({ busy: `Opening ${what} …`, problem: null, note: null });
    try {
      const cast = await ask();
      const mesh = cast ? await this.api.mesh(cast.id) : null;
      if (turn !== this.turn) return false; // another cast was asked for meanwhile
      const before = this.store.get().cast;
      if (cast && mesh) this.lay(cast, mesh);
      // A cast that this page brought takes the server's memory; once it is off the table nobody asks for it.
      if (this.file && before && before.id !== cast?.id) void this.api.close(before.id).catch(() => undefined);
      this.store.set({ busy: null });
      return cast !== null;
    } catch (error) {
      if (turn === this.turn) this.store.set({ busy: null, problem: problemOf(error) });
      return false;
    }
  }

  private lay(cast: CastInfo, mesh: NonNullable<BenchState["mesh"]>): void {
    this.surveying.close();
    const kept = this.keep.document(mesh);
    this.store.set({
      cast,
      mesh,
      survey: null,
      document: kept.document ?? emptyDocument({ jaw: cast.jaw, up: null, front: null }),
      history: kept.history ?? NO_HISTORY,
      carried: null,
      selected: null,
      markReadings: new Map(),
      profile: null,
      asking: cast.frame ? null : "up",
    });
    this.surveying.open(cast);
  }
}

export function problemOf(error: unknown): Problem {
  if (error instanceof Refused) return error.problem;
  const message = error instanceof Error ? error.message : String(error);
  return { code: "bench.unexpected", message: `The bench could not go on: ${message}`, advice: "Reload the page; the cast is kept." };
}
