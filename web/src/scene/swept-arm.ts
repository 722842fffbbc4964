import { scan, type ScanVec } from "../values/vec";

/** An arm as it is drawn: a section that tapers evenly along a curve, its flat side towards the tooth. */
export interface ArmLine {
  readonly points: readonly ScanVec[];
  /** Unit, away from the tooth; one a point. */
  readonly outward: readonly ScanVec[];
  readonly round: boolean;
  readonly root: { readonly widthMm: number; readonly thicknessMm: number };
  readonly tip: { readonly widthMm: number; readonly thicknessMm: number };
  /** From here to the end it is drawn as the part that springs [mm from the origin]. */
  readonly springsFromMm: number;
}

export interface Swept {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** 1 where it springs, 0 where it is rigid; one a vertex. */
  readonly springs: Float32Array;
  readonly index: Uint32Array;
}

const AROUND = 10;
/** The rounded end: each ring's way on, and its size, as shares of half the width. */
const END = [
  [0.5, 0.87],
  [0.87, 0.5],
  [1, 0.02],
] as const;

type V = readonly [number, number, number];
const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: V, b: V, k: number): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: V): V => {
  const size = Math.hypot(...a);
  return size > 1e-12 ? [a[0] / size, a[1] / size, a[2] / size] : [0, 0, 1];
};

/** How far each point lies along the curve [mm]. */
export function alongMm(points: readonly ScanVec[]): readonly number[] {
  let sum = 0;
  return points.map((point, i) => (sum += i === 0 ? 0 : Math.hypot(...minus(point, points[i - 1]!))));
}

/** The mean of each direction and those within a millimetre along the curve, twice: a drawn arm does not shiver with the grain of the scan. */
export function calmed(points: readonly ScanVec[], directions: readonly ScanVec[], reachMm = 1): readonly ScanVec[] {
  const along = alongMm(points);
  const once = (all: readonly V[]): readonly V[] =>
    all.map((_, i) => all.reduce<V>((sum, each, k) => (Math.abs(along[k]! - along[i]!) <= reachMm ? plus(sum, unit(each), 1) : sum), [0, 0, 0]));
  return once(once(directions)).map((each) => scan(...unit(each)));
}

/** The arm's surface: rings about the curve, half-round or round, and a rounded end. Fewer than two points give nothing. */
export function sweptArm({ points, outward, round, root, tip, springsFromMm }: ArmLine): Swept {
  const positions: number[] = [];
  const normals: number[] = [];
  const springs: number[] = [];
  const index: number[] = [];
  const along = alongMm(points);
  const whole = along.at(-1) ?? 0;
  const ring = (at: V, side: V, out: V, width: number, thick: number, share: number): void => {
    for (let k = 0; k <= AROUND; k++) {
      const turn = (round ? 2 : 1) * Math.PI * (k / AROUND);
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      const middle = round ? plus(at, out, thick / 2) : at;
      positions.push(...plus(plus(middle, side, (c * width) / 2), out, s * (round ? thick / 2 : thick)));
      normals.push(...unit(plus([c * side[0], c * side[1], c * side[2]], out, s)));
      springs.push(share >= springsFromMm ? 1 : 0);
    }
  };
  const frame = (i: number): { readonly way: V; readonly side: V; readonly out: V } => {
    const way = unit(minus(points[Math.min(i + 2, points.length - 1)]!, points[Math.max(0, i - 2)]!));
    const side = unit(cross(way, outward[i]!));
    return { way, side, out: unit(cross(side, way)) };
  };
  if (points.length < 2) return { positions: new Float32Array(), normals: new Float32Array(), springs: new Float32Array(), index: new Uint32Array() };
  const begin = frame(0);
  ring(points[0]!, begin.side, begin.out, 0.02, 0.02, 0); // shuts the end that the drawing begins with
  points.forEach((point, i) => {
    const { side, out } = frame(i);
    const share = whole > 0 ? along[i]! / whole : 0;
    ring(point, side, out, root.widthMm + share * (tip.widthMm - root.widthMm), root.thicknessMm + share * (tip.thicknessMm - root.thicknessMm), along[i]!);
  });
  const end = points.at(-1)!;
  const { way, side, out } = frame(points.length - 1);
  for (const [on, size] of END) ring(plus(end, way, (on * tip.widthMm) / 2), side, out, size * tip.widthMm, size * tip.thicknessMm, whole);
  const rings = 1 + points.length + END.length;
  const row = AROUND + 1;
  for (let i = 0; i + 1 < rings; i++) {
    for (let k = 0; k < AROUND; k++) {
      const a = i * row + k;
      index.push(a, a + 1, a + row, a + 1, a + row + 1, a + row);
    }
  }
  return { positions: new Float32Array(positions), normals: new Float32Array(normals), springs: new Float32Array(springs), index: new Uint32Array(index) };
}
