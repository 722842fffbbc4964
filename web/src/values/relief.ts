import type { Plan } from "./plan";
import { scan } from "./vec";

/** Of a picture from above: which stretch of the plan it shows, and how finely. */
export interface ReliefWindow {
  readonly left: number;
  readonly top: number;
  /** mm a pixel. */
  readonly grain: number;
  readonly width: number;
  readonly height: number;
}

/** The stretch of the plan that holds all vertices, with a margin. */
export function reliefWindow(positions: Float32Array, plan: Plan, widthPx: number, marginMm: number): ReliefWindow {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y] = plan.at(scan(positions[i]!, positions[i + 1]!, positions[i + 2]!));
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  const grain = (right - left + 2 * marginMm) / widthPx;
  return { left: left - marginMm, top: high + marginMm, grain, width: widthPx, height: Math.ceil((high - low + 2 * marginMm) / grain) };
}

/**
 * The cast from above as a shaded relief, a byte of light a pixel and a byte of cover, in rows from the top: the highest point
 * over each pixel, lit from the upper left. For a small picture alone; nothing is measured on it.
 */
export function relief(positions: Float32Array, corners: Uint32Array, plan: Plan, { left, top, grain, width, height }: ReliefWindow): Uint8ClampedArray<ArrayBuffer> {
  const high = new Float32Array(width * height).fill(-Infinity);
  const flat = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const p = scan(positions[i]!, positions[i + 1]!, positions[i + 2]!);
    const [x, y] = plan.at(p);
    flat[i] = (x - left) / grain;
    flat[i + 1] = (top - y) / grain;
    flat[i + 2] = plan.height(p);
  }
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [3 * corners[t]!, 3 * corners[t + 1]!, 3 * corners[t + 2]!];
    const [ax, ay, bx, by, cx, cy] = [flat[a]!, flat[a + 1]!, flat[b]!, flat[b + 1]!, flat[c]!, flat[c + 1]!];
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (Math.abs(area) < 1e-9) continue;
    const x1 = Math.min(width - 1, Math.floor(Math.max(ax, bx, cx)));
    const y1 = Math.min(height - 1, Math.floor(Math.max(ay, by, cy)));
    for (let y = Math.max(0, Math.ceil(Math.min(ay, by, cy))); y <= y1; y++) {
      for (let x = Math.max(0, Math.ceil(Math.min(ax, bx, cx))); x <= x1; x++) {
        const u = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / area;
        const v = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / area;
        if (u < 0 || v < 0 || u + v > 1) continue;
        const h = flat[a + 2]! + u * (flat[b + 2]! - flat[a + 2]!) + v * (flat[c + 2]! - flat[a + 2]!);
        if (h > high[y * width + x]!) high[y * width + x] = h;
      }
    }
  }
  const out = new Uint8ClampedArray(4 * width * height);
  const at = (x: number, y: number, otherwise: number): number => {
    const h = high[Math.max(0, Math.min(height - 1, y)) * width + Math.max(0, Math.min(width - 1, x))]!;
    return h === -Infinity ? otherwise : h;
  };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const h = high[y * width + x]!;
      if (h === -Infinity) continue;
      const sx = (at(x + 1, y, h) - at(x - 1, y, h)) / (2 * grain);
      const sy = (at(x, y + 1, h) - at(x, y - 1, h)) / (2 * grain);
      const light = (0.45 * sx + 0.6 * sy + 0.9) / (1.17 * Math.hypot(sx, sy, 1));
      const value = 70 + 178 * Math.max(0, light);
      const i = 4 * (y * width + x);
      out[i] = value;
      out[i + 1] = value * 0.965;
      out[i + 2] = value * 0.9;
      out[i + 3] = 255;
    }
  }
  return out;
}
