/** Vectors that know the frame they are in. Frames: `scan` (as in the file, mm), `world` (as drawn: rod upright along +z). */
declare const frame: unique symbol;
export type Vec<F extends string> = readonly [x: number, y: number, z: number] & { readonly [frame]: F };
export type ScanVec = Vec<"scan">;
export type WorldVec = Vec<"world">;

export const scan = (x: number, y: number, z: number): ScanVec => [x, y, z] as unknown as ScanVec;
export const world = (x: number, y: number, z: number): WorldVec => [x, y, z] as unknown as WorldVec;
const make = <F extends string>(x: number, y: number, z: number): Vec<F> => [x, y, z] as unknown as Vec<F>;

export const dot = <F extends string>(a: Vec<F>, b: Vec<F>): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const add = <F extends string>(a: Vec<F>, b: Vec<F>): Vec<F> => make(a[0] + b[0], a[1] + b[1], a[2] + b[2]);
export const sub = <F extends string>(a: Vec<F>, b: Vec<F>): Vec<F> => make(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
export const times = <F extends string>(a: Vec<F>, k: number): Vec<F> => make(a[0] * k, a[1] * k, a[2] * k);
/** From `a` to `b` by a share of the way. */
export const lerp = <F extends string>(a: Vec<F>, b: Vec<F>, share: number): Vec<F> => add(a, times(sub(b, a), share));
export const length = <F extends string>(a: Vec<F>): number => Math.hypot(a[0], a[1], a[2]);
export const cross = <F extends string>(a: Vec<F>, b: Vec<F>): Vec<F> =>
  make(a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]);

/** The unit vector along `a`; throws on the zero vector, which has no direction. */
export function unit<F extends string>(a: Vec<F>): Vec<F> {
  const size = length(a);
  if (!(size > 1e-12)) throw new RangeError("a vector of length 0 has no direction");
  return times(a, 1 / size);
}

/** `a` turned by `angle` [radians, right-handed] about the unit vector `axis` (Rodrigues' formula). */
export function turned<F extends string>(a: Vec<F>, axis: Vec<F>, angle: number): Vec<F> {
  const c = Math.cos(angle);
  return add(add(times(a, c), times(cross(axis, a), Math.sin(angle))), times(axis, dot(axis, a) * (1 - c)));
}
