import { type Change, type Firmness, type MouthSaid, type PlaceSaid, type ToothSaid, type TorusSaid, type TorusSite, withFreeEnd, withMouth, withPlace, withTooth, withTorus } from "../values/chart";
import { toothText } from "../values/tooth-number";
import { mm } from "../values/units";
import type { Fdi, KennedyQuestion, TeethSaid, ToothPoint } from "../wire/types";
import type { BenchState } from "./bench-state";
import type { Store } from "./store";

/** A joined tooth is fixed over this share of its width about the middle of its top. */
const JOINED_SHARE = 0.35;

const FIELDS = { abutment: "abutment", replaced: "replace", closed: "spaceClosed" } as const;

/** What a person says of teeth beside where they are: the chart, and that two are one or one is two. Each is an edit. */
export class Charting {
  constructor(
    private readonly store: Store<BenchState>,
    private readonly say: (what: string, to: TeethSaid) => void,
  ) {}

  tooth(tooth: Fdi, what: string, change: Change<ToothSaid>): void {
    const gone = "replace" in change || "spaceClosed" in change ? [tooth] : [];
    this.chart(`${what} of ${this.name(tooth)}`, (said) => withTooth(said.chart, tooth, change), gone);
  }

  place(tooth: Fdi, what: string, change: Change<PlaceSaid>): void {
    this.chart(`${what} at ${this.name(tooth)}`, (said) => withPlace(said.chart, tooth, change));
  }

  freeEnd(side: "right" | "left", firmness: Firmness | undefined): void {
    this.chart(`tissue of the ${side} free end`, (said) => withFreeEnd(said.chart, side, firmness));
  }

  mouth(what: string, change: Change<MouthSaid>): void {
    this.chart(what, (said) => withMouth(said.chart, change));
  }

  torus(site: TorusSite, words: string, change: Change<TorusSaid>): void {
    this.chart(words, (said) => withTorus(said.chart, site, change));
  }

  /** Answers a question of the class; one answer is for all its places. */
  answer({ asks, places }: KennedyQuestion, yes: boolean): void {
    this.chart(
      `answer for ${places.map((tooth) => this.name(tooth)).join(", ")}`,
      (said) => places.reduce((chart, tooth) => withTooth(chart, tooth, { [FIELDS[asks]]: yes ? "yes" : "no" }), said.chart),
      asks === "abutment" ? [] : places,
    );
  }

  /** Two teeth that are one: what was found as the second is of the first, which keeps its number. */
  join(kept: Fdi, gone: Fdi): void {
    const { document, teeth } = this.store.get();
    const second = teeth?.teeth.find((each) => each.tooth === gone);
    if (!document || !second || kept === gone) return;
    const { points, pins } = document.teeth;
    this.say(`${this.name(gone)} joined with ${this.name(kept)}`, {
      ...document.teeth,
      points: points.filter((each) => each.tooth !== gone),
      pins: [
        ...pins.filter((each) => each.tooth !== gone),
        { tooth: kept, point: second.on, radiusMm: mm(Math.min(4, JOINED_SHARE * second.widthMm)) },
      ],
    });
  }

  /** One tooth that is two: each has its point from now on. */
  cut(first: ToothPoint, second: ToothPoint): void {
    const { document } = this.store.get();
    if (!document || first.tooth === second.tooth) return;
    const others = [first.tooth, second.tooth];
    const { missing, points, pins } = document.teeth;
    this.say(`${this.name(first.tooth)} cut into ${this.name(first.tooth)} and ${this.name(second.tooth)}`, {
      ...document.teeth,
      missing: missing.filter((each) => !others.includes(each)),
      points: [...points.filter((each) => !others.includes(each.tooth)), first, second],
      pins: pins.filter((each) => !others.includes(each.tooth)),
    });
  }

  /** @param gone places that what is said takes for missing: the scan alone may have told so until now */
  private chart(what: string, change: (said: TeethSaid) => TeethSaid["chart"], gone: readonly Fdi[] = []): void {
    const { document } = this.store.get();
    if (!document) return;
    const missing = [...new Set([...document.teeth.missing, ...gone])].sort((a, b) => a - b);
    this.say(what, { ...document.teeth, missing, chart: change(document.teeth) });
  }

  private name(tooth: Fdi): string {
    return toothText(tooth, this.store.get().notation);
  }
}
