import type { Jaw } from "../values/tilt";
import type { Pieces } from "../values/tooth-number";
import type { Degrees, Mm } from "../values/units";
import type { ScanVec } from "../values/vec";
import type { Fdi } from "./types";

/** Judged abutments, as docs/schema/abutments.schema.json has them. */

export type Told =
  | { readonly kind: "measured"; readonly value: number; readonly uncertainty: number; readonly unit: string; readonly words: string }
  | { readonly kind: "at-least"; readonly value: number; readonly unit: string; readonly words: string }
  | { readonly kind: "word"; readonly word: string; readonly words: string }
  | { readonly kind: "said"; readonly yes: boolean; readonly words: string }
  | { readonly kind: "no-room" | "not-known"; readonly words: string };

export interface Where {
  /** With FDI numbers: to tell places apart, not to be shown. */
  readonly words: string;
  readonly pieces: Pieces;
  /** Where to jump to on the cast. */
  readonly point: ScanVec | null;
}

export type Verdict = "met" | "not met" | "too close to call" | "not known";
export type Answer = "serves" | "serves after" | "not decided" | "does not serve";

export interface Limit {
  readonly kind: "at-least" | "at-most" | "one-of";
  /** null: it is another reading, and that is not known. */
  readonly value?: number | null;
  readonly unit?: string;
  readonly words: string;
}

export interface PlainFinding {
  readonly rule: string;
  readonly what: string;
  readonly place: Where;
  readonly reading: Told;
  readonly limit: Limit;
  readonly verdict: Verdict;
  readonly source: string;
  readonly standing: string;
}

export interface Finding extends PlainFinding {
  /** What follows where it is not met: "rules out", "warns", "shows", or the preparation. */
  readonly otherwise: string;
  readonly because: string;
}

export interface Threshold {
  readonly rule: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly standing: string;
}

/** A figure that is known as a range only. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export interface SectionTold {
  readonly shape: "round" | "half-round";
  readonly widthMm: Mm;
  readonly thicknessMm: Mm;
}

/** What the retentive arm does on its way out. */
export interface ForcesTold {
  readonly material: string;
  readonly cautions: readonly string[];
  /** null: the tip locks itself. */
  readonly pullN: Range | null;
  readonly opposingN: Range | null;
  readonly locksFromFriction: number | null;
  readonly peakAtMm: Mm;
  readonly toLineMm: Mm | null;
  readonly freeAtMm: Mm | null;
  readonly stressMpa: Range;
  readonly proofMpa: Range;
  readonly stressShare: Range;
  readonly stressFromRootMm: Mm;
  /** Pairs of travel [mm] and pull [N] at both ends of the range. */
  readonly leastPull: readonly (readonly [number, number])[];
  readonly mostPull: readonly (readonly [number, number])[];
}

/** The arms of a clasp on the scanned tooth, and what they do. */
export interface ClaspTold {
  readonly retentive: { readonly line: readonly ScanVec[]; readonly lengthMm: Mm; readonly root: SectionTold; readonly tip: SectionTold; readonly onMark: boolean };
  readonly opposing: { readonly line: readonly ScanVec[]; readonly lengthMm: Mm } | null;
  readonly encirclementDeg: Degrees;
  readonly crossingDeg: Degrees | null;
  readonly forces: ForcesTold | null;
  readonly findings: readonly PlainFinding[];
  readonly advice: readonly string[];
}

/** What a clasp wants done in the mouth first. */
export interface ClaspPreparation {
  readonly rule: string;
  readonly what: string;
  readonly amountMm: Mm;
  /** What that takes of the enamel; null where it is not another number. */
  readonly enamelMm: Mm | null;
}

/** One family of clasps at one abutment. */
export interface FamilyAnswer {
  readonly family: string;
  readonly name: string;
  readonly answer: Answer;
  readonly arm: "circlet" | "ring" | "hairpin" | "bar";
  readonly surface: string;
  readonly third: string | null;
  readonly gauge: Threshold;
  readonly material: string;
  readonly rankedBy: string;
  readonly preparations: readonly ClaspPreparation[];
  /** What must be made otherwise about the clasp itself. */
  readonly changes: readonly { readonly rule: string; readonly what: string }[];
  readonly warnings: readonly string[];
  readonly undecided: readonly string[];
  readonly findings: readonly Finding[];
  /** null where the family does not serve, or could not be laid out. */
  readonly clasp: ClaspTold | null;
  readonly noClasp: string | null;
}

export interface FactTold {
  readonly fact: string;
  readonly what: string;
  /** The words that may answer it; empty for numbers. */
  readonly choices?: readonly string[];
  readonly reading: Told;
  readonly place: Where;
}

export interface MarkTold {
  readonly gaugeMm: Mm;
  readonly place: Where;
  readonly depth: Told;
  readonly atReference: Told;
  readonly fromMargin: Told;
  readonly belowLine: Told;
  readonly convergence: Told;
}

export interface ThirdTold {
  readonly zone: string;
  readonly deepest: Told;
  readonly roomAbove: Told;
  readonly roomBelow: Told;
  readonly marks: readonly MarkTold[];
}

/** A plane that could be cut. */
export interface PlaneCutTold {
  readonly heightMm: Mm;
  readonly belowRidgeMm: Mm;
  readonly angleDeg: Degrees;
  readonly enamelMm: Mm;
  readonly point: ScanVec;
}

export interface PlaneTold {
  readonly surface: string;
  readonly wantedHeight: Threshold;
  readonly there: { readonly heightMm: Mm; readonly widthMm: Mm; readonly areaMm2: number; readonly angleDeg: Degrees; readonly point: ScanVec } | null;
  /** The plane of the rules, whatever it takes. */
  readonly couldBe: PlaneCutTold | null;
  /** The plane that the list of preparation cuts; none where too much would be taken. */
  readonly within: PlaneCutTold | null;
  readonly enamelMost: Threshold;
  readonly heightLeast: Threshold;
}

export interface Abutment {
  readonly tooth: Fdi;
  readonly side: "mesial" | "distal";
  readonly point: ScanVec;
  readonly space: { readonly missing: readonly Fdi[]; readonly freeEnd: boolean } | null;
  readonly facts: readonly FactTold[];
  readonly thirds: readonly ThirdTold[];
  readonly planes: readonly PlaneTold[];
  readonly families: readonly FamilyAnswer[];
  /** Facts that are not known and could change the order. */
  readonly couldReorder: readonly string[];
}

export interface AbutmentSheet {
  readonly jaw: Jaw;
  readonly axis: ScanVec;
  readonly tilt: { readonly anteriorDeg: Degrees; readonly rightDeg: Degrees; readonly totalDeg: Degrees } | null;
  readonly rulebook: { readonly title: string; readonly hash: string };
  readonly kennedy: string;
  readonly notes: readonly string[];
  readonly abutments: readonly Abutment[];
}

/** What a person says of facts: of all abutments, or of one tooth (by FDI number). */
export type AnswersSaid = Readonly<Record<string, string | Readonly<Record<string, string>>>>;

/** Retentive arms shaped by hand, by row ("34 distal"): places of them, as shares of the length, and where they were pulled to. */
export type ArmsTold = Readonly<Record<string, { readonly family: string; readonly pulls: readonly { readonly at: number; readonly to: ScanVec }[] }>>;
