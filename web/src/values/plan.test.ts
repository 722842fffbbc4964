import { describe, expect, it } from "vitest";
import { planOf } from "./plan";
import { scan } from "./vec";

describe("the arch on paper", () => {
  // Truth: the convention of paper (docs/architecture.md). Patient's right on the viewer's left; upper front up, lower front down; turned, never mirrored.
  const frame = { origin: scan(1, 2, 3), x: scan(1, 0, 0), y: scan(0, 1, 0), z: scan(0, 0, 1) };
  for (const jaw of ["upper", "lower"] as const) {
    it(`lies as a person sees it: ${jaw}`, () => {
      const plan = planOf(frame, jaw);
      const patientsRight = jaw === "upper" ? scan(-9, 2, 3) : scan(11, 2, 3); // +X: left on an upper cast, right on a lower one
      expect(plan.at(patientsRight)[0]).toBe(-10);
      expect(Math.sign(plan.at(scan(1, 12, 3))[1])).toBe(jaw === "upper" ? 1 : -1);
      const [a, b] = [plan.at(scan(2, 2, 3)), plan.at(scan(1, 3, 3))];
      expect(a[0] * b[1] - a[1] * b[0]).toBe(1); // a turn keeps the handedness
      expect(plan.height(scan(0, 0, 5))).toBe(2);
    });
  }
});
