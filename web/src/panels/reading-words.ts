import { degreesText, lengthText, type UnitChoice } from "../values/units";
import type { Reading, ReadingLimits } from "../wire/types";

/** A reading in plain words: the figure first, then what fits, then every doubt. One line each. */
export interface ReadingWords {
  readonly depth: string;
  readonly fits: string;
  readonly where: string | null;
  /** Room to the opposing teeth, where an opposing scan was laid over the cast. */
  readonly room: string | null;
  readonly doubts: readonly string[];
}

export function readingWords(reading: Reading, units: UnitChoice, { shallowMm, holdsAtReferenceMm }: ReadingLimits): ReadingWords {
  const { depthMm, belowSurveyLineMm: below, convergenceDeg: convergence } = reading;
  // So shallow a place has no undercut, and an angle over a few hundredths of a millimetre is noise.
  const undercut = depthMm >= shallowMm;
  const where = [
    ...(below === null || !undercut ? [] : [`${lengthText(below, units === "in" ? "in" : "mm", 1)} below the survey line`]),
    ...(convergence === null || !undercut ? [] : [`${degreesText(convergence, 0)} convergence`]),
  ].join(" · ");
  return {
    depth: (reading.capped ? "more than " : "") + lengthText(depthMm, units),
    fits: reading.fitsText,
    where: where === "" ? null : where,
    room: reading.clearanceMm === undefined ? null : reading.clearanceMm === null ? "room not known" : `room ${lengthText(reading.clearanceMm, units === "in" ? "in" : "mm", 1)}`,
    doubts: [
      ...(reading.noGaugeReaches ? ["no gauge reaches here"] : []),
      ...(reading.unsure ? ["unsure: looks through a hole"] : []),
      ...(reading.tooCloseToCall ? ["too close to call"] : []),
      ...(depthMm >= holdsAtReferenceMm && reading.depthAtReferenceMm < holdsAtReferenceMm ? ["no undercut at the reference: holds along this path only"] : []),
    ],
  };
}
