import type { Jaw } from "../values/tilt";
import type { CastInfo } from "./types";

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

/** A case taken up again; the bench's own document as it was saved. */
export interface OpenedCase extends CaseOf {
  readonly cast: CastInfo;
  readonly bench: Readonly<Record<string, unknown>> | null;
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
