/** Values on a square lattice; NaN or absent where there is none. */
export interface Lattice {
  readonly step: number;
  /** The value at a place of the lattice, counted in steps from the middle. */
  at(i: number, j: number): number | undefined;
  /** Farthest place from the middle [steps]. */
  readonly reach: number;
}

export type Place = readonly [x: number, y: number];

/**
 * The lines on which a value has a level, as separate pieces, one a triangle: each square of the lattice is cut in two along its
 * diagonal, and the value taken as plane on each half. Exact where the value is linear; squares that lack a corner have no line.
 */
export function contour(lattice: Lattice, level: number): (readonly [Place, Place])[] {
  const pieces: (readonly [Place, Place])[] = [];
  const { step, reach } = lattice;
  for (let i = -reach; i < reach; i++) {
    for (let j = -reach; j < reach; j++) {
      const corner = (di: number, dj: number): Corner => ({ x: (i + di) * step, y: (j + dj) * step, value: lattice.at(i + di, j + dj) ?? NaN });
      const [a, b, c, d] = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
      for (const half of [
        [a, b, c],
        [a, c, d],
      ]) {
        const ends = half.flatMap((from, k) => crossing(from, half[(k + 1) % 3]!, level));
        if (ends[0] && ends[1]) pieces.push([ends[0], ends[1]]);
      }
    }
  }
  return pieces;
}

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly value: number;
}

function crossing(a: Corner, b: Corner, level: number): Place[] {
  if (Number.isNaN(a.value) || Number.isNaN(b.value) || a.value >= level === b.value >= level) return [];
  const share = (level - a.value) / (b.value - a.value);
  return [[a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)]];
}
