import type { LoadRatio } from "../wire/comparison";

/** Ratios on a logarithmic axis with 1 in its middle: twice as much lies as far to one side as half as much to the other. */

/** What lies beyond is drawn to the edge, with an arrow. */
export const MOST_RATIO = 8;
export const TICKS = [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8] as const;

/** @returns place on an axis from 0 to a width; beyond the ends at the ends */
export function place(ratio: number, width: number): number {
  const share = Math.log(Math.max(ratio, 1e-9)) / Math.log(MOST_RATIO);
  return (width / 2) * (1 + Math.max(-1, Math.min(1, share)));
}

/** Loads of one bite after the other, in the order of the server. */
export function byBite(loads: readonly LoadRatio[]): readonly { readonly bitten: LoadRatio["bitten"]; readonly loads: readonly LoadRatio[] }[] {
  const groups: { bitten: LoadRatio["bitten"]; loads: LoadRatio[] }[] = [];
  for (const load of loads) {
    const last = groups.at(-1);
    if (last && last.bitten.join() === load.bitten.join()) last.loads.push(load);
    else groups.push({ bitten: load.bitten, loads: [load] });
  }
  return groups;
}

/** Which way a moment tips a crown; null where the draws do not agree, nine in ten. */
const way = (toDistal: number): string | null => (toDistal >= 0.9 ? "to distal" : toDistal <= 0.1 ? "to mesial" : null);

/** What changes of the way a tooth is tipped; null: nothing that could be told. */
export function turned({ tipsToDistal, answer }: LoadRatio): { readonly first: string; readonly other: string } | null {
  if (!tipsToDistal || answer === "hardly loaded in either") return null;
  const first = way(tipsToDistal.first);
  const other = way(tipsToDistal.other);
  return first && other && first !== other ? { first, other } : null;
}
