import { poseMatrix, type Pose } from "../values/pose";
import { scan, type ScanVec } from "../values/vec";
import type { View } from "../values/view";

/** Room round the cast, as a factor of its size. */
const MARGIN = 1.06;

/** The legend with two rows, and its distance from the edge [CSS px]. */
const LEGEND_PX = 60;

/** Share of a canvas's height that the legend lies over, at the bottom. */
export function legendShare(heightPx: number): number {
  return Math.min(0.3, LEGEND_PX / Math.max(1, heightPx));
}

/** The middle of the box round all vertices: the point about which the cast is turned. */
export function middle(positions: Float32Array): ScanVec {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const v = positions[i + k]!;
      if (v < low[k]!) low[k] = v;
      if (v > high[k]!) high[k] = v;
    }
  }
  if (!(high[0]! >= low[0]!)) return scan(0, 0, 0);
  return scan((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2);
}

/**
 * The view moved and sized so that the whole cast is seen with a margin. `aspect`: width by height of the canvas; `covered`: share
 * of its height that something lies over, at the bottom.
 */
export function fitted(view: View, positions: Float32Array, pose: Pose, aspect: number, covered: number): View {
  const m = poseMatrix(pose);
  let [left, rightMost, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  const row = (axis: View["up"]): readonly number[] =>
    [0, 1, 2, 3].map((c) => axis[0] * m[4 * c]! + axis[1] * m[4 * c + 1]! + axis[2] * m[4 * c + 2]!);
  const [r0, r1, r2, r3] = row(view.right) as [number, number, number, number];
  const [u0, u1, u2, u3] = row(view.up) as [number, number, number, number];
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i]!;
    const y = positions[i + 1]!;
    const z = positions[i + 2]!;
    const right = r0 * x + r1 * y + r2 * z + r3;
    const up = u0 * x + u1 * y + u2 * z + u3;
    if (right < left) left = right;
    if (right > rightMost) rightMost = right;
    if (up < low) low = up;
    if (up > high) high = up;
  }
  if (!(rightMost >= left)) return view;
  const half = MARGIN * Math.max((high - low) / 2 / (1 - covered), (rightMost - left) / 2 / aspect, 2);
  const cx = (left + rightMost) / 2;
  const cy = (low + high) / 2 - covered * half;
  const target = [0, 1, 2].map((k) => view.right[k as 0] * cx + view.up[k as 0] * cy) as unknown as View["target"];
  return { ...view, half, target };
}
