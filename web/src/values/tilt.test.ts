import { describe, expect, it } from "vitest";
import { frontUp, type Jaw, mapPlace, REFERENCE, rounded, tilt, tiltAt, totalTilt, within } from "./tilt";
import { degrees } from "./units";

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** The withdrawal axis in the arch frame, as rodwork.survey.Tilt defines it: p ∝ (σ·tan r, −tan a, 1), σ = +1 upper, −1 lower. */
function axis(anterior: number, right: number, jaw: Jaw): [number, number, number] {
  const v: [number, number, number] = [(jaw === "upper" ? 1 : -1) * Math.tan(rad(right)), -Math.tan(rad(anterior)), 1];
  const size = Math.hypot(...v);
  return [v[0] / size, v[1] / size, v[2] / size];
}

describe("the dot of the tilt map", () => {
  // Truth: the frame's own words. A level direction d of the arch goes down when d·p < 0. On the map, patient's right lies on
  // the viewer's left (x < 0); the front lies up for an upper cast and down for a lower one.
  for (const jaw of ["upper", "lower"] as const) {
    for (const [a, r] of [[6, 4], [6, -4], [-6, 4], [-6, -4]] as const) {
      it(`moves towards the side that goes down: ${jaw}, anterior ${a}°, right ${r}°`, () => {
        const p = axis(a, r, jaw);
        const frontGoesDown = p[1] < 0;
        const patientsRight = jaw === "upper" ? -1 : 1; // +X is the patient's left on an upper cast, right on a lower one
        const rightGoesDown = patientsRight * p[0] < 0;
        expect(frontGoesDown).toBe(a > 0);
        expect(rightGoesDown).toBe(r > 0);
        const place = mapPlace(tilt(a, r), jaw);
        expect(Math.sign(place.x)).toBe(rightGoesDown ? -1 : 1);
        const frontOnScreen = jaw === "upper" ? 1 : -1;
        expect(Math.sign(place.y)).toBe(frontGoesDown ? frontOnScreen : -frontOnScreen);
        expect(Math.hypot(place.x, place.y)).toBeCloseTo((Math.acos(p[2]) * 180) / Math.PI, 10);
      });
    }
  }

  it("goes there and back", () => {
    for (const jaw of ["upper", "lower"] as const) {
      for (const [a, r] of [[0, 0], [3, -2], [-14, 5], [0, 9], [12, 0]] as const) {
        const back = tiltAt(mapPlace(tilt(a, r), jaw), jaw);
        expect(back.anterior).toBeCloseTo(a, 10);
        expect(back.right).toBeCloseTo(r, 10);
      }
    }
  });

  it("stands in the middle at the reference", () => {
    expect(tiltAt({ x: degrees(0), y: degrees(0) }, "lower")).toEqual(REFERENCE);
    expect(frontUp(null)).toBe(1);
  });
});

describe("the total tilt", () => {
  it("is the angle between p and Z", () => {
    expect(totalTilt(tilt(10, 0))).toBeCloseTo(10, 12);
    expect(totalTilt(tilt(3, 4))).toBeCloseTo((Math.acos(axis(3, 4, "lower")[2]) * 180) / Math.PI, 10);
  });

  it("is held to a limit without changing direction", () => {
    const held = within(tilt(20, 10), degrees(15));
    expect(totalTilt(held)).toBeCloseTo(15, 10);
    expect(Math.tan(rad(held.anterior)) / Math.tan(rad(held.right))).toBeCloseTo(Math.tan(rad(20)) / Math.tan(rad(10)), 10);
    expect(within(tilt(3, 1), degrees(15))).toEqual(tilt(3, 1));
  });

  it("never shows −0", () => {
    expect(Object.is(rounded(tilt(-0.001, 0)).anterior, 0)).toBe(true);
  });
});
