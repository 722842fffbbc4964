import { Group } from "three";
import { LineMaterial } from "three/addons/lines/LineMaterial.js";
import { LineSegments2 } from "three/addons/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/addons/lines/LineSegmentsGeometry.js";
import type { Look } from "../values/look";
import { curvePoints, type SurveyFrame } from "../wire/survey-frame";
import type { Curve } from "../wire/types";

/** How far the lines are lifted off the surface towards the viewer [mm], so that the surface they lie on does not hide them. */
export const LIFT_MM = 0.12;

interface Stroke {
  readonly ink: "lead" | "brass" | "brassShade" | "casing";
  readonly widthPx: number;
  readonly opacity: number;
}

// A lead leaves a soft edge: a wide pale stroke under a narrow dark one.
const LEAD: readonly Stroke[] = [
  { ink: "lead", widthPx: 4.6, opacity: 0.22 },
  { ink: "lead", widthPx: 2.4, opacity: 0.92 },
];
const GAUGE: readonly Stroke[] = [{ ink: "brassShade", widthPx: 1.2, opacity: 0.75 }];
// The chosen gauge's curve must stand out from the bands on both its sides: brass in a pale casing.
const CHOSEN: readonly Stroke[] = [
  { ink: "casing", widthPx: 5.4, opacity: 0.9 },
  { ink: "brass", widthPx: 2.8, opacity: 1 },
];

/** Survey lines and gauge curves, drawn on the cast as a lead would. */
export class LeadLines {
  readonly group = new Group();
  private survey: SurveyFrame | null = null;
  private gauge: number | null = null;
  private look: Look | null = null;
  private drawn: LineSegments2[] = [];
  private order = 0;

  constructor() {
    this.group.matrixAutoUpdate = false;
  }

  set(survey: SurveyFrame | null, gauge: number | null, look: Look): void {
    if (survey === this.survey && gauge === this.gauge && look === this.look) return;
    this.survey = survey;
    this.gauge = gauge;
    this.look = look;
    this.clear();
    this.order = 1;
    if (!survey) return;
    const { curves } = survey.head;
    this.draw(survey, curves.filter((c) => c.kind === "mark" && c.gaugeMm !== gauge), GAUGE, look);
    this.draw(survey, curves.filter((c) => c.kind !== "mark"), LEAD, look);
    this.draw(survey, curves.filter((c) => c.kind === "mark" && c.gaugeMm === gauge), CHOSEN, look);
  }

  dispose(): void {
    this.clear();
  }

  private draw(survey: SurveyFrame, curves: readonly Curve[], strokes: readonly Stroke[], look: Look): void {
    const ends = segments(survey, curves);
    if (ends.length === 0) return;
    this.order++;
    const geometry = new LineSegmentsGeometry();
    geometry.setPositions(ends);
    strokes.forEach(({ ink, widthPx, opacity }, order) => {
      const material = new LineMaterial({ color: look[ink], linewidth: widthPx, transparent: true, opacity, depthWrite: false });
      const line = new LineSegments2(geometry, material);
      line.frustumCulled = false;
      line.renderOrder = 10 * this.order + order;
      this.group.add(line);
      this.drawn.push(line);
    });
  }

  private clear(): void {
    for (const line of this.drawn) {
      line.geometry.dispose();
      line.material.dispose();
    }
    this.drawn = [];
    this.group.clear();
  }
}

/** Both ends of every piece of the curves, six numbers a piece. */
export function segments(survey: SurveyFrame, curves: readonly Curve[]): Float32Array {
  const pieces = (c: Curve): number => Math.max(0, c.closed && c.count > 2 ? c.count : c.count - 1);
  const ends = new Float32Array(6 * curves.reduce((sum, c) => sum + pieces(c), 0));
  let at = 0;
  for (const curve of curves) {
    const points = curvePoints(survey, curve);
    for (let i = 0; i < pieces(curve); i++) {
      const j = (i + 1) % curve.count;
      ends.set(points.subarray(3 * i, 3 * i + 3), at);
      ends.set(points.subarray(3 * j, 3 * j + 3), at + 3);
      at += 6;
    }
  }
  return ends;
}
