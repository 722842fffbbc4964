import { frontUp, type Jaw } from "./tilt";
import { add, cross, dot, times, turned, unit, world, type WorldVec } from "./vec";

/**
 * An orthographic look at the world. `right` and `up` are the screen's directions, `back` points to the viewer; the three
 * are perpendicular and right-handed, so that a picture is turned but never mirrored. `half` is half the height seen [mm].
 */
export interface View {
  readonly right: WorldVec;
  readonly up: WorldVec;
  readonly back: WorldVec;
  readonly target: WorldVec;
  readonly half: number;
}

export type Side = "above" | "front" | "back" | "right" | "left";

const ROD = world(0, 0, 1);
const HALF_MIN_MM = 1.5;
const HALF_MAX_MM = 400;

function looking(back: WorldVec, up: WorldVec, target: WorldVec, half: number): View {
  return { right: cross(up, back), up, back, target, half };
}

/**
 * The views that keys give. From above, along the rod: front up for an upper cast, down for a lower one, so that the patient's
 * right lies on the viewer's left in both. From a side: that side of the patient towards the viewer, the rod upright.
 */
export function sideView(side: Side, jaw: Jaw | null, target: WorldVec, half: number): View {
  const rightHand = jaw === "lower" ? 1 : -1; // world x is the patient's right on a lower cast, left on an upper one
  switch (side) {
    case "above":
      return looking(ROD, world(0, frontUp(jaw), 0), target, half);
    case "front":
      return looking(world(0, 1, 0), ROD, target, half);
    case "back":
      return looking(world(0, -1, 0), ROD, target, half);
    case "right":
      return looking(world(rightHand, 0, 0), ROD, target, half);
    case "left":
      return looking(world(-rightHand, 0, 0), ROD, target, half);
  }
}

/** Orbit: `across` turns the table under the rod, `down` tips the viewer over it [radians]; the rod stays upright. */
export function orbit(view: View, across: number, down: number): View {
  const about = (v: WorldVec): WorldVec => turned(v, ROD, -across);
  const right = unit(about(view.right));
  const pitchNow = Math.asin(Math.max(-1, Math.min(1, view.back[2])));
  // Never past straight above or straight below: there the screen would turn over.
  const pitch = Math.max(-Math.PI / 2, Math.min(Math.PI / 2, pitchNow + down)) - pitchNow;
  const back = unit(turned(about(view.back), right, -pitch));
  return { ...view, right, back, up: cross(back, right) };
}

/** Pan by a distance on the screen [mm, right and up]. */
export function pan(view: View, dx: number, dy: number): View {
  return { ...view, target: add(view.target, add(times(view.right, -dx), times(view.up, -dy))) };
}

/** Zoom by `factor` so that the place under the pointer stays there. `x`, `y`: the pointer from the middle [mm, right and up]. */
export function zoomAbout(view: View, factor: number, x: number, y: number): View {
  const half = Math.max(HALF_MIN_MM, Math.min(HALF_MAX_MM, view.half / factor));
  const k = 1 - half / view.half;
  return { ...view, half, target: add(view.target, add(times(view.right, x * k), times(view.up, y * k))) };
}

/** Looking straight down the rod that stands at `place`: same size, place in the middle, the screen turned as little as can be. */
export function alongRod(view: View, place: WorldVec): View {
  const level = (v: WorldVec): WorldVec => world(v[0], v[1], 0);
  const upLevel = level(view.back[2] > 0.999 ? view.up : times(view.back, -1));
  return looking(ROD, unit(upLevel), place, view.half);
}

/** How high the viewer stands over a place that is shown: enough to see which tooth it is [radians]. */
const SHOWN_FROM = (25 * Math.PI) / 180;
const SHOWN_HALF_MM = 16;

/** Looking at a place from the side to which its surface faces, a little from above; no farther off than to see a few teeth. */
export function facing(view: View, outward: WorldVec, place: WorldVec): View {
  const level = world(outward[0], outward[1], 0);
  const size = Math.hypot(level[0], level[1]);
  if (size < 1e-6) return { ...view, target: place };
  const side = times(level, 1 / size);
  const back = add(times(side, Math.cos(SHOWN_FROM)), times(ROD, Math.sin(SHOWN_FROM)));
  const right = unit(cross(ROD, back));
  return { right, back, up: cross(back, right), target: place, half: Math.min(view.half, SHOWN_HALF_MM) };
}

/** A direction or place on the screen: [right, up] in mm from the middle. */
export function onScreen(view: View, place: WorldVec): readonly [number, number] {
  const d = add(place, times(view.target, -1));
  return [dot(view.right, d), dot(view.up, d)];
}
