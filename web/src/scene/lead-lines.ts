import { Group } from "three";
import type { Look } from "../values/look";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Curve } from "../wire/types";
import { segments } from "./drawn-curve";
import { SoftLines, type Stroke as SoftStroke } from "./soft-lines";

/** How far the lines are lifted off the surface towards the viewer [mm], so that the surface they lie on does not hide them. */
export const LIFT_MM = 0.12;

type Ink = "lead" | "brass" | "brassShade" | "casing";
type Stroke = Omit<SoftStroke, "colour"> & { readonly ink: Ink };

// A lead leaves a soft edge.
const LEAD: readonly Stroke[] = [{ ink: "lead", opacity: 0.95, corePx: 0.7, edgePx: 2.3 }];
const GAUGE: readonly Stroke[] = [{ ink: "brassShade", opacity: 0.8, corePx: 0.3, edgePx: 1.2 }];
// The chosen gauge's curve must stand out from the bands on both its sides: brass in a pale casing.
const CHOSEN: readonly Stroke[] = [
  { ink: "casing", opacity: 0.92, corePx: 2.2, edgePx: 3.2 },
  { ink: "brass", opacity: 1, corePx: 1, edgePx: 1.9 },
];

/** Survey lines and gauge curves, drawn on the cast as a lead would. */
export class LeadLines {
  readonly group = new Group();
  private survey: SurveyFrame | null = null;
  private gauge: number | null = null;
  private look: Look | null = null;
  private drawn: SoftLines[] = [];
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

  /** Size of the picture [CSS px]; lines keep their width on the screen. */
  setScreen(width: number, height: number): void {
    for (const line of this.drawn) line.setScreen(width, height);
  }

  dispose(): void {
    this.clear();
  }

  private draw(survey: SurveyFrame, curves: readonly Curve[], strokes: readonly Stroke[], look: Look): void {
    const ends = segments(survey, curves);
    if (ends.length === 0) return;
    this.order++;
    strokes.forEach(({ ink, ...stroke }, order) => {
      const line = new SoftLines(ends, { ...stroke, colour: look[ink] });
      line.renderOrder = 10 * this.order + order;
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
