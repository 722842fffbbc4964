import { REFERENCE, rounded, sameTilt, type Tilt, totalTilt, within } from "../values/tilt";
import { pulled } from "../values/arm-shape";
import { degrees, type Mm, type UnitChoice } from "../values/units";
import type { Api, HelpPage } from "../wire/api";
import type { CaseCard, OrderField, Paper } from "../wire/cases";
import { type Notation, toothText } from "../values/tooth-number";
import { choiceAt, type ClaspChoice, toothOf, withChoice } from "./ledger";
import { length, type ScanVec, sub } from "../values/vec";
import type { Fdi, FrameChoice, PlaneOffer, Spot, TeethSaid, ToothPoint, Zone } from "../wire/types";
import { type Beside, type BenchState, EMPTY_BENCH, type LookChoice, type Page } from "./bench-state";
import { apply, type Command, type Mark, type PathPin } from "./document";
import { newsCommands, newsWords } from "./case-news";
import { Charting } from "./charting";
import { Comparing } from "./comparing";
import { Judging } from "./judging";
import { Keeping } from "./keeping";
import { choicesSaid } from "./plan-choices";
import { Planning } from "./planning";
import type { PlanChoices } from "./plan-choices";
import { recorded, redone, undone } from "./history";
import { type Keep, NO_KEEP } from "./keep";
import { LEAST_PULL_MM, pulled as marginPulled } from "./margin-pull";
import { Opening } from "./opening";
import { PathKeeping } from "./path-keeping";
import { Opposing } from "./opposing";
import { problemOf } from "./problem-of";
import { Searching } from "./searching";
import { Store } from "./store";
import { Surveying } from "./surveying";
import { Teething } from "./teething";

/** No cast is set steeper than this, whatever a person says [degrees]. */
export const STEEPEST = degrees(45);

let gestures = 0;
/** A number for one movement of the hand: its edits become one undo step. */
export const newGesture = (): number => ++gestures;

/** The bench without a screen: what a person can do, and what is kept of it. */
export class Bench {
  readonly store: Store<BenchState>;
  readonly opening: Opening;
  readonly charting: Charting;
  readonly paths: PathKeeping;
  readonly opposing: Opposing;
  private readonly judging: Judging;
  readonly planning: Planning;
  readonly searching: Searching;
  readonly comparing: Comparing;
  readonly keeping: Keeping;
  private readonly surveying: Surveying;
  private readonly teething: Teething;

