import { dot, length, type ScanVec, scan, sub } from "../values/vec";

/** Puts a place that lies near the cast onto it. */
export type Lay = (near: ScanVec) => ScanVec;

const between = (a: ScanVec, b: ScanVec, share: number): ScanVec =>
  scan(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share);

/**
 * Parallel chords of an area as seen from above, for hatching it. Loops within loops are openings.
 *
 * @param along direction of the chords, level
 * @param across level and at right angles to it
 * @param stepMm distance between chords
 */
export function chords(loops: readonly (readonly ScanVec[])[], along: ScanVec, across: ScanVec, stepMm: number): readonly (readonly [ScanVec, ScanVec])[] {
  const rows = new Map<number, { readonly at: number; readonly point: ScanVec }[]>();
  for (const loop of loops) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length]!;
      const from = dot(across, a) / stepMm;
      const to = dot(across, b) / stepMm;
      for (let row = Math.ceil(Math.min(from, to)); row < Math.max(from, to); row++) {
        const point = between(a, b, (row - from) / (to - from));
        rows.set(row, [...(rows.get(row) ?? []), { at: dot(along, point), point }]);
      }
    });
  }
  const found: [ScanVec, ScanVec][] = [];
  for (const crossings of rows.values()) {
    crossings.sort((a, b) => a.at - b.at);
    for (let i = 0; i + 1 < crossings.length; i += 2) found.push([crossings[i]!.point, crossings[i + 1]!.point]);
  }
  return found;
}

/** A chord as a way on the cast: its ends as they are, and a place every so often between them. */
export function laidChord([a, b]: readonly [ScanVec, ScanVec], everyMm: number, lay: Lay): ScanVec[] {
  const parts = Math.max(1, Math.ceil(length(sub(b, a)) / everyMm));
  return Array.from({ length: parts + 1 }, (_, i) => (i === 0 ? a : i === parts ? b : lay(between(a, b, i / parts))));
}

/** Both ends of every piece of a curve, six numbers a piece. */
export function pieces(points: readonly ScanVec[], closed: boolean): number[] {
  const ends: number[] = [];
  const count = closed ? points.length : points.length - 1;
  for (let i = 0; i < count; i++) ends.push(...points[i]!, ...points[(i + 1) % points.length]!);
  return ends;
}

/** The same of a dashed curve: pieces that are drawn for a length and left out for another in turn. */
export function dashes(points: readonly ScanVec[], closed: boolean, onMm: number, offMm: number): number[] {
  const ends: number[] = [];
  let left = onMm;
  let drawn = true;
  const count = closed ? points.length : points.length - 1;
  for (let i = 0; i < count; i++) {
    const a = points[i]!;
    const b = points[(i + 1) % points.length]!;
    const span = length(sub(b, a));
    let at = 0;
    while (at < span) {
      const step = Math.min(left, span - at);
      if (drawn) ends.push(...between(a, b, at / span), ...between(a, b, (at + step) / span));
      at += step;
      left -= step;
      if (left < 1e-9) {
        drawn = !drawn;
        left = drawn ? onMm : offMm;
      }
    }
  }
  return ends;
}

/** Places on a curve, so far apart along it. */
export function beads(points: readonly ScanVec[], closed: boolean, everyMm: number): ScanVec[] {
  const found: ScanVec[] = [];
  let left = 0;
  const count = closed ? points.length : points.length - 1;
  for (let i = 0; i < count; i++) {
    const a = points[i]!;
    const b = points[(i + 1) % points.length]!;
    const span = length(sub(b, a));
    while (left < span) {
      found.push(between(a, b, left / span));
      left += everyMm;
    }
    left -= span;
  }
  return found;
}
