import { describe, expect, it } from "vitest";
import { degrees, mm } from "../values/units";
import type { StripSection } from "../wire/strip";
import { stripFrame, stripPath, stripScale } from "./strip-frame";

const flank = (gap: number): StripSection => ({
  tooth: 44,
  surface: "distal",
  line: [
    [0, 0],
    [1, -2],
    [1 - gap, -5],
  ],
  rod: mm(1),
  foot: mm(-5),
  contact: [1, -2],
  deepest: [1 - gap, -5],
  gapMm: mm(gap),
  belowMm: mm(3),
  plane: { angleDeg: degrees(2), heightMm: mm(3), enamelMm: mm(0.1) },
});

describe("the drawings of the strip", () => {
  it("share the scale at which the largest fits", () => {
    const both = [flank(0.2), flank(4)];
    const scale = stripScale(both, 80, 100);
    expect(scale).toBe(Math.min(...both.map((one) => stripScale([one], 80, 100))));
    expect(scale).toBeCloseTo(80 / (1.4 + 4 + 1.1));
  });
  it("keep rod, contact and deepest place on the paper, the tooth left of the rod", () => {
    const section = flank(1);
    const frame = stripFrame(section, stripScale([section], 80, 100), 80, 100);
    for (const [s, h] of [section.contact, section.deepest]) {
      expect(frame.x(s)).toBeGreaterThan(0);
      expect(frame.x(s)).toBeLessThanOrEqual(frame.x(section.rod));
      expect(frame.y(h)).toBeGreaterThan(0);
      expect(frame.y(h)).toBeLessThan(100);
    }
    expect(frame.x(section.rod) - frame.x(section.deepest[0])).toBeCloseTo(frame.scale);
    expect(stripPath(section.line, frame).match(/[ML]/g)).toEqual(["M", "L", "L"]);
  });
});
