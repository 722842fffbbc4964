import type { Pieces } from "../values/tooth-number";
import type { PlainFinding, Range } from "./abutments";
import type { ChoicesSaid } from "./plan";
import type { Fdi } from "./types";

/** Plans held against each other, as docs/schema/comparison.schema.json has it. */

export interface NamedChoices {
  readonly name: string;
  readonly choices: ChoicesSaid;
}

export interface PartChange {
  readonly kind: string;
  readonly tooth: Fdi | null;
  readonly first: readonly string[];
  readonly other: readonly string[];
}

export interface MeasureChange {
  readonly kind: string;
  readonly tooth: Fdi | null;
  readonly what: string;
  readonly unit: "mm" | "mm²" | "1";
  readonly first: number;
  readonly other: number;
}

export interface FindingChange {
  readonly turn: "gained" | "lost" | "changed" | "only in the first" | "only in the other";
  readonly first: PlainFinding | null;
  readonly other: PlainFinding | null;
}

/** What a bite on a base does with the other plan, over what it does with the first. */
export interface LoadRatio {
  readonly bitten: readonly Fdi[];
  readonly measure: "sinking of the base" | "force on the tissue" | "force on the rests" | "tipping moment";
  readonly tooth: Fdi | null;
  readonly answer: "less" | "more" | "alike" | "not separable" | "hardly loaded in either" | "only in the first" | "only in the other";
  /** null: only one of the plans loads the tooth. */
  readonly interval: Range | null;
  /** Share of the draws in which the crown is tipped to distal. */
  readonly tipsToDistal?: { readonly first: number; readonly other: number };
}

export interface Against {
  readonly parts: readonly PartChange[];
  readonly measures: readonly MeasureChange[];
  readonly findings: readonly FindingChange[];
  readonly firstOpenPieces: readonly Pieces[];
  readonly otherOpenPieces: readonly Pieces[];
  readonly loads: readonly LoadRatio[];
  readonly remarkPieces: readonly Pieces[];
}

export interface PlansCompared {
  readonly draws: { readonly count: number; readonly intervalShare: number; readonly alike: number };
  readonly caution: string;
  readonly first: { readonly name: string };
  readonly others: readonly { readonly name: string; readonly against: Against }[];
}
