import { describe, expect, it } from "vitest";
import { mm } from "../values/units";
import { limitText, preparationText, toldText } from "./ledger-words";

describe("the ledger's words", () => {
  it("write lengths in the unit of the bench, with their uncertainty", () => {
    const told = { kind: "measured", value: 2.54, uncertainty: 0.0254, unit: "mm", words: "2.54 ± 0.03 mm" } as const;
    expect(toldText(told, "both")).toBe("2.54 ± 0.03 mm");
    expect(toldText(told, "in")).toBe("0.100 ± 0.001 in"); // 25.4 mm an inch
    expect(limitText({ kind: "at-most", value: 1.5, unit: "mm", words: "at most 1.5 mm" }, "mm")).toBe("at most 1.50 mm");
  });
  it("tell how much is prepared and what that takes", () => {
    const lower = { rule: "arm-on-line", what: "lower the line", amountMm: mm(0.8), enamelMm: mm(0.31) };
    expect(preparationText(lower, "mm")).toBe("lower the line, 0.80 mm (takes 0.31 mm of enamel)");
    expect(preparationText({ ...lower, enamelMm: null }, "mm")).toBe("lower the line, 0.80 mm");
    expect(preparationText({ ...lower, amountMm: mm(0) }, "mm")).toBe("lower the line, if at all: too close to call");
  });
  it("write angles, forces and shares with the digits that mean something", () => {
    expect(toldText({ kind: "measured", value: 31, uncertainty: 2, unit: "degrees", words: "31.00 ± 2.00°" }, "mm")).toBe("31.0 ± 2.0°");
    expect(toldText({ kind: "measured", value: 6.62, uncertainty: 2.8, unit: "N", words: "" }, "mm")).toBe("6.6 ± 2.8 N");
    expect(toldText({ kind: "measured", value: 1.63, uncertainty: 0.44, unit: "1", words: "" }, "mm")).toBe("163 ± 44 %");
    expect(limitText({ kind: "at-most", value: 1, unit: "1", words: "at most 1" }, "mm")).toBe("at most 100 %");
  });
  it("leave other readings as the program says them", () => {
    expect(toldText({ kind: "no-room", words: "no room: the vestibule ends" }, "in")).toBe("no room: the vestibule ends");
    expect(limitText({ kind: "at-least", value: null, unit: "mm", words: "at least Infinity mm" }, "mm")).toContain("not known");
    expect(limitText({ kind: "one-of", words: "yes" }, "mm")).toBe("yes");
  });
});
