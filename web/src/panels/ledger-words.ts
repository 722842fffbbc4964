import { lengthText, mm, type UnitChoice } from "../values/units";
import type { ClaspPreparation, Finding, Limit, Told, Verdict } from "../wire/abutments";

/** Signs of verdicts, read without colour. */
export const VERDICT_SIGNS: Readonly<Record<Verdict, string>> = { met: "✓", "not met": "×", "too close to call": "≈", "not known": "?" };

/** One unit in a ledger: both would crowd it. */
const short = (units: UnitChoice): UnitChoice => (units === "in" ? "in" : "mm");

/** A reading as the ledger writes it; lengths in the unit of the bench. */
export function toldText(told: Told, units: UnitChoice): string {
  if (told.kind === "measured" && told.unit === "mm") {
    const value = lengthText(mm(told.value), short(units));
    const [figure, unit] = value.split(" ");
    return told.uncertainty > 0 ? `${figure} ± ${lengthText(mm(told.uncertainty), short(units)).split(" ")[0]} ${unit}` : value;
  }
  if (told.kind === "measured" && told.unit in UNITS) return figure(told.value, told.uncertainty, told.unit);
  if (told.kind === "at-least" && told.unit === "mm") return `over ${lengthText(mm(told.value), short(units))}`;
  return told.words;
}

/** Less than this is no amount: the reading is too close to its limit. */
const NOTHING_MM = 0.005;

/** What is done to a tooth first: how much, and what that takes of the enamel where it is another number. */
export function preparationText({ what, amountMm, enamelMm }: ClaspPreparation, units: UnitChoice): string {
  if (amountMm < NOTHING_MM) return `${what}, if at all: too close to call`;
  const enamel = enamelMm === null ? "" : ` (takes ${lengthText(enamelMm, short(units))} of enamel)`;
  return `${what}, ${lengthText(amountMm, short(units))}${enamel}`;
}

export function limitText(limit: Limit, units: UnitChoice): string {
  if (limit.kind !== "one-of" && typeof limit.value !== "number") return "as much as another reading, which is not known";
  if (typeof limit.value === "number" && limit.unit === "mm") {
    return `${limit.kind === "at-least" ? "at least" : "at most"} ${lengthText(mm(limit.value), short(units))}`;
  }
  if (typeof limit.value === "number" && limit.unit !== undefined && limit.unit in UNITS) {
    return `${limit.kind === "at-least" ? "at least" : "at most"} ${figure(limit.value, 0, limit.unit)}`;
  }
  return limit.words;
}

/** Units that are no length, with the digits that mean something in them; shares are told in per cent. */
const UNITS: Readonly<Record<string, { readonly digits: number; readonly factor: number; readonly sign: string }>> = {
  degrees: { digits: 1, factor: 1, sign: "°" },
  N: { digits: 1, factor: 1, sign: " N" },
  "1": { digits: 0, factor: 100, sign: " %" },
  count: { digits: 0, factor: 1, sign: "" },
};

function figure(value: number, uncertainty: number, unit: string): string {
  const { digits, factor, sign } = UNITS[unit]!;
  const text = (v: number): string => (factor * v).toFixed(digits);
  return `${text(value)}${uncertainty > 0 ? ` ± ${text(uncertainty)}` : ""}${sign}`;
}

/** A finding in one line: "total stand-off 6 mm below the margin 2.31 ± 0.03 mm, wanted at most 1.50 mm". */
export const findingText = ({ what, reading, limit }: Finding, units: UnitChoice): string =>
  `${what}: ${toldText(reading, units)}, wanted ${limitText(limit, units)}`;
