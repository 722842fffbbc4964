import { describe, expect, it } from "vitest";
import { numbered, problemText, placesOf, toothText, worded } from "./tooth-number";

describe("tooth numbers", () => {
  // Truth: ISO 3950 for FDI; the universal table of the American Dental Association: upper right third molar 1, upper left third
  // molar 16, lower left third molar 17, lower right third molar 32.
  it("follow the published tables", () => {
    const universal = (fdi: number): string => toothText(fdi, "Universal");
    expect([18, 11, 21, 28, 38, 31, 41, 48].map(universal)).toEqual(["1", "8", "9", "16", "17", "24", "25", "32"]);
    expect([16, 36, 46, 13].map(universal)).toEqual(["3", "19", "30", "6"]);
    expect([16, 26, 36, 46].map((fdi) => toothText(fdi, "Palmer"))).toEqual(["6┘", "└6", "┌6", "6┐"]);
  });
  it("stand in words as a person chose, and other numbers stay", () => {
    const pieces = ["tooth ", 14, ", 14 mm from ", 24];
    expect(worded(pieces, "FDI")).toBe("tooth 14, 14 mm from 24");
    expect(worded(pieces, "Universal")).toBe("tooth 5, 14 mm from 12");
    expect(worded(pieces, "Palmer")).toBe("tooth 4┘, 14 mm from └4");
  });
  it("stand in what a problem says", () => {
    const message = "Tooth 14 is not among the teeth found on this cast.";
    expect(problemText({ message, pieces: ["Tooth ", 14, " is not among the teeth found on this cast."] }, "Palmer")).toBe("Tooth 4┘ is not among the teeth found on this cast.");
    expect(problemText({ message: "The Rodwork program does not answer." }, "Palmer")).toBe("The Rodwork program does not answer.");
  });
  it("stand in a drawing as a person chose", () => {
    expect(numbered('<text x="3">14</text><text data-tooth="14" x="36">14</text>', "Universal")).toBe('<text x="3">14</text><text data-tooth="14" x="36">5</text>');
  });
  it("are each of their own", () => {
    const all = [...placesOf("upper"), ...placesOf("lower")];
    expect(new Set(all.map((fdi) => toothText(fdi, "Universal"))).size).toBe(32);
    expect(placesOf("upper")[0]).toBe(18);
    expect(placesOf("lower").at(-1)).toBe(38);
  });
});
