import { Group } from "three";
import type { Look } from "../values/look";
import type { ScanVec } from "../values/vec";
import type { PlanFigure, PlanLook } from "./plan-figure";
import { SoftLines } from "./soft-lines";

/** Half widths of each line and of its hatching [CSS px]; parts of metal are thicker than outlines. */
const CORE: Readonly<Record<PlanLook, number>> = {
  base: 0.7,
  mesh: 0.4,
  connector: 1.1,
  finish: 1.5,
  minor: 1.7,
  plate: 2.2,
  rest: 0.7,
  retentive: 1.6,
  reciprocal: 1.6,
  stop: 0.8,
  torus: 0.9,
  fulcrum: 0.7,
  replaced: 0.6,
  cut: 1.3,
};
const SOFT_PX = 0.9;
const CASED: readonly PlanLook[] = ["retentive", "reciprocal", "minor", "plate", "finish"];

/** The parts of a plan on the cast, in ink; the part that is spoken of in brass. */
export class PlanLines {
  readonly group = new Group();
  private drawn: SoftLines[] = [];

  constructor() {
    this.group.matrixAutoUpdate = false;
  }

  /**
   * @param chosen name of the part that is spoken of
   * @param knots places of the border that can be taken hold of
   */
  set(figures: readonly PlanFigure[], chosen: string | null, knots: readonly ScanVec[], dragged: readonly ScanVec[], look: Look): void {
    this.clear();
    figures.forEach((figure, i) => {
      const core = CORE[figure.look];
      const colour = figure.part === chosen ? look.brass : look.lead;
      const order = 200 + 10 * i;
      this.lines(figure.hatch, colour, figure.look === "rest" ? 0.9 : 0.55, 0.25, order);
      this.lines(figure.dots, colour, 0.8, figure.look === "retentive" ? 4.2 : 0.7, order + 4);
      if (figure.look === "retentive") this.lines(figure.dots, look.casing, 1, 2, order + 5);
      if (CASED.includes(figure.look) || figure.part === chosen) this.lines(figure.line, look.casing, 0.85, core + 1.1, order + 1);
      this.lines(figure.line, colour, 0.95, core, order + 2);
    });
    const dots = knots.flatMap((point) => [...point, ...point]);
    const top = 200 + 10 * figures.length;
    this.lines(dots, look.lead, 0.9, 3, top);
    this.lines(dots, look.casing, 1, 1.9, top + 1);
    this.lines(dragged.length > 1 ? [...dragged[0]!, ...dragged[1]!] : [], look.brass, 1, 1.6, top + 2);
  }

  setScreen(width: number, height: number): void {
    for (const line of this.drawn) line.setScreen(width, height);
  }

  dispose(): void {
    this.clear();
  }

  private lines(ends: readonly number[], colour: string, opacity: number, corePx: number, order: number): void {
    if (ends.length === 0) return;
    const line = new SoftLines(new Float32Array(ends), { colour, opacity, corePx, edgePx: corePx + SOFT_PX });
    line.renderOrder = order;
    this.group.add(line);
    this.drawn.push(line);
  }

  private clear(): void {
    for (const line of this.drawn) line.dispose();
    this.drawn = [];
    this.group.clear();
  }
}
