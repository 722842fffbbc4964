import type { Api } from "../wire/api";
import type { BenchState } from "./bench-state";
import type { Document } from "./document";
import type { Keep } from "./keep";
import { choicesSaid } from "./plan-choices";
import { problemOf } from "./problem-of";
import type { Store } from "./store";

/** Rest of the hand after which an edit is saved [ms]. */
export const SAVE_AFTER_MS = 700;

/**
 * Keeps the work on the bench in a case of the store, once a person said in which: every edit is saved when the hand rests, and
 * called saved once the program says that it is on the disk.
 */
export class Keeping {
  private saved: Document | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<void> | null = null;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly keep: Keep,
  ) {}

  async list(): Promise<void> {
    try {
      this.store.set({ cases: await this.api.cases() });
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  /** Makes a case of what lies on the table. */
  async keepAs(code: string): Promise<void> {
    const wanted = code.trim();
    if (!wanted) return;
    await this.save(wanted, null);
    await this.list();
  }

  /** What was saved is what lies there now: a case was opened. */
  opened(): void {
    clearTimeout(this.timer);
    this.saved = this.store.get().document;
    this.store.set({ kept: "saved" });
  }

  /** A later step of the program moved the case on. */
  moved(revision: number): void {
    const { caseOf } = this.store.get();
    if (caseOf) this.store.set({ caseOf: { ...caseOf, revision } });
    this.keep.keepDocument(this.store.get());
  }

  /** Something that the case keeps beside the document changed: it is saved with it. */
  changedBeside(): void {
    this.saved = null;
    this.follow();
  }

  follow(): void {
    const { caseOf, document, kept } = this.store.get();
    if (!caseOf || !document || document === this.saved || this.running) return;
    if (kept !== "changed") this.store.set({ kept: "changed" });
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.saveNow(), SAVE_AFTER_MS);
  }

  /** Saves at once what is not saved yet. */
  async saveNow(): Promise<void> {
    clearTimeout(this.timer);
    await this.running;
    const { caseOf, document } = this.store.get();
    if (caseOf && document !== this.saved) await this.save(caseOf.code, caseOf.revision);
  }

  private async save(code: string, on: number | null): Promise<void> {
    await this.running;
    this.running = this.saving(code, on);
    await this.running;
    this.running = null;
    this.follow();
  }

  private async saving(code: string, on: number | null): Promise<void> {
    const { cast, document, history, caseOf } = this.store.get();
    if (!cast || !document) return;
    this.store.set({ kept: "saving" });
    this.saved = document; // what fails is not tried again before the next edit
    try {
      const { revision } = await this.api.saveCase(code, { cast: cast.id, on, bench: { document, history }, tilt: [document.tilt.anterior, document.tilt.right], choices: choicesSaid(document.plan, document.clasps), answers: document.answers });
      if (this.store.get().cast?.id === cast.id) {
        this.store.set({ caseOf: { code, revision }, kept: "saved" });
        this.keep.keepDocument(this.store.get());
      }
    } catch (error) {
      this.store.set({ kept: "failed", caseOf, problem: problemOf(error) });
    }
  }
}
