import type { Side } from "../values/view";
import type { Bench } from "./bench";
import type { ScanVec } from "../values/vec";
import { type BenchState, type Page, PAGES } from "./bench-state";
import { told } from "./document";

/** What only the screen can do; the stage gives it. */
export interface Hands {
  look(side: Side): void;
  fit(): void;
  /** Turns the stage to a place of the cast, and carries the rod to it. */
  show(place: ScanVec): void;
  alongRod(): void;
  /** Slides the rod along the chosen gauge's curve by so many steps of 0.1 mm. */
  slide(steps: number): void;
  nextCurve(): void;
  savePicture(): void;
  pickFile(): void;
}

export type Group = "cast" | "view" | "tilt" | "rod" | "edit";

/** One thing a person can do: this record feeds its button, its key and its line on the help sheet. */
export interface Action {
  readonly id: string;
  readonly group: Group;
  readonly label: string | ((state: BenchState) => string);
  /** Keys as KeyboardEvent.key, with Ctrl+, Alt+ and Shift+ before them; the first is shown. */
  readonly keys: readonly string[];
  readonly can: (state: BenchState) => boolean;
  readonly run: (bench: Bench, hands: Hands) => void;
}

const always = (): boolean => true;
const onCast = (state: BenchState): boolean => state.mesh !== null;
const framed = (state: BenchState): boolean => !!state.cast?.frame;
const sided = (state: BenchState): boolean => !!state.cast?.frame && state.cast.jaw !== null;
const onCurve = (state: BenchState): boolean => state.gauge !== null && state.survey !== null;

const view = (side: Side, label: string, key: string): Action => ({
  id: `view.${side}`,
  group: "view",
  label,
  keys: [key],
  can: onCast,
  run: (_, hands) => hands.look(side),
});

/** Up and down keys move the dot up and down the map, whichever way the front lies. */
const nudge = (id: string, label: string, key: string, up: number, left: number, step: number): Action => ({
  id: `tilt.${id}`,
  group: "tilt",
  label,
  keys: [key],
  can: up === 0 ? sided : framed,
  run: (bench) => {
    const frontUp = bench.store.get().cast?.jaw === "lower" ? -1 : 1;
    bench.nudge(up * frontUp * step, left * step);
  },
});

const after = (page: Page): Page => PAGES[(PAGES.indexOf(page) + 1) % PAGES.length]!;

const gauge = (index: number): Action => ({
  id: `rod.gauge${index}`,
  group: "rod",
  label: index === 0 ? "Plain rod" : `Gauge ${index} of the rack`,
  keys: [String(index)],
  can: onCast,
  run: (bench) => {
    const { cast } = bench.store.get();
    bench.chooseGauge(index === 0 ? null : (cast?.gaugesMm[index - 1] ?? null));
  },
});

/** The next click on the cast is about the chosen tooth; the same key again lets go. */
const toothHand = (hand: "join" | "cut", label: string, key: string): Action => ({
  id: `tooth.${hand}`,
  group: "edit",
  label,
  keys: [key],
  can: (s) => s.page === "arch" && s.teeth?.teeth.some(({ tooth }) => tooth === s.tooth) === true,
  run: (bench) => bench.store.set({ toothHand: bench.store.get().toothHand === hand ? null : hand, adding: null }),
});

