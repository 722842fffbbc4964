import { describe, expect, it } from "vitest";
import { scan } from "../values/vec";
import { pulled } from "./margin-pull";

describe("a pulled margin", () => {
  const on = scan(0, 0, 8);
  it("makes tooth of what it passes outwards, and gum of what lies beyond", () => {
    const pins = pulled(36, on, scan(4, 0, 0), scan(5.2, 0, -0.9));
    expect(pins.slice(0, -1).every(({ tooth }) => tooth === 36)).toBe(true);
    expect(pins.at(-1)!.tooth).toBe(0);
    expect(pins.at(-1)!.point[0]).toBeGreaterThan(5.2);
    expect(pins.slice(0, -1).every(({ point }) => point[0] > 4 && point[0] < 5.2)).toBe(true);
  });
  it("makes gum of what it passes inwards, and tooth of what lies beyond", () => {
    const pins = pulled(36, on, scan(5, 0, 0), scan(4, 0, 1));
    expect(pins.map(({ tooth }) => tooth)).toEqual([0, 0, 0, 0, 36]);
  });
});
