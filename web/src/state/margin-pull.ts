import { mm } from "../values/units";
import { add, length, type ScanVec, sub, times } from "../values/vec";
import type { Fdi, Pin } from "../wire/types";

/** A shorter movement is no pull [mm]. */
export const LEAST_PULL_MM = 0.2;
const STEP_MM = 0.4;
const RADIUS_MM = 0.6;
/** Just past the place pulled to, the other side is fixed, so that the margin stays there. */
const PAST_MM = 0.9;
const PAST_RADIUS_MM = 0.3;

/**
 * A pulled margin as a row of fixed places: what it passed over on the way outwards is tooth, on the way inwards gum.
 *
 * @param on a place on top of the tooth
 */
export function pulled(tooth: Fdi, on: ScanVec, from: ScanVec, to: ScanVec): Pin[] {
  const way = sub(to, from);
  const size = length(way);
  const outwards = length(sub(to, on)) > length(sub(from, on));
  const [passed, beyond] = outwards ? [tooth, 0] : [0, tooth];
  const steps = Math.max(1, Math.round(size / STEP_MM));
  const pins: Pin[] = [];
  for (let i = 1; i <= steps; i++) pins.push({ tooth: passed, point: add(from, times(way, (i - 0.5) / steps)), radiusMm: mm(RADIUS_MM) });
  return [...pins, { tooth: beyond, point: add(to, times(way, PAST_MM / size)), radiusMm: mm(PAST_RADIUS_MM) }];
}
