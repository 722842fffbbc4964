/** A curve as points, x, y, z, stride 3. */
export interface Polyline {
  readonly points: Float32Array;
  readonly closed: boolean;
}

interface End {
  readonly line: number;
  readonly last: boolean;
  readonly at: readonly [number, number, number];
}

/**
 * Open curves whose ends lie within `reachMm` of each other as one curve, nearest ends first; a curve whose own ends meet becomes
 * closed. For the eye alone, as a hand with a lead would not lift it for a gap of a few tenths: nothing is measured on it.
 */
export function joinedCurves(curves: readonly Polyline[], reachMm: number): Polyline[] {
  const open = curves.filter(({ closed, points }) => !closed && points.length >= 6);
  const whole = curves.filter((curve) => !open.includes(curve));
  const ends: End[] = open.flatMap(({ points }, line) => [false, true].map((last) => ({ line, last, at: at(points, last ? points.length / 3 - 1 : 0) })));
  // Partner of each end, by its number: 2 × line, + 1 for the last point.
  const partner = new Array<number>(ends.length).fill(-1);
  const pairs: (readonly [gap: number, a: number, b: number])[] = [];
  for (let a = 0; a < ends.length; a++) {
    for (let b = a + 1; b < ends.length; b++) {
      const gap = Math.hypot(...[0, 1, 2].map((k) => ends[a]!.at[k]! - ends[b]!.at[k]!));
      // A short piece may not be bent round onto itself.
      if (gap <= reachMm && (ends[a]!.line !== ends[b]!.line || open[ends[a]!.line]!.points.length > 30)) pairs.push([gap, a, b]);
    }
  }
  for (const [, a, b] of pairs.sort((p, q) => p[0] - q[0])) {
    if (partner[a] === -1 && partner[b] === -1) [partner[a], partner[b]] = [b, a];
  }
  const used = new Set<number>();
  const walked = (start: number): Polyline => {
    const points: number[] = [];
    let entry = start;
    for (;;) {
      const line = entry >> 1;
      used.add(line);
      const own = open[line]!.points;
      const n = own.length / 3;
      for (let i = 0; i < n; i++) points.push(...at(own, entry % 2 === 0 ? i : n - 1 - i));
      const next = partner[entry ^ 1]!;
      if (next === -1) return { points: new Float32Array(points), closed: false };
      if (used.has(next >> 1)) return { points: new Float32Array(points), closed: true };
      entry = next;
    }
  };
  const joined: Polyline[] = [];
  // From free ends first; what is left then are rings.
  for (let end = 0; end < ends.length; end++) if (partner[end] === -1 && !used.has(end >> 1)) joined.push(walked(end));
  for (let end = 0; end < ends.length; end += 2) if (!used.has(end >> 1)) joined.push(walked(end));
  return [...whole, ...joined];
}

const at = (points: Float32Array, i: number): readonly [number, number, number] => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
