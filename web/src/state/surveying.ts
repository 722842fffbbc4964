import { sameTilt, type Tilt, tilt } from "../values/tilt";
import type { Api } from "../wire/api";
import { SurveyChannel } from "../wire/channel";
import type { SurveyFrame } from "../wire/survey-frame";
import type { CastInfo, Problem, Reading, Spot } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Mark } from "./document";
import type { Store } from "./store";

const ROD = "rod";

/**
 * Keeps what the server measures in step with the document: the survey follows the tilt; the rod, the profile and every mark
 * are read again on each new survey.
 */
export class Surveying {
  private channel: SurveyChannel | null = null;
  private asked: Tilt | null = null;

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
    this.channel?.close();
    this.channel = null;
    this.asked = null;
  }

  /** Asks for the document's tilt, if it is not asked for yet. */
  follow(): void {
    const { cast, document } = this.store.get();
    if (!cast || !document || !this.channel) return;
    if (this.asked && sameTilt(this.asked, document.tilt)) return;
    this.asked = document.tilt;
    this.channel.survey(document.tilt, cast.gaugesMm);
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

  private surveyed(survey: SurveyFrame): void {
    const { carried } = this.store.get();
    // The gauge's curve has moved; the rod stays on its place of the cast.
    this.store.set({ survey, carried: carried && { ...carried, onCurve: false } });
    this.readRod();
    for (const mark of this.store.get().document?.marks ?? []) this.readMark(mark);
  }

  private setMarkReading(mark: Mark, reading: Reading): void {
    const now = this.store.get().document?.marks.find((each) => each.id === mark.id);
    if (!now || now.point !== mark.point) return; // moved or gone meanwhile
    this.store.set({ markReadings: new Map(this.store.get().markReadings).set(mark.id, reading) });
  }
}

/** The tilt that a survey was made at. */
export const tiltOf = ({ head }: SurveyFrame): Tilt => tilt(head.tilt[0], head.tilt[1]);
