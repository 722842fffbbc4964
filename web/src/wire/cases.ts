import type { Jaw } from "../values/tilt";
import type { ChartDocument } from "../values/chart";
import type { AnswersSaid } from "./abutments";
import type { ChoicesSaid } from "./plan";
import type { CastInfo, Problem } from "./types";

/** One scan of a case in the store. */
export interface CaseCard {
  readonly code: string;
  readonly jaw: Jaw | null;
  readonly scan: string;
  readonly revision: number;
  readonly savedAt: string;
}

/** The case that the work on the bench is kept in, and the revision that it stands at. */
export interface CaseOf {
  readonly code: string;
  readonly revision: number;
}

/** What the command line put into a case since the bench saved it last. */
export interface CaseNews {
  readonly chart?: ChartDocument & Readonly<Record<string, unknown>>;
  readonly path?: { readonly tilt: readonly [number, number] };
  readonly choices?: Partial<ChoicesSaid>;
  readonly answers?: AnswersSaid;
}

/** A case taken up again; the bench's own document as it was saved. */
export interface OpenedCase extends CaseOf {
  readonly cast: CastInfo;
  readonly bench: Readonly<Record<string, unknown>> | null;
  readonly news: CaseNews;
  /** Why the opposing scan of the case could not be laid; null where it was, or the case has none. */
  readonly opposingProblem: Problem | null;
}

/** What a prescriber writes that no scan tells, by field; the keys are those of docs/prescription.md. */
export const ORDER_FIELDS = {
  prescriber: "prescriber",
  registration: "registration or licence no.",
  practice: "practice or institution",
  laboratory: "laboratory",
  laboratoryAddress: "address of the laboratory",
  sent: "sent on",
  due: "wanted on",
  stages: "stages asked for",
  opposing: "opposing arch",
  occlusion: "occlusion and record sent",
  framework: "framework: alloy and making",
  relief: "relief and block-out wanted",
  base: "denture base: material",
  teeth: "artificial teeth: mould, material",
  shade: "shade, guide",
  disinfection: "disinfection: what, when, by whom",
  notes: "notes",
} as const;
export type OrderField = keyof typeof ORDER_FIELDS;
export type Order = Readonly<Partial<Record<OrderField, string>>>;
export type Paper = "a4" | "letter";
