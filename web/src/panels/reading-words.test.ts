import { describe, expect, it } from "vitest";
import { degrees, mm } from "../values/units";
import { scan } from "../values/vec";
import type { Reading } from "../wire/types";
import { readingWords } from "./reading-words";

const READING: Reading = {
  point: scan(0, 0, 0),
  depthMm: mm(0.254),
  uncertaintyMm: mm(0.03),
  capped: false,
  unsure: false,
  noGaugeReaches: false,
  free: scan(0.254, 0, 0),
  contact: scan(0.254, 0, 1.8),
  fits: "0.25",
  fitsText: "0.25 mm · 0.010 in fits",
  belowSurveyLineMm: mm(1.8),
  convergenceDeg: degrees(22.4),
  depthAtReferenceMm: mm(0.2),
  tooCloseToCall: false,
};

const LIMITS = { shallowMm: mm(0.05), holdsAtReferenceMm: mm(0.05) };

describe("a reading in words", () => {
  it("tells the room to the opposing teeth where an opposing scan lies over the cast, and that it is not known", () => {
    expect(readingWords({ ...READING, clearanceMm: mm(1.84) }, "mm", LIMITS).room).toBe("room 1.8 mm");
    expect(readingWords({ ...READING, clearanceMm: null }, "mm", LIMITS).room).toBe("room not known");
  });

  it("says depth, fit and place", () => {
    expect(readingWords(READING, "mm", LIMITS)).toEqual({
      depth: "0.25 mm",
      fits: "0.25 mm · 0.010 in fits",
      where: "1.8 mm below the survey line · 22° convergence",
      room: null,
      doubts: [],
    });
  });
  it("goes by the limits of the rulebook", () => {
    const only = "no undercut at the reference: holds along this path only";
    expect(readingWords(READING, "mm", { ...LIMITS, holdsAtReferenceMm: mm(0.21) }).doubts).toEqual([only]);
    expect(readingWords(READING, "mm", { ...LIMITS, holdsAtReferenceMm: mm(0.3) }).doubts).toEqual([]);
    expect(readingWords(READING, "mm", { ...LIMITS, shallowMm: mm(0.3) }).where).toBeNull();
  });
  it("says every doubt in plain words", () => {
    const doubtful: Reading = { ...READING, capped: true, unsure: true, noGaugeReaches: true, tooCloseToCall: true, depthAtReferenceMm: mm(0.01) };
    const { depth, doubts } = readingWords(doubtful, "mm", LIMITS);
    expect(depth).toBe("more than 0.25 mm");
    expect(doubts).toEqual(["no gauge reaches here", "unsure: looks through a hole", "too close to call", "no undercut at the reference: holds along this path only"]);
  });
});
