import type { Jaw } from "./tilt";

export const NOTATIONS = ["FDI", "Universal", "Palmer"] as const;
export type Notation = (typeof NOTATIONS)[number];

/** The places of a jaw by FDI number (ISO 3950), from the patient's right to left. */
export function placesOf(jaw: Jaw): readonly number[] {
  const [right, left] = jaw === "upper" ? [10, 20] : [40, 30];
  const out = [1, 2, 3, 4, 5, 6, 7, 8];
  return [...out.toReversed().map((n) => right + n), ...out.map((n) => left + n)];
}

// Palmer's corner stands as on the chart: seen facing the patient.
const CORNERS: readonly ((n: number) => string)[] = [(n) => `${n}┘`, (n) => `└${n}`, (n) => `┌${n}`, (n) => `${n}┐`];

/** Words with teeth among them by FDI number, as the server sends them. */
export type Pieces = readonly (string | number)[];

/** Such words as a person reads them. */
export const worded = (pieces: Pieces, notation: Notation): string => pieces.map((each) => (typeof each === "number" ? toothText(each, notation) : each)).join("");

/** What a problem says, as a person reads it. */
export const problemText = ({ message, pieces }: { readonly message: string; readonly pieces?: Pieces }, notation: Notation): string =>
  pieces ? worded(pieces, notation) : message;

/** A drawing of the server with its tooth numbers as a person reads them: its texts say which tooth they name. */
export const numbered = (svg: string, notation: Notation): string =>
  svg.replaceAll(/(<text data-tooth="(\d\d)"[^>]*>)[^<]*/g, (_, head: string, fdi: string) => head + toothText(Number(fdi), notation));

/** A tooth number as a person reads it. */
export function toothText(fdi: number, notation: Notation): string {
  const [quadrant, place] = [Math.floor(fdi / 10), fdi % 10];
  switch (notation) {
    case "FDI":
      return String(fdi);
    case "Universal":
      // 1 to 16 from the upper right third molar to the upper left, 17 to 32 from the lower left to the lower right.
      return String(8 * (quadrant - 1) + (quadrant % 2 === 1 ? 9 - place : place));
    case "Palmer":
      return CORNERS[quadrant - 1]!(place);
  }
}
