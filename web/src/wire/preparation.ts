import type { Mm } from "../values/units";
import type { ScanVec } from "../values/vec";
import type { PlainFinding } from "./abutments";
import type { Fdi } from "./types";

/** The preparation of the mouth for a plan, as docs/schema/plan.schema.json has it. */

export interface PreparationStep {
  /** From 1, in working order. */
  readonly number: number;
  readonly kind: string;
  readonly tooth: Fdi;
  readonly surface: string;
  readonly what: string;
  readonly point: ScanVec;
  /** Greatest depth of the cut; null where nothing is cut. */
  readonly amountMm: Mm | null;
  readonly heightMm: Mm | null;
  readonly volumeMm3: number | null;
  readonly findings: readonly PlainFinding[];
  readonly cautions: readonly string[];
}

export interface Preparation {
  readonly steps: readonly PreparationStep[];
  /** What the plan wants and no cut within the limits gives. */
  readonly notPrescribed: readonly { readonly tooth: Fdi; readonly kind: string; readonly why: string }[];
  readonly general: readonly string[];
}

/** How a cut looks, as docs/protocol.md has it. */
export interface Cut {
  readonly step: number;
  /** Lines of equal depth on the cast, the first the edge of the cut: six numbers a piece. */
  readonly contours: readonly { readonly depthMm: Mm; readonly pieces: readonly number[] }[];
  /** The section of the crown, outward and along the path from the place of the step [mm]: four numbers a piece. */
  readonly before: readonly number[];
  readonly after: readonly number[];
}