export const ACTIONS: readonly Action[] = [
  { id: "cast.open", group: "cast", label: "Open a scan", keys: ["Ctrl+o"], can: always, run: (_, hands) => hands.pickFile() },
  { id: "cast.demo.lower", group: "cast", label: "Lower demo cast", keys: [], can: always, run: (bench) => void bench.opening.demo("lower") },
  { id: "cast.demo.upper", group: "cast", label: "Upper demo cast", keys: [], can: always, run: (bench) => void bench.opening.demo("upper") },
  {
    id: "page.turn",
    group: "cast",
    label: (s) => `Turn to the ${after(s.page)}`,
    keys: ["t"],
    can: onCast,
    run: (bench) => bench.turnTo(after(bench.store.get().page)),
  },
  {
    id: "tilt.pin",
    group: "tilt",
    label: "Pin this tilt",
    keys: ["p"],
    can: framed,
    run: (bench) => bench.pinTilt(),
  },
  { id: "cast.picture", group: "cast", label: "Save a picture", keys: ["Ctrl+s"], can: onCast, run: (_, hands) => hands.savePicture() },

  view("above", "From above, along the rod", "o"),
  view("front", "From the front", "f"),
  view("back", "From the back", "b"),
  view("right", "From the patient's right", "r"),
  view("left", "From the patient's left", "l"),
  { id: "view.rod", group: "view", label: "Look along the rod where it stands", keys: ["a"], can: (s) => s.carried !== null, run: (_, hands) => hands.alongRod() },
  {
    id: "view.room",
    group: "view",
    label: (s) => (s.shading === "room" ? "Show the undercut again" : "Show the room to the opposing teeth"),
    keys: ["v"],
    can: (s) => s.clearance !== null,
    run: (bench) => bench.showRoom(bench.store.get().shading !== "room"),
  },
  { id: "view.fit", group: "view", label: "Whole cast in sight", keys: ["w"], can: onCast, run: (_, hands) => hands.fit() },

  nudge("up", "Dot up by 0.5°", "ArrowUp", 1, 0, 0.5),
  nudge("down", "Dot down by 0.5°", "ArrowDown", -1, 0, 0.5),
  nudge("left", "Dot left by 0.5°", "ArrowLeft", 0, 1, 0.5),
  nudge("right", "Dot right by 0.5°", "ArrowRight", 0, -1, 0.5),
  nudge("up.fine", "Dot up by 0.1°", "Shift+ArrowUp", 1, 0, 0.1),
  nudge("down.fine", "Dot down by 0.1°", "Shift+ArrowDown", -1, 0, 0.1),
  nudge("left.fine", "Dot left by 0.1°", "Shift+ArrowLeft", 0, 1, 0.1),
  nudge("right.fine", "Dot right by 0.1°", "Shift+ArrowRight", 0, -1, 0.1),
  { id: "tilt.reference", group: "tilt", label: "Reference (0, 0)", keys: ["Home"], can: framed, run: (bench) => bench.toReference() },

  gauge(0),
  gauge(1),
  gauge(2),
  gauge(3),
  { id: "rod.curve", group: "rod", label: "Rod to the next curve of the gauge", keys: ["c"], can: onCurve, run: (_, hands) => hands.nextCurve() },
  { id: "rod.on", group: "rod", label: "Slide the rod on along the curve", keys: ["."], can: onCurve, run: (_, hands) => hands.slide(2) },
  { id: "rod.back", group: "rod", label: "Slide the rod back along the curve", keys: [","], can: onCurve, run: (_, hands) => hands.slide(-2) },
  {
    id: "rod.lift",
    group: "rod",
    label: "Lift the rod away",
    keys: ["Escape"],
    can: (s) => s.carried !== null || s.adding !== null || s.toothHand !== null,
    run: (bench) => {
      const { adding, toothHand } = bench.store.get();
      if (adding || toothHand) bench.store.set({ adding: null, toothHand: null });
      else bench.liftRod();
    },
  },

  {
    id: "mark.leave",
    group: "edit",
    label: "Leave a mark where the rod stands",
    keys: ["m"],
    can: (s) => s.carried !== null,
    run: (bench) => {
      const { carried, gauge: size } = bench.store.get();
      if (carried) bench.leaveMark(carried, carried.onCurve ? size : null);
    },
  },
  {
    id: "mark.seat",
    group: "edit",
    label: "Seat the selected mark on its gauge again",
    keys: ["s"],
    can: (s) => s.selected !== null,
    run: (bench) => void bench.seatMark(bench.store.get().selected ?? ""),
  },
  {
    id: "mark.next",
    group: "edit",
    label: "Select the next mark",
    keys: ["n"],
    can: (s) => (s.document?.marks.length ?? 0) > 0,
    run: (bench) => {
      const { document, selected } = bench.store.get();
      const marks = document?.marks ?? [];
      const at = marks.findIndex((mark) => mark.id === selected);
      bench.select(marks[(at + 1) % marks.length]?.id ?? null);
    },
  },
  {
    id: "mark.remove",
    group: "edit",
    label: "Remove the selected mark",
    keys: ["Delete"],
    can: (s) => s.selected !== null,
    run: (bench) => bench.removeMark(bench.store.get().selected ?? ""),
  },
  toothHand("join", "Join the chosen tooth with another", "j"),
  toothHand("cut", "Cut the chosen tooth in two", "x"),
  {
    id: "edit.undo",
    group: "edit",
    label: (s) => `Undo ${s.history.past.length > 0 ? told(s.history.past.at(-1)!.command) : ""}`.trim(),
    keys: ["Ctrl+z"],
    can: (s) => s.history.past.length > 0,
    run: (bench) => bench.undo(),
  },
  {
    id: "edit.redo",
    group: "edit",
    label: (s) => `Redo ${s.history.future.length > 0 ? told(s.history.future[0]!.command) : ""}`.trim(),
    keys: ["Ctrl+Shift+z", "Ctrl+y"],
    can: (s) => s.history.future.length > 0,
    run: (bench) => bench.redo(),
  },
  {
    id: "help",
    group: "cast",
    label: "Keys and hand movements",
    keys: ["?"],
    can: always,
    run: (bench) => bench.store.set({ helpOpen: !bench.store.get().helpOpen }),
  },
];

export function action(id: string): Action {
  const found = ACTIONS.find((each) => each.id === id);
  if (!found) throw new RangeError(`no action is called ${id}`);
  return found;
}

export const labelOf = ({ label }: Action, state: BenchState): string => (typeof label === "string" ? label : label(state));

/** The key of an event as actions write it; on a Mac the command key stands for Ctrl. */
export function keyName(event: { key: string; ctrlKey: boolean; metaKey: boolean; altKey: boolean; shiftKey: boolean }): string {
  const letter = event.key.length === 1;
  const parts = [
    ...(event.ctrlKey || event.metaKey ? ["Ctrl"] : []),
    ...(event.altKey ? ["Alt"] : []),
    // A shifted sign such as "?" is its own key; a shifted letter or named key is told by Shift.
    ...(event.shiftKey && (!letter || /[a-z]/i.test(event.key)) ? ["Shift"] : []),
    letter ? event.key.toLowerCase() : event.key,
  ];
  return parts.join("+");
}
