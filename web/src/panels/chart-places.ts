import type { Plan } from "../values/plan";
import type { ReliefWindow } from "../values/relief";
import type { Jaw } from "../values/tilt";
import { placesOf } from "../values/tooth-number";
import type { Fdi, TeethInfo } from "../wire/types";

/** Where a place of the arch is drawn on the chart [mm of the plan]. */
export interface ChartPlace {
  readonly tooth: Fdi;
  readonly at: readonly [number, number];
  /** Where its number stands, outside the arch. */
  readonly label: readonly [number, number];
}

const LABEL_OUT_MM = 7.5;

/**
 * All sixteen places: where the scan shows the tooth, else where its space has it, else spread between its neighbours; where none
 * is known yet, on an arch as large as the picture.
 */
export function chartPlaces(jaw: Jaw, plan: Plan, window: ReliefWindow, teeth: TeethInfo | null): ChartPlace[] {
  const numbers = placesOf(jaw);
  const usual = usualArch(jaw, window);
  const known = numbers.map((tooth): readonly [number, number] | null => {
    const found = teeth?.teeth.find((each) => each.tooth === tooth);
    if (found) return plan.at(found.top);
    const space = teeth?.spaces.flatMap(({ positions }) => positions).find((each) => each.tooth === tooth);
    return space ? plan.at(space.at) : null;
  });
  const at = numbers.map((_, i) => known[i] ?? between(known, usual, i));
  const middle: readonly [number, number] = [0, average(usual.map(([, y]) => y))];
  return numbers.map((tooth, i) => {
    const [x, y] = at[i]!;
    // Outwards across the row of neighbours, away from the middle of the arch.
    const [ax, ay] = at[Math.max(0, i - 1)]!;
    const [bx, by] = at[Math.min(15, i + 1)]!;
    const size = Math.hypot(bx - ax, by - ay) || 1;
    let [ox, oy] = [-(by - ay) / size, (bx - ax) / size];
    if (ox * (x - middle[0]) + oy * (y - middle[1]) < 0) [ox, oy] = [-ox, -oy];
    return { tooth, at: [x, y], label: [x + LABEL_OUT_MM * ox, y + LABEL_OUT_MM * oy] };
  });
}

/** A place between known ones keeps its share of the way; beyond them it follows the usual arch from the last. */
function between(known: readonly (readonly [number, number] | null)[], usual: readonly (readonly [number, number])[], i: number): readonly [number, number] {
  const before = known.findLastIndex((place, k) => k < i && place !== null);
  const after = known.findIndex((place, k) => k > i && place !== null);
  const [ux, uy] = usual[i]!;
  const shift = (k: number): readonly [number, number] => [known[k]![0] - usual[k]![0], known[k]![1] - usual[k]![1]];
  if (before < 0 && after < 0) return [ux, uy];
  if (before < 0 || after < 0) {
    const [dx, dy] = shift(before < 0 ? after : before);
    return [ux + dx, uy + dy];
  }
  const share = (i - before) / (after - before);
  const [a, b] = [shift(before), shift(after)];
  return [ux + a[0] + share * (b[0] - a[0]), uy + a[1] + share * (b[1] - a[1])];
}

/** Half an ellipse that fits the picture, front up or down as the jaw lies. */
function usualArch(jaw: Jaw, { left, top, grain, width, height }: ReliefWindow): readonly (readonly [number, number])[] {
  const [w, h] = [width * grain, height * grain];
  const up = jaw === "upper" ? 1 : -1;
  const [cx, back] = [left + w / 2, up > 0 ? top - h : top];
  return placesOf(jaw).map((_, i) => {
    const turn = Math.PI * (0.02 + (0.96 * (i + 0.5)) / 16);
    return [cx - 0.36 * w * Math.cos(turn), back + up * h * (0.12 + 0.7 * Math.sin(turn))];
  });
}

const average = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
