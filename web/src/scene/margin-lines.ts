import { Group } from "three";
import type { Look } from "../values/look";
import type { ScanVec } from "../values/vec";
import { SoftLines, type Stroke } from "./soft-lines";

/** A closed curve round a tooth. */
export interface Margin {
  readonly points: readonly ScanVec[];
  readonly chosen: boolean;
}

/** Gingival margins on the cast: fine ink, the chosen tooth's in brass with a pale casing. */
export class MarginLines {
  readonly group = new Group();
  private drawn: SoftLines[] = [];

  constructor() {
    this.group.matrixAutoUpdate = false;
  }

  set(margins: readonly Margin[], look: Look): void {
    this.clear();
    this.draw(margins.filter(({ chosen }) => !chosen), [{ colour: look.lead, opacity: 0.75, corePx: 0.35, edgePx: 1.3 }], 5);
    this.draw(
      margins.filter(({ chosen }) => chosen),
      [
        { colour: look.casing, opacity: 0.92, corePx: 2.2, edgePx: 3.2 },
        { colour: look.brass, opacity: 1, corePx: 1, edgePx: 1.9 },
      ],
      6,
    );
  }

  setScreen(width: number, height: number): void {
    for (const line of this.drawn) line.setScreen(width, height);
  }

  dispose(): void {
    this.clear();
  }

  private draw(margins: readonly Margin[], strokes: readonly Stroke[], order: number): void {
    const ends: number[] = [];
    for (const { points } of margins) points.forEach((point, i) => ends.push(...point, ...points[(i + 1) % points.length]!));
    if (ends.length === 0) return;
    strokes.forEach((stroke, k) => {
      const line = new SoftLines(new Float32Array(ends), stroke);
      line.renderOrder = 10 * order + k;
      this.group.add(line);
      this.drawn.push(line);
    });
  }

  private clear(): void {
    for (const line of this.drawn) line.dispose();
    this.drawn = [];
    this.group.clear();
  }
}
