import { REFERENCE, rounded, type Tilt, totalTilt, within } from "../values/tilt";
import { degrees, type Mm, type UnitChoice } from "../values/units";
import type { Api } from "../wire/api";
import type { FrameChoice, Spot } from "../wire/types";
import { type BenchState, EMPTY_BENCH, type LookChoice } from "./bench-state";
import { apply, type Command, type Mark } from "./document";
import { recorded, redone, undone } from "./history";
import type { Keep } from "./keep";
import { Opening } from "./opening";
import { Store } from "./store";
import { Surveying } from "./surveying";

/** No cast is set steeper than this, whatever a person says [degrees]. */
export const STEEPEST = degrees(45);

let gestures = 0;
/** A number for one movement of the hand: its edits become one undo step. */
export const newGesture = (): number => ++gestures;

/** The bench without a screen: what a person can do, and what is kept of it. */
export class Bench {
  readonly store: Store<BenchState>;
  readonly opening: Opening;
  private readonly surveying: Surveying;

  constructor(
    api: Api,
    private readonly keep: Keep,
    private readonly clock: () => number = () => performance.now(),
  ) {
    this.store = new Store<BenchState>({ ...EMPTY_BENCH, ...keep.habits() });
    this.surveying = new Surveying(this.store, api);
    this.opening = new Opening(this.store, api, keep, this.surveying);
  }

  // The document: every edit is a command.

  edit(command: Command, gesture: number | null = null): void {
    this.done(command);
    this.store.set({ history: recorded(this.store.get().history, command, this.clock(), gesture) });
    this.keep.keepDocument(this.store.get());
  }

  undo(): void {
    this.step(undone);
  }

  redo(): void {
    this.step(redone);
  }

  /** Sets the tilt, no steeper than the limit unless a person has lifted it; says so when it had to stop. */
  setTilt(wanted: Tilt, gesture: number | null = null): void {
    const { cast, document } = this.store.get();
    if (!cast?.frame || !document) return;
    const sided: Tilt = cast.jaw ? wanted : { ...wanted, right: degrees(0) };
    const limit = document.pastLimit ? STEEPEST : cast.limitTiltDeg;
    const to = rounded(within(sided, limit));
    const stopped = totalTilt(sided) > limit + 0.01;
    this.store.set({
      note: stopped
        ? `Stopped at ${limit}° of total tilt${document.pastLimit ? "." : ": steeper paths are refused unless you allow them beside the tilt map."}`
        : null,
    });
    if (to.anterior === document.tilt.anterior && to.right === document.tilt.right) return;
    this.edit({ kind: "tilt", from: document.tilt, to }, gesture);
  }

  nudge(anterior: number, right: number): void {
    const { document } = this.store.get();
    if (!document) return;
    this.setTilt({ anterior: degrees(document.tilt.anterior + anterior), right: degrees(document.tilt.right + right) });
  }

  toReference(): void {
    this.setTilt(REFERENCE);
  }

  allowPastLimit(to: boolean): void {
    const { document, cast } = this.store.get();
    if (!document || !cast) return;
    if (!to && totalTilt(document.tilt) > cast.limitTiltDeg) {
      this.edit({ kind: "tilt", from: document.tilt, to: rounded(within(document.tilt, cast.limitTiltDeg)) });
    }
    this.edit({ kind: "limit", from: document.pastLimit, to });
  }

  setFrame(to: FrameChoice): void {
    const { document } = this.store.get();
    if (!document) return;
    this.edit({ kind: "frame", from: document.frame, to });
    this.store.set({ asking: null });
  }

  // Marks.

  leaveMark(spot: Spot, gaugeMm: Mm | null): void {
    const { document } = this.store.get();
    if (!document) return;
    const used = new Set(document.marks.map((mark) => mark.name));
    let n = 1;
    while (used.has(String(n))) n++;
    const mark: Mark = { id: crypto.randomUUID(), name: String(n), gaugeMm, point: spot.point, triangle: spot.triangle };
    this.edit({ kind: "mark", index: document.marks.length, from: null, to: mark });
    this.store.set({ selected: mark.id });
  }

  moveMark(id: string, spot: Spot, gesture: number | null = null): void {
    const { document } = this.store.get();
    const index = document?.marks.findIndex((mark) => mark.id === id) ?? -1;
    const from = document?.marks[index];
    if (!from) return;
    this.edit({ kind: "mark", index, from, to: { ...from, point: spot.point, triangle: spot.triangle } }, gesture);
  }

  removeMark(id: string): void {
    const { document, selected } = this.store.get();
    const index = document?.marks.findIndex((mark) => mark.id === id) ?? -1;
    const from = document?.marks[index];
    if (!from) return;
    this.edit({ kind: "mark", index, from, to: null });
    if (selected === id) this.store.set({ selected: null });
  }

  /** Moves a mark back onto its gauge's curve, where that passes below its place; else says how deep it is there. */
  async seatMark(id: string): Promise<void> {
    const mark = this.store.get().document?.marks.find((each) => each.id === id);
    if (!mark) return;
    const seat = await this.surveying.seat(mark);
    if (!seat) return;
    if (seat.place) {
      this.moveMark(id, seat.place);
      if (this.store.get().selected === id) this.carry(seat.place, true);
    } else this.store.set({ note: `Mark ${mark.name} stays: ${seat.why}.` });
  }

  select(id: string | null): void {
    this.store.set({ selected: id });
    const mark = this.store.get().document?.marks.find((each) => each.id === id);
    if (!mark) return;
    this.store.set({ gauge: mark.gaugeMm });
    this.carry(mark, mark.gaugeMm !== null);
  }

  // The rod and the habits.

  carry(spot: Spot, onCurve: boolean): void {
    this.surveying.carry({ point: spot.point, triangle: spot.triangle, onCurve });
  }

  liftRod(): void {
    this.store.set({ carried: null, profile: null, selected: null });
  }

  chooseGauge(gauge: Mm | null): void {
    this.store.set({ gauge });
    this.keep.keepHabits(this.store.get());
    this.surveying.readRod();
  }

  chooseUnits(units: UnitChoice): void {
    this.store.set({ units });
    this.keep.keepHabits(this.store.get());
  }

  chooseLook(look: LookChoice): void {
    this.store.set({ look });
    this.keep.keepHabits(this.store.get());
  }

  private step(way: typeof undone): void {
    const found = way(this.store.get().history);
    if (!found) return;
    this.done(found.command);
    this.store.set({ history: found.history, note: null });
    this.keep.keepDocument(this.store.get());
  }

  private done(command: Command): void {
    const { document } = this.store.get();
    if (!document) return;
    this.store.set({ document: apply(document, command) });
    if (command.kind === "tilt") this.surveying.follow();
    if (command.kind === "frame") void this.opening.reframe(command.to);
    if (command.kind === "mark") {
      const readings = new Map(this.store.get().markReadings);
      if (!command.to) readings.delete(command.from?.id ?? "");
      this.store.set({ markReadings: readings });
      if (command.to) this.surveying.readMark(command.to);
    }
  }
}
