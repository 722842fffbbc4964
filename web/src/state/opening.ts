import type { Jaw } from "../values/tilt";
import type { Api, LengthUnit } from "../wire/api";
import type { CaseCard, OpenedCase } from "../wire/cases";
import type { CastCard, CastInfo, FrameChoice } from "../wire/types";
import type { BenchState } from "./bench-state";
import { emptyDocument, NOTHING_SAID } from "./document";
import { NOTHING_CHOSEN } from "./plan-choices";
import { NO_HISTORY } from "./history";
import type { Keep } from "./keep";
import { problemOf } from "./problem-of";
import { ALL_IN_THE_WAY } from "./searching";
import type { Store } from "./store";
import type { Surveying } from "./surveying";
import type { Teething } from "./teething";

/** What belongs to one cast, with none on the table. */
const EMPTY_TABLE: Pick<
  BenchState,
  "cast" | "mesh" | "thinned" | "survey" | "document" | "history" | "carried" | "selected" | "markReadings" | "profile" | "strip" | "asking" | "planePoints" | "opposing" | "opposingKept" | "clearance" | "shading" | "picking" | "beside" | "tripodDrag" | "teeth" | "labels" | "tooth" | "toothDepths" | "adding" | "toothHand" | "judged" | "planned" | "inTheWay" | "chosenPart" | "step" | "against" | "compared" | "caseOf" | "row" | "pointed"
> = {
  cast: null,
  mesh: null,
  thinned: null,
  survey: null,
  document: null,
  history: NO_HISTORY,
  carried: null,
  selected: null,
  markReadings: new Map(),
  profile: null,
  strip: [],
  asking: null,
  picking: null,
  beside: null,
  tripodDrag: null,
  planePoints: [],
  opposing: null,
  opposingKept: null,
  clearance: null,
  shading: "undercut",
  teeth: null,
  labels: null,
  tooth: null,
  toothDepths: null,
  adding: null,
  toothHand: null,
  judged: null,
  planned: null,
  inTheWay: ALL_IN_THE_WAY,
  chosenPart: null,
  step: null,
  against: null,
  compared: null,
  caseOf: null,
  row: null,
  pointed: null,
};

/** Puts casts on the bench. What cannot be opened leaves everything as it was, with the reason shown. */
export class Opening {
  /** The files of the casts that this page brought, by id, so that they can be read again in another unit of length. */
  private readonly files = new Map<string, File>();
  private turn = 0;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
    private readonly keep: Keep,
    private readonly surveying: Surveying,
    private readonly teething: Teething,
  ) {}

  /** What the bench starts with: the cast that lay on this tab's table, else the one opened last, or the lower demo cast. */
  async start(): Promise<void> {
    await this.opening("the bench", async () => {
      const { casts, demo } = await this.api.casts();
      const table = this.keep.table();
      const first = casts.find(({ id }) => id === table) ?? casts.at(-1);
      if (first) return this.api.cast(first.id);
      return demo[0] ? this.api.openDemo(demo[0]) : null;
    });
  }

  async demo(jaw: Jaw): Promise<void> {
    await this.opening(`the ${jaw} demo cast`, () => this.api.openDemo(jaw));
  }

  /** Lays another of the open casts on the table; its document comes back with it. */
  async show({ id, name }: CastCard): Promise<void> {
    if (this.store.get().cast?.id !== id) await this.opening(name, () => this.api.cast(id));
  }

  /** Gives up a cast that is no longer needed: it takes the program's memory. What was kept of its document stays. */
  async putAway({ id }: CastCard): Promise<void> {
    try {
      await this.api.close(id);
      this.files.delete(id);
      await this.list();
      if (this.store.get().cast?.id !== id) return;
      this.surveying.close();
      this.store.set({ ...EMPTY_TABLE });
      const next = this.store.get().casts.at(-1);
      if (next) await this.show(next);
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  async openFile(file: File, as: { jaw?: Jaw; unit?: LengthUnit } = {}): Promise<void> {
    const cast = await this.opening(file.name, () => this.api.openFile(file.name, file, as));
    if (cast) this.files.set(cast.id, file);
  }

  /** Reads the same file again as written in another unit of length; the reading of before is given up. */
  async inUnit(unit: LengthUnit): Promise<void> {
    const before = this.store.get().cast;
    const file = before && this.files.get(before.id);
    if (!file) return;
    await this.openFile(file, { unit });
    if (this.store.get().cast?.id !== before.id) await this.putAway(before);
  }

  get canChangeUnit(): boolean {
    return this.files.has(this.store.get().cast?.id ?? "");
  }

  /** Sets the frame that a person chose; the server's refusal leaves the frame of before. */
  async reframe(choice: FrameChoice): Promise<void> {
    const { cast } = this.store.get();
    if (!cast) return;
    try {
      const next = await this.api.setFrame(cast.id, choice);
      if (this.store.get().cast?.id !== cast.id) return;
      // Bands and lines of the old frame would stand on the cast turned anew until the next survey comes.
      this.store.set({ cast: next, survey: null, profile: null, strip: [], markReadings: new Map(), teeth: null, labels: null, toothDepths: null });
      this.surveying.open(next);
      this.teething.follow();
      await this.list();
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
  }

  /** Takes a case up again, with everything that was decided and can be undone; null where that could not be. */
  async openCase(card: CaseCard): Promise<OpenedCase | null> {
    let opened: OpenedCase | null = null;
    const cast = await this.opening(
      `case ${card.code}`,
      async () => (opened = await this.api.openCase(card)).cast,
      () => (opened ? { ...(opened.bench as Partial<BenchState>), caseOf: { code: opened.code, revision: opened.revision } } : {}),
    );
    this.keep.keepDocument(this.store.get());
    return cast === null ? null : opened;
  }

  /** @param from where the document comes from, if not from what this tab keeps */
  private async opening(what: string, ask: () => Promise<CastInfo | null>, from?: () => Partial<BenchState>): Promise<CastInfo | null> {
    const turn = ++this.turn;
    this.store.set({ busy: `Opening ${what} …`, problem: null, note: null });
    try {
      const cast = await ask();
      const mesh = cast ? await this.api.mesh(cast.id) : null;
      await this.list();
      if (turn !== this.turn) return cast; // another cast was asked for meanwhile; this one stays open
      // What lies on the table already stays as it is.
      if (cast && mesh && (from || this.store.get().cast?.id !== cast.id)) this.lay(cast, mesh, from ? from() : this.keep.document(mesh));
      this.store.set({ busy: null });
      return cast;
    } catch (error) {
      if (turn === this.turn) this.store.set({ busy: null, problem: problemOf(error) });
      return null;
    }
  }

  private async list(): Promise<void> {
    this.store.set({ casts: (await this.api.casts()).casts });
  }

  private lay(cast: CastInfo, mesh: NonNullable<BenchState["mesh"]>, kept: Partial<BenchState>): void {
    this.surveying.close();
    this.keep.keepTable(cast.id);
    this.store.set({
      ...EMPTY_TABLE,
      cast,
      mesh,
      // What an older bench kept may lack what was added since.
      document: { ...emptyDocument({ jaw: cast.jaw, up: null, front: null }), ...kept.document, teeth: { ...NOTHING_SAID, ...kept.document?.teeth }, plan: { ...NOTHING_CHOSEN, ...kept.document?.plan } },
      history: kept.history ?? NO_HISTORY,
      caseOf: kept.caseOf ?? null,
      asking: cast.frame ? null : "up",
    });
    this.surveying.open(cast);
    this.teething.follow();
  }
}
