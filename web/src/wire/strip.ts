import type { Degrees, Mm } from "../values/units";
import type { Fdi, SectionPoint } from "./types";

/** One drawing of the parallel strip, as in docs/protocol.md: a section with the upright rod against it. */
export interface StripSection {
  readonly tooth: Fdi;
  readonly surface: "mesial" | "distal" | "facial" | "lingual";
  /** From the occlusal side to the gum; s outward, h along the path. */
  readonly line: readonly SectionPoint[];
  /** Where the rod stands, and how far down it comes free. */
  readonly rod: Mm;
  readonly foot: Mm;
  readonly contact: SectionPoint;
  readonly deepest: SectionPoint;
  readonly gapMm: Mm;
  readonly belowMm: Mm;
  /** What a guiding plane there would be; null on a facial surface, and where there is no room for one. */
  readonly plane: { readonly angleDeg: Degrees; readonly heightMm: Mm; readonly enamelMm: Mm } | null;
}
