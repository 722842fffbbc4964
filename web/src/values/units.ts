/**
 * Branded numbers, so that degrees and radians, millimetres and pixels cannot be mixed. Lengths are mm everywhere inside
 * the bench; only the text that a person reads shows inches.
 */
declare const unit: unique symbol;
export type Mm = number & { readonly [unit]: "mm" };
export type Degrees = number & { readonly [unit]: "degrees" };
export type Radians = number & { readonly [unit]: "radians" };
export type Px = number & { readonly [unit]: "px" };

export const mm = (value: number): Mm => value as Mm;
export const degrees = (value: number): Degrees => value as Degrees;
export const px = (value: number): Px => value as Px;

export const toRadians = (angle: Degrees): Radians => ((angle * Math.PI) / 180) as Radians;
export const toDegrees = (angle: Radians): Degrees => ((angle * 180) / Math.PI) as Degrees;
export const radians = (value: number): Radians => value as Radians;

export type UnitChoice = "mm" | "in" | "both";

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
const MM_PER_INCH = 25.4;

const minus = (text: string): string => text.replace("-", "−");

/** A measured length as text: exact conversion, 0.01 mm or 0.001 in, finer than a scan is true to. */
export function lengthText(length: Mm, choice: UnitChoice, decimals = 2): string {
  // What rounds to nothing is nothing: "0.000 in" would claim three places of it.
  if (Number(length.toFixed(decimals)) === 0) return choice === "in" ? "0 in" : "0 mm";
  const metric = `${minus(length.toFixed(decimals))} mm`;
  const inch = `${minus((length / MM_PER_INCH).toFixed(decimals + 1))} in`;
  return choice === "mm" ? metric : choice === "in" ? inch : `${metric} · ${inch}`;
}

/** The trade's name of an undercut gauge: nominal, 0.25 mm is "0.010 in". */
export function gaugeText(gauge: Mm, choice: UnitChoice): string {
  const metric = `${gauge.toFixed(2)} mm`;
  const inch = `${((gauge / 0.25) * 0.01).toFixed(3)} in`;
  return choice === "mm" ? metric : choice === "in" ? inch : `${metric} · ${inch}`;
}

/** An angle as text, with a true minus sign. */
export function degreesText(angle: Degrees, decimals = 1): string {
  const text = angle.toFixed(decimals);
  return `${minus(Number(text) === 0 ? (0).toFixed(decimals) : text)}°`;
}
