import { EMPTY_CHART } from "../values/chart";
import { REFERENCE, sameTilt, type Tilt } from "../values/tilt";
import type { ClaspChoice } from "./ledger";
import type { Order } from "../wire/cases";
import type { AnswersSaid } from "../wire/abutments";
import { NOTHING_CHOSEN, type PlanChoices } from "./plan-choices";
import type { Mm } from "../values/units";
import type { Tripod } from "../wire/tripod";
import type { FrameChoice, Reading, Spot, TeethSaid } from "../wire/types";

/** A place that a person marked on the cast. It keeps its place on the surface when the tilt changes. */
export interface Mark extends Spot {
  readonly id: string;
  readonly name: string;
  /** The gauge it was left with; null: placed freely, with no gauge in hand. */
  readonly gaugeMm: Mm | null;
}

/** True when the gauge that the mark was left with still fits there, as the server says it; true while nothing was read. */
export const fitsStill = (mark: Mark, reading: Reading | undefined): boolean =>
  mark.gaugeMm === null || !reading || (reading.fits !== null && Number(reading.fits) === mark.gaugeMm);

/** An orientation of the cast that a person keeps by name. */
export interface PathPin {
  readonly id: string;
  readonly name: string;
  readonly tilt: Tilt;
}

/** What was chosen of a plan. */
export interface PlanChosen {
  readonly plan: PlanChoices;
  /** By row of the ledger. */
  readonly clasps: Readonly<Record<string, ClaspChoice>>;
}

/** A plan that a person keeps by name, to hold another against it. */
export interface KeptPlan extends PlanChosen {
  readonly id: string;
  readonly name: string;
}

/** What a person decides on the bench, and can undo. Immutable. */
export interface Document {
  readonly tilt: Tilt;
  readonly marks: readonly Mark[];
  readonly pins: readonly PathPin[];
  readonly tripod: Tripod | null;
  readonly frame: FrameChoice;
  /** True once a person said that the tilt may pass the limit. */
  readonly pastLimit: boolean;
  readonly teeth: TeethSaid;
  /** What a person says of facts of abutments that a scan cannot show. */
  readonly answers: AnswersSaid;
  /** The clasp chosen for an abutment, by its row of the ledger. */
  readonly clasps: Readonly<Record<string, ClaspChoice>>;
  /** What a person changed of the plan. */
  readonly plan: PlanChoices;
  readonly keptPlans: readonly KeptPlan[];
  /** What the prescriber writes to the laboratory. */
  readonly order: Order;
}

export const NOTHING_SAID: TeethSaid = { missing: [], points: [], pins: [], chart: EMPTY_CHART };

export const emptyDocument = (frame: FrameChoice): Document => ({
  tilt: REFERENCE,
  marks: [],
  pins: [],
  tripod: null,
  frame,
  pastLimit: false,
  teeth: NOTHING_SAID,
  answers: {},
  clasps: {},
  plan: NOTHING_CHOSEN,
  keptPlans: [],
  order: {},
});

/**
 * Every edit of the document, in its JSON form: each holds what was and what is to be, so that it can be done, undone, stored
 * and sent. {@link apply} does it, `apply` of {@link inverse} undoes it.
 */
export type Command =
  | { readonly kind: "tilt"; readonly from: Tilt; readonly to: Tilt }
  | { readonly kind: "limit"; readonly from: boolean; readonly to: boolean }
  | { readonly kind: "frame"; readonly from: FrameChoice; readonly to: FrameChoice }
  | { readonly kind: "teeth"; readonly what: string; readonly from: TeethSaid; readonly to: TeethSaid }
  | { readonly kind: "pin"; readonly index: number; readonly from: PathPin | null; readonly to: PathPin | null }
  | { readonly kind: "tripod"; readonly what: string; readonly from: Tripod | null; readonly to: Tripod | null }
  | { readonly kind: "answers"; readonly what: string; readonly from: AnswersSaid; readonly to: AnswersSaid }
  | { readonly kind: "clasp"; readonly row: string; readonly from: ClaspChoice | null; readonly to: ClaspChoice | null }
  | { readonly kind: "plan"; readonly what: string; readonly from: PlanChoices; readonly to: PlanChoices }
  | { readonly kind: "kept-plan"; readonly index: number; readonly from: KeptPlan | null; readonly to: KeptPlan | null }
  | { readonly kind: "chosen"; readonly what: string; readonly from: PlanChosen; readonly to: PlanChosen }
  | { readonly kind: "order"; readonly what: string; readonly from: Order; readonly to: Order }
  | { readonly kind: "mark"; readonly index: number; readonly from: Mark | null; readonly to: Mark | null };

