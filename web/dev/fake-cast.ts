/**
 * A cast of spheres, for working on the bench without the Java server: teeth as spheres standing half out of a flat gum, on
 * an arch. Its undercut has a closed form: on a sphere of radius R below its equator, u = R − ρ.
 */
type V = [number, number, number];

interface Ball {
  readonly c: V;
  readonly r: number;
}

const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sub = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: V, k: number): V => [a[0] * k, a[1] * k, a[2] * k];
const add = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const unit = (a: V): V => times(a, 1 / Math.hypot(...a));
const cross = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

const CAP = 4;
const GUM = -2.2;

export class FakeCast {
  readonly balls: Ball[];
  readonly positions: number[] = [];
  readonly corners: number[] = [];
  readonly base: number[] = [];
  private readonly ballOf: number[] = [];

  constructor(readonly jaw: "upper" | "lower") {
    // Half an ellipse with its front at +y; some teeth are missing.
    this.balls = Array.from({ length: 14 }, (_, i) => {
      const t = (Math.PI * (i + 0.5)) / 14;
      const r = i > 3 && i < 10 ? 3.3 : 4.4;
      return { c: [-26 * Math.cos(t), 38 * Math.sin(t) - 12, 0] as V, r };
    }).filter((_, i) => (jaw === "lower" ? i > 2 && i !== 11 : i !== 3 && i !== 10));
    this.balls.forEach((ball, k) => this.addBall(ball, k));
    this.addGum();
  }

  survey(p: V, gauges: number[]): { depth: Float32Array; flags: Uint8Array; points: number[]; curves: object[]; deepest: object[] } {
    const n = this.positions.length / 3;
    const depth = new Float32Array(n);
    const flags = new Uint8Array(n);
    for (let i = 0; i < n; i++) {
      const k = this.ballOf[i]!;
      if (k < 0) continue;
      depth[i] = this.depthAt([this.positions[3 * i]!, this.positions[3 * i + 1]!, this.positions[3 * i + 2]!], k, p);
    }
    const points: number[] = [];
    const curves: object[] = [];
    const [e1, e2] = plane(p);
    for (const ball of this.balls) {
      for (const g of [0, ...gauges]) {
        const rho = ball.r - g;
        const down = Math.sqrt(Math.max(0, ball.r ** 2 - rho ** 2));
        const from = points.length / 3;
        for (let i = 0; i < 72; i++) {
          const a = (2 * Math.PI * i) / 72;
          const q = add(add(ball.c, times(p, -down)), add(times(e1, rho * Math.cos(a)), times(e2, rho * Math.sin(a))));
          points.push(...q);
        }
        curves.push({ kind: g === 0 ? "line" : "mark", gaugeMm: g || null, from, count: 72, closed: true, lengthMm: 2 * Math.PI * rho });
      }
    }
    return { depth, flags, points, curves, deepest: [] };
  }

  reading(x: V, triangle: number, p: V, reference: V): object {
    const k = this.ballOf[this.corners[3 * triangle]!]!;
    const u = k < 0 ? 0 : this.depthAt(x, k, p);
    const ball = this.balls[Math.max(0, k)]!;
    const flat = k < 0 ? ([0, 0, 0] as V) : sub(sub(x, ball.c), times(p, dot(sub(x, ball.c), p)));
    const out = Math.hypot(...flat) > 1e-9 ? unit(flat) : plane(p)[0];
    const free = add(x, times(out, u));
    const h = k < 0 ? 0 : dot(sub(x, ball.c), p);
    const fits = [0.25, 0.5, 0.75].find((g) => Math.abs(u - g) <= 0.03) ?? null;
    const below = h < 0 && k >= 0 ? -h : null;
    return {
      point: x,
      depthMm: Math.min(CAP, u),
      uncertaintyMm: 0.03,
      capped: u > CAP,
      unsure: false,
      noGaugeReaches: false,
      free,
      contact: u > 0 ? add(free, times(p, -h)) : null,
      fits: fits === null ? null : fits.toFixed(2),
      fitsText: fits === null ? (u < 0.05 ? "no undercut" : u > 0.75 ? "more than 0.75" : u < 0.25 ? "less than 0.25" : u < 0.5 ? "between 0.25 and 0.50" : "between 0.50 and 0.75") : `${fits.toFixed(2)} mm · ${((fits / 0.25) * 0.01).toFixed(3)} in fits`,
      belowSurveyLineMm: below,
      convergenceDeg: below === null ? null : (Math.asin(Math.min(1, below / ball.r)) * 180) / Math.PI,
      depthAtReferenceMm: k < 0 ? 0 : this.depthAt(x, k, reference),
      tooCloseToCall: [0.25, 0.5, 0.75].some((g) => Math.abs(Math.abs(u - g) - 0.03) < 0.005),
    };
  }

