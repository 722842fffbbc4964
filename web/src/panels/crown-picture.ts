import type { MarkTold, ThirdTold, Told } from "../wire/abutments";

/** One third of a surface as it is drawn: heights over the lowest place an arm may take [mm]; null: not known. */
export interface Column {
  readonly zone: string;
  readonly line: number | null;
  readonly top: number | null;
  readonly deepest: Told;
  readonly marks: readonly { readonly gaugeMm: number; readonly height: number; readonly mark: MarkTold }[];
}

/** Paper heights, from the top down, moved apart by at least `least` so that lettering does not run together. */
export function apart(at: readonly number[], least: number): readonly number[] {
  const moved: number[] = [];
  for (const y of at) moved.push(Math.max(y, (moved.at(-1) ?? -Infinity) + least));
  return moved;
}

const value = (told: Told | undefined): number | null => (told?.kind === "measured" || told?.kind === "at-least" ? told.value : null);

/** The three thirds of one surface, mesial first, as the drawing has them. */
export function columns(thirds: readonly ThirdTold[], surface: "facial" | "lingual"): readonly Column[] {
  return ["mesio", "mid", "disto"].flatMap((across) => {
    const third = thirds.find(({ zone }) => zone === `${across}${surface}`);
    if (!third) return [];
    const line = value(third.roomBelow);
    const above = value(third.roomAbove);
    return [
      {
        zone: third.zone,
        line,
        top: line !== null && above !== null ? line + above : null,
        deepest: third.deepest,
        marks: third.marks
          .flatMap((mark) => {
            const below = value(mark.belowLine);
            return line !== null && below !== null ? [{ gaugeMm: mark.gaugeMm, height: line - below, mark }] : [];
          })
          .sort((a, b) => b.height - a.height),
      },
    ];
  });
}
