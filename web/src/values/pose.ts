import { cross, dot, length, scan, type ScanVec, sub, times, unit, type Vec, world, type WorldVec } from "./vec";

/**
 * How the cast stands in the drawn world: a turn and a shift, never a mirror. The rod is always upright, along +z; +y is the
 * front of the cast as nearly as that allows; x = y × z.
 */
export interface Pose {
  /** World axes, written in the scan frame. */
  readonly x: ScanVec;
  readonly y: ScanVec;
  readonly z: ScanVec;
  /** The scan point that stands at the world's origin. */
  readonly pivot: ScanVec;
}

/** The pose in which `axis` (unit, scan frame) is upright and `front` lies towards +y. */
export function poseOf(axis: ScanVec, front: ScanVec, pivot: ScanVec): Pose {
  let level = sub(front, times(axis, dot(front, axis)));
  if (length(level) < 1e-6) {
    // No front is known, or it lies along the axis: any level direction will do to draw the cast.
    const any = Math.abs(axis[0]) < 0.9 ? scan(1, 0, 0) : scan(0, 1, 0);
    level = sub(any, times(axis, dot(any, axis)));
  }
  const y = unit(level);
  return { x: cross(y, axis), y, z: axis, pivot };
}

export function toWorld(pose: Pose, point: ScanVec): WorldVec {
  return directionToWorld(pose, sub(point, pose.pivot));
}

export function directionToWorld({ x, y, z }: Pose, direction: ScanVec): WorldVec {
  return world(dot(x, direction), dot(y, direction), dot(z, direction));
}

export function directionToScan({ x, y, z }: Pose, d: WorldVec): ScanVec {
  const part = (i: 0 | 1 | 2): number => x[i] * d[0] + y[i] * d[1] + z[i] * d[2];
  return scan(part(0), part(1), part(2));
}

/** The 4 × 4 matrix world ← scan, column by column as three.js keeps it. */
export function poseMatrix({ x, y, z, pivot }: Pose): number[] {
  const shift = (axis: Vec<"scan">): number => -dot(axis, pivot);
  return [x[0], y[0], z[0], 0, x[1], y[1], z[1], 0, x[2], y[2], z[2], 0, shift(x), shift(y), shift(z), 1];
}
