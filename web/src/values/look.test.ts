import { describe, expect, it } from "vitest";
import { bands } from "./look";

describe("the bands", () => {
  it("grows darker with depth, so that it keeps its order in greyscale", () => {
    // Relative luminance: W3C, WCAG 2.2, "relative luminance".
    const luminance = (hex: string): number => {
      const [r, g, b] = [1, 3, 5].map((i) => {
        const c = parseInt(hex.slice(i, i + 2), 16) / 255;
        return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      }) as [number, number, number];
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const levels = bands([0.25, 0.5, 0.75], 0.05).map((band) => luminance(band.fill));
    for (let i = 1; i < levels.length; i++) {
      // Contrast ratio (W3C, WCAG 2.2): neighbours differ by at least 1.5 to 1.
      expect((levels[i - 1]! + 0.05) / (levels[i]! + 0.05)).toBeGreaterThan(1.5);
    }
  });
});
