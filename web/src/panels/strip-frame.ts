import type { StripSection } from "../wire/strip";
import type { SectionPoint } from "../wire/types";

/** How a section of the strip falls on its paper. */
export interface StripFrame {
  readonly scale: number;
  readonly x: (s: number) => number;
  readonly y: (h: number) => number;
}

/** Above the contact the tooth is shown this far [mm]; the occlusal surface behind the ridge is of no use here. */
const ABOVE_MM = 1.2;
/** Tooth shown behind the deepest place, and air beyond the rod [mm]. */
const TOOTH_MM = 1.1;
const AIR_MM = 1.4;

/**
 * Fits the flank with its rod onto a paper of the given size. All drawings of a strip share one scale, so that a deeper
 * undercut looks deeper; {@link stripScale} finds it.
 */
export function stripFrame(section: StripSection, scale: number, width: number, height: number): StripFrame {
  const { top, bottom } = reach(section);
  const hMid = (top + bottom) / 2;
  const sTo = section.rod + AIR_MM;
  return { scale, x: (s) => width - (sTo - s) * scale, y: (h) => height / 2 + (hMid - h) * scale };
}

/** Paper units a millimetre at which every section fits. */
export function stripScale(sections: readonly StripSection[], width: number, height: number): number {
  return Math.min(
    ...sections.map((section) => {
      const { top, bottom } = reach(section);
      return Math.min(height / (top - bottom), width / (AIR_MM + section.gapMm + TOOTH_MM));
    }),
  );
}

function reach({ line, contact }: StripSection): { readonly top: number; readonly bottom: number } {
  const heights = line.map(([, h]) => h);
  return { top: Math.min(Math.max(...heights), Math.max(0, contact[1])) + ABOVE_MM, bottom: Math.min(...heights) - 0.4 };
}

export const stripPath = (line: readonly SectionPoint[], { x, y }: StripFrame): string =>
  line.map(([s, h], i) => `${i === 0 ? "M" : "L"}${x(s).toFixed(1)} ${y(h).toFixed(1)}`).join("");
