import type { Jaw } from "./tilt";

/** What a person knows of the mouth beside the scan. What is left out is not known, and never taken for an answer. */
export type YesNo = "yes" | "no";
export const MOBILITIES = ["none", "I", "II", "III"] as const;
export const RESTORATIONS = ["none", "filling", "crown", "surveyed crown"] as const;
export const FIRMNESSES = ["firm", "yielding", "flabby"] as const;

export const OPPOSING_KINDS = ["tooth", "fixed denture", "removable denture", "none"] as const;

/** What meets a tooth from the other jaw. */
export interface OpposingSaid {
  readonly kind?: (typeof OPPOSING_KINDS)[number];
  readonly contact?: YesNo;
  readonly clearanceMm?: number;
}

export interface ToothSaid {
  /** Stands on the scan, and will be gone or is no natural tooth. */
  readonly will?: "to be extracted" | "implant";
  readonly replace?: YesNo;
  readonly spaceClosed?: YesNo;
  readonly abutment?: YesNo;
  readonly mobility?: (typeof MOBILITIES)[number];
  /** Clinical crown over root in bone. */
  readonly crownToRoot?: number;
  readonly restoration?: (typeof RESTORATIONS)[number];
  readonly aestheticZone?: YesNo;
  readonly opposing?: OpposingSaid;
}

/** Of the soft tissue at the place of a tooth, standing or missing. */
export interface PlaceSaid {
  readonly vestibuleDepthMm?: number;
  readonly floorDepthMm?: number;
  readonly facialFrenum?: YesNo;
  readonly lingualFrenum?: YesNo;
}

export type Firmness = (typeof FIRMNESSES)[number];
export type FreeEnds = { readonly [side in "right" | "left"]?: Firmness };

/** Of the patient's mouth as a whole. */
export interface MouthSaid {
  /** How far it opens, between the incisal edges or ridges [mm]. */
  readonly openingMm?: number;
  readonly allergies?: readonly string[];
  readonly allergiesAsked?: YesNo;
  readonly notes?: readonly string[];
}

export type TorusSite = "palatal" | "mandibularRight" | "mandibularLeft";
export const TORUS_SITES: Readonly<Record<Jaw, readonly TorusSite[]>> = { upper: ["palatal"], lower: ["mandibularRight", "mandibularLeft"] };

/** A torus; place and size only where it is there. */
export interface TorusSaid {
  readonly there: YesNo;
  /** Teeth beside which it begins in front and ends behind. */
  readonly from?: number;
  readonly to?: number;
  /** Palatal: from side to side. */
  readonly widthMm?: number;
  /** Mandibular: from the lingual margins down to its upper edge. */
  readonly belowMarginMm?: number;
}

export type Tori = { readonly [site in TorusSite]?: TorusSaid };

export interface ChartSaid {
  readonly teeth: Readonly<Record<string, ToothSaid>>;
  readonly places: Readonly<Record<string, PlaceSaid>>;
  readonly freeEnds: FreeEnds;
  readonly mouth?: MouthSaid;
  readonly tori?: Tori;
  /** What a chart from elsewhere says beside these, kept as it came. */
  readonly more?: Readonly<Record<string, unknown>>;
}

export const EMPTY_CHART: ChartSaid = { teeth: {}, places: {}, freeEnds: {} };

/** A field set, or taken back to "not known" by undefined. */
export type Change<T> = { readonly [K in keyof T]?: T[K] | undefined };

export const withTooth = (chart: ChartSaid, tooth: number, change: Change<ToothSaid>): ChartSaid => ({
  ...chart,
  teeth: changed(chart.teeth, tooth, change),
});

export const withPlace = (chart: ChartSaid, tooth: number, change: Change<PlaceSaid>): ChartSaid => ({
  ...chart,
  places: changed(chart.places, tooth, change),
});

export const withFreeEnd = (chart: ChartSaid, side: "right" | "left", firmness: Firmness | undefined): ChartSaid => ({
  ...chart,
  freeEnds: known({ ...chart.freeEnds, [side]: firmness }),
});

