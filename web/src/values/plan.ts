import { dot, type ScanVec, sub } from "./vec";
import type { Jaw } from "./tilt";

/** The arch as seen from above on paper [mm]: x to the viewer's right, y up. */
export interface Plan {
  readonly at: (point: ScanVec) => readonly [x: number, y: number];
  /** How high a point lies over the occlusal plane. */
  readonly height: (point: ScanVec) => number;
}

interface Frame {
  readonly origin: ScanVec;
  readonly x: ScanVec;
  readonly y: ScanVec;
  readonly z: ScanVec;
}

/**
 * The patient's right on the viewer's left in both jaws; an upper arch with its front up, a lower one with its front down: turned,
 * never mirrored. (+X is the patient's left on an upper cast and right on a lower one.)
 */
export function planOf({ origin, x, y, z }: Frame, jaw: Jaw): Plan {
  const turn = jaw === "lower" ? -1 : 1;
  return {
    at: (point) => {
      const d = sub(point, origin);
      return [turn * dot(x, d), turn * dot(y, d)];
    },
    height: (point) => dot(z, sub(point, origin)),
  };
}