  constructor(
    private readonly api: Api,
    private readonly keep: Keep,
    private readonly clock: () => number = () => performance.now(),
  ) {
    this.store = new Store<BenchState>({ ...EMPTY_BENCH, ...keep.habits() });
    this.charting = new Charting(this.store, (what, to) => this.say(what, to));
    this.surveying = new Surveying(this.store, api);
    this.teething = new Teething(this.store, api, () => this.surveying.readTeeth());
    this.judging = new Judging(this.store, api);
    this.paths = new PathKeeping(
      this.store,
      api,
      (command) => this.edit(command),
      (to) => this.jumpTo(to),
      () => this.keep.keepHabits(this.store.get()),
    );
    this.store.subscribe(() => this.judging.follow());
    this.planning = new Planning(this.store, api);
    this.searching = new Searching(this.store, api);
    this.store.subscribe(() => this.planning.follow());
    this.comparing = new Comparing(this.store, api, (command) => this.edit(command));
    this.store.subscribe(() => this.comparing.follow());
    this.keeping = new Keeping(this.store, api, keep);
    this.store.subscribe(() => this.keeping.follow());
    this.opposing = new Opposing(this.store, api, this.keeping);
    this.store.subscribe(() => this.opposing.follow());
    this.opening = new Opening(this.store, api, keep, this.surveying, this.teething);
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

  /** A second bench with the cast at another tilt, or with its cuts, to be looked at beside this one; nothing is kept of it. */
  beside(at: Tilt, cut: Beside["cut"]): Bench {
    const other = new Bench(this.api, NO_KEEP, this.clock);
    const { document, gauge, look, ...here } = this.store.get();
    const { cast, mesh, thinned } = cut ? { ...cut, thinned: null } : here;
    other.store.set({ cast, mesh, thinned, gauge, look, document: document && { ...document, tilt: at } });
    if (cast) other.surveying.open(cast);
    return other;
  }

  /** Ends the line to the program. */
  leave(): void {
    this.surveying.close();
  }

  /** @returns null where the page could not be had; the reason is shown */
  async readHelp(page: HelpPage): Promise<Blob | null> {
    try {
      return await this.api.helpPage(page, this.store.get().cast?.id ?? null);
    } catch (error) {
      this.store.set({ problem: problemOf(error), helpOpen: false });
      return null;
    }
  }

  // Pins.

  /** Keeps the tilt of now under a letter of its own, unless it is kept already. */
  pinTilt(): void {
    const { document } = this.store.get();
    if (!document) return;
    const there = document.pins.find((pin) => sameTilt(pin.tilt, document.tilt));
    if (there) {
      this.store.set({ note: `This tilt is kept already: pin ${there.name}.` });
      return;
    }
    const pin: PathPin = { id: crypto.randomUUID(), name: nextName(document.pins), tilt: document.tilt };
    this.edit({ kind: "pin", index: document.pins.length, from: null, to: pin });
    this.paths.remember();
  }

  removePin(id: string): void {
    const pins = this.store.get().document?.pins ?? [];
    const index = pins.findIndex((pin) => pin.id === id);
    const from = pins[index];
    if (from) this.edit({ kind: "pin", index, from, to: null });
  }

  namePin(id: string, name: string): void {
    const pins = this.store.get().document?.pins ?? [];
    const index = pins.findIndex((pin) => pin.id === id);
    const from = pins[index];
    const wanted = name.trim().slice(0, 24);
    if (from && wanted && wanted !== from.name) this.edit({ kind: "pin", index, from, to: { ...from, name: wanted } });
  }

  nudge(anterior: number, right: number): void {
    const { document } = this.store.get();
    if (!document) return;
    this.setTilt({ anterior: degrees(document.tilt.anterior + anterior), right: degrees(document.tilt.right + right) });
  }

  /** Goes to a tilt that was found, kept or fixed: a step of its own to undo, however soon it follows another. */
  jumpTo(wanted: Tilt): void {
    this.setTilt(wanted, newGesture());
  }

  toReference(): void {
    this.jumpTo(REFERENCE);
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
    // The jaw answers neither of the two questions on the cast: they stay open.
    if (to.up !== document.frame.up || to.front !== document.frame.front) this.store.set({ asking: null });
  }

  /** Takes an occlusal plane as the reference orientation. Like every orientation it can be undone. */
  takePlane({ up, front, anteriorErrorDeg, rightErrorDeg }: PlaneOffer): void {
    const { document } = this.store.get();
    if (document) this.setFrame({ ...document.frame, up, front, upUncertaintyDeg: degrees(Math.max(anteriorErrorDeg, rightErrorDeg)) });
  }

  /** One more place for the occlusal plane; the third sets it. */
  async planePoint(point: ScanVec): Promise<void> {
    const points = [...this.store.get().planePoints, point];
    this.store.set({ planePoints: points });
    if (points.length < 3) return;
    this.store.set({ asking: null, planePoints: [] });
    const plane = await this.opposing.plane(points);
    if (plane) this.takePlane(plane);
  }

  showRoom(room: boolean): void {
    this.store.set({ shading: room ? "room" : "undercut" });
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

  // Teeth.

  /**
   * Marks a tooth as missing, or as there again. A tooth that was pointed at and bears the number of a missing one is the next
   * behind it: numbers count from the midline, so it and those behind it move one on.
   */
  toggleMissing(tooth: Fdi): void {
    const { document, notation } = this.store.get();
    if (!document) return;
    const { missing, points, pins } = document.teeth;
    const gone = missing.includes(tooth);
    this.say(`${toothText(tooth, notation)} ${gone ? "not missing" : "missing"}`, {
      ...document.teeth,
      missing: gone ? missing.filter((each) => each !== tooth) : [...missing, tooth].sort((a, b) => a - b),
      points: gone ? points : movedOn(points, tooth, missing),
      pins: pins.filter((each) => each.tooth !== tooth),
    });
  }

  /** Says that what was found there is no tooth: one that was pointed at is given up, any other number is missing. */
  notATooth(tooth: Fdi): void {
    const { document, notation } = this.store.get();
    if (!document) return;
    const { missing, points, pins } = document.teeth;
    const pointed = points.some((each) => each.tooth === tooth);
    this.say(`${toothText(tooth, notation)} is no tooth`, {
      ...document.teeth,
      missing: pointed ? missing : [...missing, tooth].sort((a, b) => a - b),
      points: points.filter((each) => each.tooth !== tooth),
      pins: pins.filter((each) => each.tooth !== tooth),
    });
  }

  /** Pulls the margin of a tooth from one place to another; it stays there, and the rest adapts. */
  pullMargin(tooth: Fdi, from: ScanVec, to: ScanVec): void {
    const { document, teeth, notation } = this.store.get();
    const found = teeth?.teeth.find((each) => each.tooth === tooth);
    if (!document || !found || length(sub(to, from)) < LEAST_PULL_MM) return;
    const { pins } = document.teeth;
    this.say(`margin of ${toothText(tooth, notation)}`, { ...document.teeth, pins: [...pins, ...marginPulled(tooth, found.on, from, to)] });
  }

  /** Asks for a tooth where none was found; {@link addTooth} adds it. */
  pointAt(spot: Spot, cuts: ToothPoint | null = null): void {
    void this.teething.point(spot, cuts);
  }

  addTooth(tooth: Fdi, { point }: Spot): void {
    const { document, notation, adding } = this.store.get();
    this.store.set({ adding: null });
    if (!document) return;
    if (adding?.cuts) {
      this.charting.cut(adding.cuts, { tooth, point });
      return;
    }
    const { missing, points } = document.teeth;
    this.say(`added tooth ${toothText(tooth, notation)}`, {
      ...document.teeth,
      missing: missing.filter((each) => each !== tooth),
      points: [...points.filter((each) => each.tooth !== tooth), { tooth, point }],
    });
    this.chooseTooth(tooth);
  }

  /** Gives a found tooth another number; one that has it already takes the old one. */
  renumber(from: Fdi, to: Fdi): void {
    const { document, teeth, notation } = this.store.get();
    const moved = teeth?.teeth.find((each) => each.tooth === from);
    if (!document || !moved || from === to) return;
    const other = teeth?.teeth.find((each) => each.tooth === to);
    const { missing, points } = document.teeth;
    const at = (tooth: Fdi, on: ScanVec): ScanVec => points.find((each) => each.tooth === tooth)?.point ?? on;
    this.say(`${toothText(from, notation)} is ${toothText(to, notation)}`, {
      ...document.teeth,
      pins: document.teeth.pins.filter((each) => each.tooth !== from && each.tooth !== to),
      missing: missing.filter((each) => each !== to),
      points: [
        ...points.filter((each) => each.tooth !== from && each.tooth !== to),
        { tooth: to, point: at(from, moved.on) },
        ...(other ? [{ tooth: from, point: at(to, other.on) }] : []),
      ],
    });
    this.chooseTooth(to);
  }

  chooseTooth(tooth: Fdi | null): void {
    this.store.set({ tooth, adding: null, toothHand: null, ...(tooth === this.store.get().tooth ? {} : { toothDepths: null }) });
    this.surveying.readTooth();
  }

  /** Leaves a mark of a gauge at a named place of a tooth, or says why there is none. */
  async markPlace(tooth: Fdi, zone: Zone, gaugeMm: Mm): Promise<void> {
    const seat = await this.surveying.placed(tooth, zone, gaugeMm);
    if (!seat) return;
    if (seat.place) {
      this.leaveMark(seat.place, gaugeMm);
      this.carry(seat.place, true);
    } else this.store.set({ note: `No ${gaugeMm.toFixed(2)} mm mark ${zone} on ${toothText(tooth, this.store.get().notation)}: ${seat.why}.` });
  }

  private say(what: string, to: TeethSaid): void {
    const { document } = this.store.get();
    if (document) this.edit({ kind: "teeth", what, from: document.teeth, to });
  }

  turnTo(page: Page): void {
    this.store.set({ page, adding: null, toothHand: null, pointed: null, part: null });
    this.keep.keepHabits(this.store.get());
  }

  chooseNotation(notation: Notation): void {
    this.store.set({ notation });
    this.keep.keepHabits(this.store.get());
  }

  // The ledger.

  /** Opens a row of the ledger, or shuts the one that lies open. */
  openRow(row: string | null): void {
    this.store.set({ row, family: null, pointed: null });
  }

  /** Lays the arms of a family of the open row on the cast. */
  lookAt(family: string): void {
    this.store.set({ family });
  }

  chooseClasp(row: string, to: ClaspChoice | null, gesture: number | null = null): void {
    const { document } = this.store.get();
    if (!document) return;
    const { plan, clasps } = document;
    if (clasps[toothOf(row)]) {
      // The command line chose by tooth: from now on the choice stands in its row.
      this.edit({ kind: "chosen", what: `clasp of ${toothOf(row)}`, from: { plan, clasps }, to: { plan, clasps: withChoice(clasps, row, to) } }, gesture);
    } else {
      this.edit({ kind: "clasp", row, from: clasps[row] ?? null, to }, gesture);
    }
  }

  private choiceOf(row: string): ClaspChoice | null {
    const { document, judged } = this.store.get();
    return choiceAt(document?.clasps ?? {}, judged?.sheet?.abutments ?? [], row);
  }

  /** Pulls a place of the chosen clasp's retentive arm elsewhere. */
  pullArm(row: string, at: number, to: ScanVec, gesture: number | null = null): void {
    const from = this.choiceOf(row);
    if (from) this.chooseClasp(row, { ...from, arm: pulled(from.arm ?? [], at, to) }, gesture);
  }

  /** Lays the chosen clasp's arm as it was laid out. */
  straightenArm(row: string): void {
    const from = this.choiceOf(row);
    if (from?.arm) this.chooseClasp(row, { ...from, arm: [] });
  }

  /** Answers a fact of one tooth that is not known; null takes the answer back. */
  answerFact(tooth: Fdi, fact: string, what: string, answer: string | null): void {
    const { document, notation } = this.store.get();
    if (!document) return;
    const said = document.answers[tooth];
    const of = Object.fromEntries(Object.entries(typeof said === "object" ? said : {}).filter(([key]) => key !== fact));
    const to = { ...document.answers, [tooth]: answer === null ? of : { ...of, [fact]: answer } };
    this.edit({ kind: "answers", what: `${what}, ${toothText(tooth, notation)}`, from: document.answers, to });
  }

  /** Answers a fact for all abutments at once; null takes the answer back. A tooth of its own answer keeps it. */
  answerForAll(fact: string, what: string, answer: string | null): void {
    const { document } = this.store.get();
    if (!document) return;
    const others = Object.fromEntries(Object.entries(document.answers).filter(([key]) => key !== fact));
    this.edit({ kind: "answers", what: `${what}, all abutments`, from: document.answers, to: answer === null ? others : { ...others, [fact]: answer } });
  }

  // The plan.

  changePlan(what: string, to: PlanChoices): void {
    const { document } = this.store.get();
    if (document) this.edit({ kind: "plan", what, from: document.plan, to });
  }

  // The prescription and the case.

  writeOrder(field: OrderField, what: string, text: string): void {
    const { document } = this.store.get();
    if (!document || (document.order[field] ?? "") === text) return;
    this.edit({ kind: "order", what, from: document.order, to: { ...document.order, [field]: text } });
  }

  /** Writes what the laboratory gets and gives it to the browser as a file. */
  async handOver(as: "pages" | "folder", paper: Paper): Promise<void> {
    await this.keeping.saveNow();
    const { cast, document, caseOf, notation } = this.store.get();
    if (!cast || !document) return;
    this.store.set({ writing: as });
    try {
      const { tilt, answers, order, plan, clasps } = document;
      const { file, revision } = await this.api.prescription(cast.id, as, { tilt, answers, order, paper, notation, choices: choicesSaid(plan, clasps), case: caseOf });
      if (revision !== null) this.keeping.moved(revision);
      const name = `${caseOf?.code ?? cast.name.replace(/\.[^.]*$/, "")}-prescription`;
      saveFile(file, as === "pages" ? `${name}.pdf` : `${name}.zip`);
    } catch (error) {
      this.store.set({ problem: problemOf(error) });
    }
    this.store.set({ writing: null });
  }

  async openCase(card: CaseCard): Promise<void> {
    await this.keeping.saveNow();
    const opened = await this.opening.openCase(card);
    const { document } = this.store.get();
    if (!opened || !document) return;
    this.keeping.opened();
    for (const command of newsCommands(document, opened.news)) this.edit(command, newGesture());
    if (opened.opposingProblem) this.store.set({ problem: opened.opposingProblem });
    const words = newsWords(opened.news);
    if (words) this.store.set({ note: `Taken over from the command line: ${words}.` });
  }

  /** The part of the plan that stands out on the cast. */
  speakOf(part: string | null): void {
    this.store.set({ part });
  }

  /** Moves a place of the connector's border; what lies beside it follows. */
  moveBorder(from: ScanVec, to: ScanVec): void {
    const { document } = this.store.get();
    if (!document || length(sub(to, from)) < LEAST_PULL_MM) return;
    this.changePlan("moved border", { ...document.plan, moves: [...document.plan.moves, { from, to }] });
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
    if (command.kind === "teeth") this.teething.follow();
    if (command.kind === "frame") void this.opening.reframe(command.to);
    if (command.kind === "mark") {
      const readings = new Map(this.store.get().markReadings);
      if (!command.to) readings.delete(command.from?.id ?? "");
      this.store.set({ markReadings: readings });
      if (command.to) this.surveying.readMark(command.to);
    }
  }
}

function saveFile(file: Blob, name: string): void {
  const link = window.document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

/** The first letter that no pin bears; after Z comes A2. */
export function nextName(pins: readonly PathPin[]): string {
  const taken = new Set(pins.map((pin) => pin.name));
  for (let n = 0; ; n++) {
    const name = String.fromCharCode(65 + (n % 26)) + (n < 26 ? "" : String(1 + Math.floor(n / 26)));
    if (!taken.has(name)) return name;
  }
}

/** The points with a number freed: the tooth there takes the next number behind that is not missing, and so on. */
export function movedOn(points: TeethSaid["points"], freed: Fdi, missing: readonly Fdi[]): TeethSaid["points"] {
  const moved = points.find(({ tooth }) => tooth === freed);
  if (!moved) return points;
  let next = freed + 1;
  while (next % 10 <= 8 && missing.includes(next)) next++;
  const others = points.filter((each) => each !== moved);
  if (next % 10 > 8) return others; // behind the third molar there is no number
  return [...movedOn(others, next, missing), { ...moved, tooth: next }];
}
