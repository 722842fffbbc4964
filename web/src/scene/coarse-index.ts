/**
 * A coarser set of triangles over the same vertices, for pictures while something moves on a slow screen: the vertices of each
 * cell of a cubic grid are drawn as the first of them, and triangles that fall together are left out. Because the vertices stay
 * the same, so do their depths. At most about `most` triangles; the whole set when it is no larger.
 */
export function coarseIndex(positions: Float32Array, corners: Uint32Array, most: number): Uint32Array<ArrayBuffer> {
  const triangles = corners.length / 3;
  if (triangles <= most) return new Uint32Array(corners);
  const cell = meanEdge(positions, corners) * Math.sqrt(triangles / most);
  const low = [Infinity, Infinity, Infinity];
  for (let i = 0; i < positions.length; i++) low[i % 3] = Math.min(low[i % 3]!, positions[i]!);
  const first = new Map<number, number>();
  const stands = new Uint32Array(positions.length / 3);
  for (let v = 0; v < stands.length; v++) {
    // 2^17 cells a side, 51 bits in all, fit a double: 0.3 mm cells reach 39 m.
    const at = (k: number): number => Math.floor((positions[3 * v + k]! - low[k]!) / cell);
    const key = (at(0) * 131072 + at(1)) * 131072 + at(2);
    const there = first.get(key);
    if (there === undefined) first.set(key, v);
    stands[v] = there ?? v;
  }
  const kept = new Uint32Array(corners.length);
  let n = 0;
  for (let t = 0; t < corners.length; t += 3) {
    const a = stands[corners[t]!]!;
    const b = stands[corners[t + 1]!]!;
    const c = stands[corners[t + 2]!]!;
    if (a === b || b === c || c === a) continue;
    kept[n++] = a;
    kept[n++] = b;
    kept[n++] = c;
  }
  return kept.slice(0, n);
}

/** Mean length of the first edges of some hundreds of triangles, spread over the whole. */
function meanEdge(positions: Float32Array, corners: Uint32Array): number {
  const step = 3 * Math.max(1, Math.floor(corners.length / 3 / 500));
  let sum = 0;
  let count = 0;
  for (let t = 0; t < corners.length; t += step) {
    const a = 3 * corners[t]!;
    const b = 3 * corners[t + 1]!;
    sum += Math.hypot(positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!, positions[b + 2]! - positions[a + 2]!);
    count++;
  }
  return sum / count;
}