  profile(x: V, triangle: number, p: V, gauge: number | null): object {
    const k = this.ballOf[this.corners[3 * triangle]!]!;
    const ball = this.balls[Math.max(0, k)]!;
    const rel = sub(x, ball.c);
    const flat = sub(rel, times(p, dot(rel, p)));
    const d = Math.hypot(...flat) > 1e-9 ? unit(flat) : plane(p)[0];
    const u = k < 0 ? 0 : this.depthAt(x, k, p);
    const line: [number, number][] = [[-ball.r - 6, GUM]];
    for (let a = -Math.asin(-GUM / ball.r) * -1; a <= Math.PI + Math.asin(-GUM / ball.r); a += 0.03) line.push([-ball.r * Math.cos(a + 0), ball.r * Math.sin(a)]);
    line.push([ball.r + 6, GUM]);
    const s = dot(rel, d);
    const h = dot(rel, p);
    return {
      direction: d,
      origin: ball.c,
      polylines: [line.filter(([, hh]) => hh >= GUM - 0.01)],
      rod: { s: s + u, top: 10, contact: u > 0 ? [ball.r, 0] : null },
      place: [s, h],
      surveyLine: u > 0 ? [ball.r, 0] : null,
      depthMm: u,
      depthInSectionMm: u,
      gauge: gauge === null || Math.abs(u - gauge) > 0.03 ? null : { mm: gauge, point: [s, h] },
      belowSurveyLineMm: h < 0 ? -h : null,
      convergenceDeg: h < 0 ? (Math.asin(-h / ball.r) * 180) / Math.PI : null,
    };
  }

  seat(x: V, triangle: number, p: V, gauge: number): object {
    const k = this.ballOf[this.corners[3 * triangle]!]!;
    if (k < 0) return { place: null, why: "no tooth here" };
    const ball = this.balls[k]!;
    const rel = sub(x, ball.c);
    const out = unit(sub(rel, times(p, dot(rel, p))));
    const rho = ball.r - gauge;
    const down = Math.sqrt(ball.r ** 2 - rho ** 2);
    const point = add(ball.c, add(times(out, rho), times(p, -down)));
    return {
      place: { point, triangle, depthMm: gauge, gaugeMm: gauge, belowSurveyLineMm: down, convergenceDeg: 20, depthAtReferenceMm: gauge, flags: 0 },
      why: null,
    };
  }

  private depthAt(x: V, k: number, p: V): number {
    const { c, r } = this.balls[k]!;
    const rel = sub(x, c);
    const h = dot(rel, p);
    return h >= 0 ? 0 : r - Math.hypot(...sub(rel, times(p, h)));
  }

  private addBall({ c, r }: Ball, k: number): void {
    const first = this.positions.length / 3;
    const rows = 90;
    const around = 120;
    const low = Math.asin(GUM / r) - 0.05;
    for (let i = 0; i <= rows; i++) {
      const lat = low + ((Math.PI / 2 - low) * i) / rows;
      for (let j = 0; j < around; j++) {
        const lon = (2 * Math.PI * j) / around;
        this.positions.push(c[0] + r * Math.cos(lat) * Math.cos(lon), c[1] + r * Math.cos(lat) * Math.sin(lon), c[2] + r * Math.sin(lat));
        this.ballOf.push(k);
        if (i === rows) continue;
        const a = first + i * around + j;
        const b = first + i * around + ((j + 1) % around);
        this.corners.push(a, b, b + around, a, b + around, a + around);
        this.base.push(0, 0);
      }
    }
  }

  private addGum(): void {
    const first = this.positions.length / 3;
    const n = 90;
    for (let i = 0; i <= n; i++) {
      const t = -0.1 + ((Math.PI + 0.2) * i) / n;
      for (const [k, z] of [[0.62, GUM - 6], [0.7, GUM], [1.24, GUM], [1.3, GUM - 6]] as const) {
        this.positions.push(-26 * k * Math.cos(t), 38 * k * Math.sin(t) - 12, z);
        this.ballOf.push(-1);
      }
      if (i === n) continue;
      for (let s = 0; s < 3; s++) {
        const a = first + 4 * i + s;
        this.corners.push(a, a + 4, a + 5, a, a + 5, a + 1);
        this.base.push(s === 1 ? 0 : 1, s === 1 ? 0 : 1);
      }
    }
  }
}

function plane(p: V): [V, V] {
  const e1 = unit(cross(Math.abs(p[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], p));
  return [e1, cross(p, e1)];
}
