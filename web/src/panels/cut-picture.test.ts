import { expect, test } from "vitest";
import { crownLine, cutFrame, taken } from "./cut-picture";

const FRAME = cutFrame(4, 80);

test("the place of the cut stands left of the middle, out to the right and the path up, to scale", () => {
  expect(FRAME.x(0)).toBeCloseTo(49.6);
  expect(FRAME.x(1) - FRAME.x(0)).toBeCloseTo(20);
  expect(FRAME.y(1) - FRAME.y(0)).toBeCloseTo(-20);
});

test("only what moves is taken, between where it was and where it comes to lie", () => {
  const before = [0, 0, 0, 1, 0, 1, 0, 2];
  const after = [0, 0, 0, 1, -0.5, 1, -0.5, 2];
  expect(crownLine(before, FRAME)).toBe("M49.6 40.0L49.6 20.0M49.6 20.0L49.6 0.0");
  expect(taken(before, after, FRAME)).toBe("M49.6 20.0L49.6 0.0L39.6 0.0L39.6 20.0Z");
  expect(taken(before, before, FRAME)).toBe("");
});
