import { describe, expect, it } from "vitest";
import { bands } from "../values/look";
import { bandText } from "./Legend";

describe("the legend", () => {
  it("changes exactly at the gauges", () => {
    const all = bands([0.25, 0.5, 0.75], 0.05);
    expect(all.map((_, i) => bandText(all, i, "mm"))).toEqual(["0.05–0.25", "0.25–0.50", "0.50–0.75", "over 0.75"]);
    expect(all.map((_, i) => bandText(all, i, "in"))).toEqual(["0.002–0.010", "0.010–0.020", "0.020–0.030", "over 0.030"]);
    expect(bandText(bands([0.25, 0.5, 0.75], 0.1), 0, "mm")).toBe("0.10–0.25");
  });
});
