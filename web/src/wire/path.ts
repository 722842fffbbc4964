import type { Pieces } from "../values/tooth-number";
import type { Degrees, Mm } from "../values/units";
import type { AnswersSaid } from "./abutments";
import type { ChoicesSaid } from "./plan";
import type { Fdi } from "./types";

export const FACTORS = ["guiding", "retention", "interference", "appearance", "tilt"] as const;
export type Factor = (typeof FACTORS)[number];

/**
 * One tilt of a map: anterior and right tilt, the whole worth, the worth of each factor in the order of {@link FACTORS}, and the
 * figure of each in its own unit, of which less is better.
 */
export type MapTilt = readonly [anterior: Degrees, right: Degrees, worth: number, ...factors: number[]];

/** Where in a {@link MapTilt} the worth of a factor stands; of all of them together. */
export const worthColumn = (by: Factor | "all"): number => (by === "all" ? 2 : 3 + FACTORS.indexOf(by));
/** Where its figure stands. */
export const figureColumn = (by: Factor): number => 3 + FACTORS.length + FACTORS.indexOf(by);

export interface PathMap {
  readonly coneDeg: Degrees;
  readonly stepDeg: Degrees;
  readonly tilts: readonly MapTilt[];
}

export interface Change {
  readonly factor: Factor;
  readonly what: string;
  /** What, with its teeth apart. */
  readonly pieces: Pieces;
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

export interface PathTilt {
  readonly tilt: { readonly anteriorDeg: Degrees; readonly rightDeg: Degrees; readonly totalDeg: Degrees };
  readonly worth: number;
  readonly figures: Readonly<Record<Factor, number>>;
  /** The way out until nothing touches any more, and where it leads meanwhile. */
  readonly travel: { readonly alongMm: Mm; readonly forwardMm: Mm; readonly rightMm: Mm; readonly roomMm: Mm };
}

/** One figure of two tilts side by side. */
export interface ComparedFigure extends Change {
  /** A change below a step that means something is none. */
  readonly turn: "better" | "worse" | "same";
}

export interface PathsCompared {
  readonly from: PathTilt;
  readonly to: PathTilt;
  readonly rows: readonly ComparedFigure[];
}

/** Kinds of surface that rigid parts pass. */
export type ZoneKind = "base" | "lingual-strip" | "palate" | "facial-strip" | "major-connector" | "bar-arm";

/** What a search counts as in the way; with a plan, its parts instead of what anatomy suggests. */
export interface InTheWaySaid {
  readonly leftOut: readonly ZoneKind[];
  readonly plan?: { readonly tilt: readonly [Degrees, Degrees]; readonly answers: AnswersSaid; readonly choices: ChoicesSaid };
}

/** What a search for the path found: docs/schema/path.schema.json, with the whole map. */
export interface PathFound {
  readonly map: PathMap;
  readonly reference: PathTilt;
  readonly best: PathTilt;
  readonly comparison: { readonly better: readonly Change[]; readonly worse: readonly Change[] };
  readonly choices: readonly PathTilt[];
  readonly neverHeld: readonly { readonly tooth: Fdi; readonly mostMm: number }[];
}

/** What is heard of a search while it runs. */
export interface SearchListener {
  /** A map of few tilts, at once. */
  coarse(map: PathMap): void;
  progress(what: string, share: number): void;
}
