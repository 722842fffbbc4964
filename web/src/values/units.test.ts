import { describe, expect, it } from "vitest";
import { degrees, degreesText, gaugeText, lengthText, mm } from "./units";

describe("lengths", () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  it("convert exactly when measured, nominally when they name a gauge", () => {
    expect(lengthText(mm(0.254), "both")).toBe("0.25 mm · 0.010 in");
    expect(lengthText(mm(1), "in")).toBe("0.039 in");
    expect(lengthText(mm(0.001), "both")).toBe("0 mm");
    expect(lengthText(mm(-0.004), "in")).toBe("0 in");
    expect(gaugeText(mm(0.25), "both")).toBe("0.25 mm · 0.010 in");
    expect(gaugeText(mm(0.75), "in")).toBe("0.030 in");
  });
  it("carry a true minus sign and never −0", () => {
    expect(degreesText(degrees(-2))).toBe("−2.0°");
    expect(degreesText(degrees(-0.01))).toBe("0.0°");
  });
});
