import { sameTilt, type Tilt, tilt } from "../values/tilt";
import type { Api } from "../wire/api";
import { SurveyChannel } from "../wire/channel";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Mm } from "../values/units";
import type { CastInfo, Fdi, Problem, Reading, Spot, Zone } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Mark } from "./document";
import type { Store } from "./store";

const ROD = "rod";
/** A tilt that has rested for this long is surveyed exactly [ms]. */
const REST_MS = 200;

/**
 * Keeps what the server measures in step with the document: the survey follows the tilt; the rod, the profile and every mark
 * are read again on each new survey.
 */
export class Surveying {
  private channel: SurveyChannel | null = null;
  private asked: Tilt | null = null;
  private fetching: string | null = null;
  private rest: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly store: Store<BenchState>,
    private readonly api: Api,
  ) {}

  open(cast: CastInfo): void {
    this.close();
    if (!cast.frame) return;
    this.channel = new SurveyChannel(this.api.surveyAddress(cast.id), {
      surveyed: (frame) => this.surveyed(frame),
      refused: (problem: Problem) => this.store.set({ problem }),
      connected: (connected) => {
        this.store.set({ connected });
        if (!connected) return;
        this.asked = null; // a new line knows no survey
        this.follow();
      },
    });
  }

  close(): void {
    clearTimeout(this.rest);
    this.channel?.close();
    this.channel = null;
    this.asked = null;
  }

  /** Asks for the document's tilt, if it is not asked for yet: a glimpse while it moves, the exact survey once it rests. */
  follow(): void {
    const { cast, document, thinned, survey } = this.store.get();
    if (!cast || !document || !this.channel) return;
    const { tilt } = document;
    if (this.asked && sameTilt(this.asked, tilt)) return;
    const moving = this.asked !== null; // on a new line the first survey is an exact one
    this.asked = tilt;
    this.readStrip();
    clearTimeout(this.rest);
    if (!moving || !thinned || !survey) {
      this.channel.survey(tilt, cast.gaugesMm);
      return;
    }
    void this.channel.glimpse(tilt, cast.gaugesMm).then(() => {
      if (this.asked !== tilt) return; // it moved on
      this.rest = setTimeout(() => this.channel?.survey(tilt, cast.gaugesMm), REST_MS);
    });
  }

  /** Reads what the rod carried to its place finds there. */
  carry(spot: Spot & { readonly onCurve: boolean }): void {
    const { carried } = this.store.get();
    this.store.set({ carried: { ...spot, reading: carried?.reading ?? null } });
    this.readRod();
  }

  readMark(mark: Mark): void {
    void this.channel?.read(`mark ${mark.id}`, mark, mark.gaugeMm).then((reading) => {
      if (reading) this.setMarkReading(mark, reading);
    });
  }

  seat(mark: Mark): ReturnType<SurveyChannel["seat"]> {
    if (!this.channel || mark.gaugeMm === null) return Promise.resolve(null);
    return this.channel.seat(`mark ${mark.id}`, mark, mark.gaugeMm);
  }

  readRod(): void {
    const { carried, gauge } = this.store.get();
    if (!carried || !this.channel) return;
    const { point, triangle } = carried;
    void this.channel.read(ROD, { point, triangle }, gauge).then((reading) => {
      const now = this.store.get().carried;
      if (reading && now) this.store.set({ carried: { ...now, reading } });
    });
    void this.channel.profile(ROD, { point, triangle }, gauge).then((profile) => {
      if (profile) this.store.set({ profile });
    });
  }

  /** Reads what hangs on the teeth: other ones were found. */
  readTeeth(): void {
    this.readTooth();
    this.readStrip();
  }

  /** Reads the chosen tooth at the path of the newest exact survey. */
  readTooth(): void {
    const { tooth, survey, teeth } = this.store.get();
    if (tooth === null || !survey?.head.exact || !teeth?.teeth.some((each) => each.tooth === tooth)) return;
    void this.channel?.tooth(tooth).then((toothDepths) => {
      if (toothDepths && this.store.get().tooth === toothDepths.tooth) this.store.set({ toothDepths });
    });
  }

  /** The strip follows the tilt and the teeth; it waits for no survey. */
  readStrip(): void {
    const { document, teeth } = this.store.get();
    if (!document || !teeth || teeth.teeth.length === 0) {
      if (this.store.get().strip.length > 0) this.store.set({ strip: [] });
      return;
    }
    void this.channel?.strip(document.tilt).then((strip) => {
      if (strip) this.store.set({ strip });
    });
  }

  placed(tooth: Fdi, zone: Zone, gauge: Mm): ReturnType<SurveyChannel["placed"]> {
    return this.channel?.placed(tooth, zone, gauge) ?? Promise.resolve(null);
  }

  private surveyed(survey: SurveyFrame): void {
    const { carried } = this.store.get();
    // The gauge's curve has moved; the rod stays on its place of the cast.
    this.store.set({ survey, carried: carried && { ...carried, onCurve: false } });
    this.readRod();
    if (!survey.head.exact) return;
    void this.fetchThinned();
    this.readTooth();
    for (const mark of this.store.get().document?.marks ?? []) this.readMark(mark);
  }

  /** Once the first exact picture is there, so that it need not wait. Without it every picture is exact, and slower. */
  private async fetchThinned(): Promise<void> {
    const { cast, thinned } = this.store.get();
    if (!cast || thinned || this.fetching === cast.id) return;
    this.fetching = cast.id;
    const mesh = await this.api.thinned(cast.id).catch(() => null);
    this.fetching = null;
    if (mesh && this.store.get().cast?.id === cast.id) this.store.set({ thinned: mesh });
  }

  private setMarkReading(mark: Mark, reading: Reading): void {
    const now = this.store.get().document?.marks.find((each) => each.id === mark.id);
    if (!now || now.point !== mark.point) return; // moved or gone meanwhile
    this.store.set({ markReadings: new Map(this.store.get().markReadings).set(mark.id, reading) });
  }
}

/** The tilt that a survey was made at. */
export const tiltOf = ({ head }: SurveyFrame): Tilt => tilt(head.tilt[0], head.tilt[1]);
