import { describe, expect, it } from "vitest";
import { chartDocument, chartSaid, EMPTY_CHART, withFreeEnd, withMouth, withPlace, withTooth, withTorus } from "./chart";

describe("the chart", () => {
  it("keeps what was said and forgets what is not known again", () => {
    const once = withTooth(EMPTY_CHART, 35, { mobility: "II", crownToRoot: 0.67 });
    expect(withTooth(once, 35, { mobility: undefined }).teeth).toEqual({ 35: { crownToRoot: 0.67 } });
    expect(withTooth(withTooth(once, 35, { mobility: undefined }), 35, { crownToRoot: undefined })).toEqual(EMPTY_CHART);
    expect(withFreeEnd(withFreeEnd(EMPTY_CHART, "right", "flabby"), "right", undefined)).toEqual(EMPTY_CHART);
    expect(EMPTY_CHART.teeth).toEqual({});
  });
  it("has tori: place and size only while one is there, nothing once nobody knows", () => {
    const there = withTorus(withTorus(EMPTY_CHART, "mandibularLeft", { there: "yes" }), "mandibularLeft", { from: 33, to: 35, belowMarginMm: 8 });
    expect(there.tori).toEqual({ mandibularLeft: { there: "yes", from: 33, to: 35, belowMarginMm: 8 } });
    expect(withTorus(there, "mandibularLeft", { there: "no" }).tori).toEqual({ mandibularLeft: { there: "no" } });
    expect(withTorus(there, "mandibularLeft", { there: undefined })).toEqual(EMPTY_CHART);
    expect(chartSaid({ ...chartDocument("lower", [], there) }).said).toEqual(there);
  });
  it("is written as the schema of charts has it: missing goes before what was planned", () => {
    let chart = withTooth(EMPTY_CHART, 35, { will: "to be extracted", mobility: "III" });
    chart = withTooth(chart, 36, { replace: "no" });
    chart = withPlace(chart, 34, { vestibuleDepthMm: 5 });
    expect(chartDocument("lower", [36], chart)).toEqual({
      format: "rodwork chart",
      version: 1,
      jaw: "lower",
      teeth: [
        { tooth: 35, presence: "to be extracted", mobility: "III" },
        { tooth: 36, presence: "missing", replace: "no" },
      ],
      places: [{ tooth: 34, vestibuleDepthMm: 5 }],
      freeEnds: {},
    });
    expect(chartDocument("lower", [35, 36], chart)).toMatchObject({ teeth: [{ tooth: 35, presence: "missing" }, { tooth: 36 }] });
  });
  it("keeps what is known of the mouth as a whole, and forgets it again", () => {
    const said = withMouth(withMouth(EMPTY_CHART, { openingMm: 38, allergies: ["nickel"] }), { allergiesAsked: "yes" });
    const document = chartDocument("lower", [], said);
    expect(document).toMatchObject({ openingMm: 38, allergies: ["nickel"], allergiesAsked: "yes" });
    expect(chartSaid({ ...document }).said).toEqual(said);
    expect(withMouth(said, { openingMm: undefined, allergies: undefined, allergiesAsked: undefined })).toEqual(EMPTY_CHART);
  });
});
