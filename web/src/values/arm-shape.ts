import { add, length, lerp, scan, type ScanVec, sub, times } from "./vec";

/** A place of an arm pulled elsewhere: a share of the laid out arm's length from its origin, and where to. */
export interface Pull {
  readonly at: number;
  readonly to: ScanVec;
}

/** Where an arm is taken hold of, as shares of its length; the server lets a pull reach as far as the handles beside it. */
export const HANDLES = [0, 1 / 3, 2 / 3, 1] as const;

const SAME = 1e-3;

/** The pulls with one place pulled elsewhere. */
export const pulled = (pulls: readonly Pull[], at: number, to: ScanVec): readonly Pull[] =>
  [...pulls.filter((each) => Math.abs(each.at - at) > SAME), { at, to }].sort((a, b) => a.at - b.at);

const sharesOf = (line: readonly ScanVec[]): readonly number[] => {
  let sum = 0;
  const along = line.map((point, i) => (sum += i === 0 ? 0 : length(sub(point, line[i - 1]!))));
  const whole = along.at(-1) ?? 0;
  return along.map((mm) => (whole > 0 ? mm / whole : 0));
};

/** The place of a line at a share of its length. */
export function placeAt(line: readonly ScanVec[], at: number): ScanVec {
  const shares = sharesOf(line);
  const i = shares.findIndex((share) => share >= at - 1e-9);
  if (i <= 0) return line[Math.max(0, i)] ?? line.at(-1)!;
  const step = shares[i]! - shares[i - 1]!;
  return lerp(line[i - 1]!, line[i]!, step > 0 ? (at - shares[i - 1]!) / step : 0);
}

/** Where the handles of an arm stand: where they were pulled to, else on its line. */
export const handles = (line: readonly ScanVec[], pulls: readonly Pull[]): readonly { readonly at: number; readonly point: ScanVec }[] =>
  HANDLES.map((at) => ({ at, point: pulls.find((each) => Math.abs(each.at - at) < SAME)?.to ?? placeAt(line, at) }));

/**
 * A line as it looks while it is pulled further, until the server has laid it anew: moved by what the pulls differ from those it
 * was laid with, less and less towards the handles beside.
 */
export function following(line: readonly ScanVec[], laidWith: readonly Pull[], now: readonly Pull[]): readonly ScanVec[] {
  if (laidWith === now || line.length === 0) return line;
  const was = handles(line, laidWith);
  const is = handles(line, now);
  const moves = HANDLES.map((at, k) => ({ at, by: sub(is[k]!.point, was[k]!.point) }));
  if (moves.every(({ by }) => length(by) < 1e-6)) return line;
  const shares = sharesOf(line);
  return line.map((point, i) => {
    const k = Math.min(moves.length - 2, Math.max(0, moves.findLastIndex(({ at }) => at <= shares[i]! + 1e-9)));
    const [a, b] = [moves[k]!, moves[k + 1]!];
    const t = Math.min(1, Math.max(0, (shares[i]! - a.at) / (b.at - a.at)));
    const eased = t * t * (3 - 2 * t);
    const by = add(times(a.by, 1 - eased), times(b.by, eased));
    return scan(point[0] + by[0], point[1] + by[1], point[2] + by[2]);
  });
}