export function apply(document: Document, command: Command): Document {
  switch (command.kind) {
    case "tilt":
      return { ...document, tilt: command.to };
    case "limit":
      return { ...document, pastLimit: command.to };
    case "frame":
      return { ...document, frame: command.to };
    case "teeth":
      return { ...document, teeth: command.to };
    case "pin": {
      const without = document.pins.filter((pin) => pin.id !== command.from?.id);
      return { ...document, pins: command.to ? without.toSpliced(command.index, 0, command.to) : without };
    }
    case "tripod":
      return { ...document, tripod: command.to };
    case "answers":
      return { ...document, answers: command.to };
    case "clasp": {
      const others = Object.fromEntries(Object.entries(document.clasps).filter(([row]) => row !== command.row));
      return { ...document, clasps: command.to ? { ...others, [command.row]: command.to } : others };
    }
    case "order":
      return { ...document, order: command.to };
    case "plan":
      return { ...document, plan: command.to };
    case "chosen":
      return { ...document, plan: command.to.plan, clasps: command.to.clasps };
    case "kept-plan": {
      const without = document.keptPlans.filter((kept) => kept.id !== command.from?.id);
      return { ...document, keptPlans: command.to ? without.toSpliced(command.index, 0, command.to) : without };
    }
    case "mark": {
      const without = command.from ? document.marks.filter((mark) => mark.id !== command.from?.id) : document.marks;
      return { ...document, marks: command.to ? without.toSpliced(command.index, 0, command.to) : without };
    }
  }
}

export const inverse = (command: Command): Command =>
  ({ ...command, from: command.to, to: command.from }) as Command;

/** One command that does what two like ones did, or null when they are not alike. */
export function fused(first: Command, second: Command): Command | null {
  if (first.kind === "tilt" && second.kind === "tilt") return { ...first, to: second.to };
  if (first.kind === "mark" && second.kind === "mark" && first.from && second.from?.id === first.to?.id && second.to) {
    return { ...first, to: second.to };
  }
  // Pulls of one arm; choosing another clasp is a step of its own.
  if (first.kind === "clasp" && second.kind === "clasp" && first.row === second.row && reshapes(first) && reshapes(second)) {
    return { ...first, to: second.to };
  }
  return null;
}

/** Whether a command only shapes the arm of the clasp that was chosen. */
const reshapes = ({ from, to }: { readonly from: ClaspChoice | null; readonly to: ClaspChoice | null }): boolean => from !== null && from.family === to?.family;

/** True when a command changes nothing and need not be kept. */
export function idle(command: Command): boolean {
  return command.kind === "tilt" ? sameTilt(command.from, command.to) : JSON.stringify(command.from) === JSON.stringify(command.to);
}

/** What a command did, in a person's words, for the undo button. */
export function told(command: Command): string {
  switch (command.kind) {
    case "tilt":
      return "tilt";
    case "limit":
      return command.to ? "passing the tilt limit" : "keeping the tilt limit";
    case "frame":
      return "orientation";
    case "teeth":
    case "tripod":
    case "answers":
    case "plan":
    case "order":
    case "chosen":
      return command.what;
    case "kept-plan":
      return command.to === null ? `removed plan ${command.from?.name}` : `kept plan ${command.to.name}`;
    case "pin":
      return command.from === null ? `pin ${command.to?.name}` : command.to === null ? `removed pin ${command.from.name}` : `name of pin ${command.from.name}`;
    case "clasp":
      return reshapes(command) ? `arm of ${command.row}` : `clasp of ${command.row}`;
    case "mark":
      return command.from === null ? "new mark" : command.to === null ? "removed mark" : "moved mark";
  }
}
