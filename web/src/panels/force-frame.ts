import type { ForcesTold, Range } from "../wire/abutments";

/** Where things stand in a plot of pull over travel [px of its own frame]. */
export interface ForceFrame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly foot: number;
  readonly x: (travelMm: number) => number;
  readonly y: (pullN: number) => number;
  /** Pulls with a line [N], travels with a number [mm]. */
  readonly steps: readonly number[];
  readonly ticks: readonly number[];
}

const WIDTH = 300;
const HEIGHT = 128;
const LEFT = 26;
const FOOT = 102;
const HEAD = 10;

/** A round step that cuts a length into at most so many pieces. */
export function roundStep(length: number, pieces: number): number {
  const raw = Math.max(1e-6, length) / pieces;
  const ten = 10 ** Math.floor(Math.log10(raw));
  return ([1, 2, 5, 10].find((k) => k * ten >= raw) ?? 10) * ten;
}

/** Multiples of a step from the first at or above `from` to `to`. */
export function multiples(from: number, to: number, step: number): readonly number[] {
  const all: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9; k++) all.push(Number((k * step).toFixed(6)));
  return all;
}

/** The frame holds both ways out whole, and the pull that is wanted of a clasp where it is told. */
export function forceFrame({ leastPull, mostPull, freeAtMm }: Pick<ForcesTold, "leastPull" | "mostPull" | "freeAtMm">, least: number | null, most: number | null): ForceFrame {
  const pulls = [...leastPull, ...mostPull].map(([, pull]) => pull);
  const travels = [...leastPull, ...mostPull].map(([travel]) => travel);
  const top = 1.08 * Math.max(1, ...pulls, least ?? 0, Math.min(most ?? 0, 2 * Math.max(...pulls)));
  const low = Math.min(0, ...pulls);
  const end = Math.max(0.1, ...travels, freeAtMm ?? 0) * 1.04;
  return {
    width: WIDTH,
    height: HEIGHT,
    left: LEFT,
    foot: FOOT,
    x: (travel) => LEFT + ((WIDTH - LEFT) * travel) / end,
    y: (pull) => HEAD + ((FOOT - HEAD) * (top - Math.min(pull, top))) / (top - low),
    steps: multiples(low, top, roundStep(top - low, 5)),
    ticks: multiples(0, end * 0.97, roundStep(end, 6)),
  };
}

const STRESS_LEFT = 2;

/** A bar of shares that holds the stress and its limit. */
export function stressFrame(share: Range, limit: number): { readonly width: number; readonly x: (share: number) => number; readonly ticks: readonly number[] } {
  const end = Math.max(share.to, 1.25 * limit) * 1.06;
  return {
    width: WIDTH,
    x: (at) => STRESS_LEFT + ((WIDTH - STRESS_LEFT) * at) / end,
    ticks: multiples(0, end * 0.97, roundStep(end, 6)),
  };
}

/** "2.1–5.6"; one figure where both ends read the same. */
export function rangeText({ from, to }: Range, digits: number): string {
  const [a, b] = [from.toFixed(digits), to.toFixed(digits)];
  return a === b ? a : `${a}–${b}`;
}