export const withMouth = (chart: ChartSaid, change: Change<MouthSaid>): ChartSaid => {
  const { mouth = {}, ...others } = chart;
  const said = known({ ...mouth, ...change }) as MouthSaid;
  return Object.keys(said).length > 0 ? { ...others, mouth: said } : others;
};
/** A torus told of; one that is not there has no place, and one nobody knows of is left out. */
export function withTorus({ tori = {}, ...chart }: ChartSaid, site: TorusSite, change: Change<TorusSaid>): ChartSaid {
  const { [site]: before, ...others } = tori;
  const torus = known({ ...before, ...change }) as Partial<TorusSaid>;
  const { there } = torus;
  const all: Tori = there === undefined ? others : { ...others, [site]: there === "yes" ? torus : { there } };
  return Object.keys(all).length > 0 ? { ...chart, tori: all } : chart;
}

function changed<T extends object>(entries: Readonly<Record<string, T>>, tooth: number, change: Change<T>): Record<string, T> {
  const entry = known({ ...entries[tooth], ...change }) as T;
  const others = Object.fromEntries(Object.entries(entries).filter(([key]) => key !== String(tooth)));
  return Object.keys(entry).length > 0 ? { ...others, [tooth]: entry } : others;
}

const known = <T extends object>(entry: T): T =>
  Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined)) as T;

/** The chart as docs/schema/chart.schema.json has it. */
export function chartDocument(jaw: Jaw, missing: readonly number[], said: ChartSaid): object {
  return {
    ...said.more,
    format: "rodwork chart",
    version: 1,
    jaw,
    teeth: Object.entries(said.teeth).map(([tooth, { will, ...entry }]) => ({
      tooth: Number(tooth),
      presence: missing.includes(Number(tooth)) ? "missing" : (will ?? "present"),
      ...entry,
    })),
    places: Object.entries(said.places).map(([tooth, entry]) => ({ tooth: Number(tooth), ...entry })),
    freeEnds: said.freeEnds,
    ...said.mouth,
    ...(said.tori ? { tori: said.tori } : {}),
  };
}

/** A chart as docs/schema/chart.schema.json has it. */
export interface ChartDocument {
  readonly missing?: readonly number[];
  readonly teeth?: readonly (ToothSaid & { readonly tooth: number; readonly presence: string })[];
  readonly places?: readonly (PlaceSaid & { readonly tooth: number })[];
  readonly freeEnds?: FreeEnds;
  readonly openingMm?: number | null;
  readonly allergies?: readonly string[];
  readonly allergiesAsked?: YesNo;
  readonly notes?: readonly string[];
  readonly tori?: Tori;
}

const WILL: readonly ToothSaid["will"][] = ["to be extracted", "implant"];
/** A third molar that is not named is missing. */
const THIRD_MOLAR = 8;

/** The way back from a chart to the missing teeth and what is said of the others. */
export function chartSaid(document: ChartDocument & Readonly<Record<string, unknown>>): { readonly missing: readonly number[]; readonly said: ChartSaid } {
  const { missing = [], teeth = [], places = [], freeEnds = {}, tori = {}, openingMm, allergies = [], allergiesAsked, notes = [], ...rest } = document;
  const mouth = {
    ...(typeof openingMm === "number" ? { openingMm } : {}),
    ...(allergies.length > 0 ? { allergies } : {}),
    ...(allergiesAsked ? { allergiesAsked } : {}),
    ...(notes.length > 0 ? { notes } : {}),
  };
  const more = Object.fromEntries(Object.entries(rest).filter(([name]) => !["format", "version", "jaw"].includes(name)));
  const gone = new Set([...missing, ...teeth.filter(({ presence }) => presence === "missing").map(({ tooth }) => tooth)]);
  const entries = teeth.flatMap(({ tooth, presence, ...entry }) => {
    const will = WILL.find((each) => each === presence);
    const said = { ...(will ? { will } : {}), ...entry };
    return Object.keys(said).length > 0 ? [[String(tooth), said] as const] : [];
  });
  return {
    missing: [...gone].filter((tooth) => tooth % 10 !== THIRD_MOLAR).sort((a, b) => a - b),
    said: {
      teeth: Object.fromEntries(entries),
      places: Object.fromEntries(places.map(({ tooth, ...entry }) => [String(tooth), entry])),
      freeEnds,
      ...(Object.keys(tori).length > 0 ? { tori } : {}),
      ...(Object.keys(mouth).length > 0 ? { mouth } : {}),
      ...(Object.keys(more).length > 0 ? { more } : {}),
    },
  };
}
