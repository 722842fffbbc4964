import { describe, expect, it } from "vitest";
import { bands } from "../values/look";
import { degrees, degreesText, gaugeText, lengthText, mm } from "../values/units";
import { scan } from "../values/vec";
import type { Reading } from "../wire/types";
import { bandText } from "./Legend";
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

describe("lengths", () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  it("convert exactly when measured, nominally when they name a gauge", () => {
    expect(lengthText(mm(0.254), "both")).toBe("0.25 mm · 0.0100 in");
    expect(lengthText(mm(0.25), "in")).toBe("0.0098 in");
    expect(gaugeText(mm(0.25), "both")).toBe("0.25 mm · 0.010 in");
    expect(gaugeText(mm(0.75), "in")).toBe("0.030 in");
  });
  it("carry a true minus sign and never −0", () => {
    expect(degreesText(degrees(-2))).toBe("−2.0°");
    expect(degreesText(degrees(-0.01))).toBe("0.0°");
  });
});

describe("a reading in words", () => {
  it("says depth, fit and place", () => {
    expect(readingWords(READING, "mm")).toEqual({
      depth: "0.25 mm",
      fits: "0.25 mm · 0.010 in fits",
      where: "1.8 mm below the survey line · 22° convergence",
      doubts: [],
    });
  });
  it("says every doubt in plain words", () => {
    const doubtful: Reading = { ...READING, capped: true, unsure: true, noGaugeReaches: true, tooCloseToCall: true, depthAtReferenceMm: mm(0.01) };
    const { depth, doubts } = readingWords(doubtful, "mm");
    expect(depth).toBe("more than 0.25 mm");
    expect(doubts).toEqual(["no gauge reaches here", "unsure: looks through a hole", "too close to call", "no undercut at the reference: holds along this path only"]);
  });
});

describe("the legend", () => {
  it("changes exactly at the gauges", () => {
    const all = bands([0.25, 0.5, 0.75]);
    expect(all.map((_, i) => bandText(all, i, "mm"))).toEqual(["0.05–0.25", "0.25–0.50", "0.50–0.75", "over 0.75"]);
    expect(all.map((_, i) => bandText(all, i, "in"))).toEqual(["0.002–0.010", "0.010–0.020", "0.020–0.030", "over 0.030"]);
  });
  it("grows darker with depth, so that it keeps its order in greyscale", () => {
    // Relative luminance: W3C, WCAG 2.2, "relative luminance".
    const luminance = (hex: string): number => {
      const [r, g, b] = [1, 3, 5].map((i) => {
        const c = parseInt(hex.slice(i, i + 2), 16) / 255;
        return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      }) as [number, number, number];
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const levels = bands([0.25, 0.5, 0.75]).map((band) => luminance(band.fill));
    for (let i = 1; i < levels.length; i++) {
      // Contrast ratio (W3C, WCAG 2.2): neighbours differ by at least 1.5 to 1.
      expect((levels[i - 1]! + 0.05) / (levels[i]! + 0.05)).toBeGreaterThan(1.5);
    }
  });
});
