import { newGesture } from "../state/bench";
import { rowOf } from "../state/ledger";
import { orbit, pan, zoomAbout } from "../values/view";
import { scan } from "../values/vec";
import type { Spot, ToothPoint } from "../wire/types";
import type { StageDriver } from "./stage-driver";

/** The hand on the cast: carrying the rod, turning and shifting the table, leaving and dragging marks. */
export class PointerHand {
  private held: { readonly kind: "orbit" | "pan" | "mark" | "tripod" | "margin" | "border" | "arm"; readonly id: string; readonly at: number; readonly gesture: number; x: number; y: number; moved: boolean } | null = null;
  private readonly off = new AbortController();

  /**
   * @param looking true where the cast is only looked at: nothing is carried, left or moved
   */
  constructor(
    private readonly driver: StageDriver,
    private readonly looking = false,
  ) {
    const { canvas } = driver.stage;
    const on = <K extends keyof HTMLElementEventMap>(type: K, listener: (event: HTMLElementEventMap[K]) => void, passive = true): void =>
      canvas.addEventListener(type, listener, { signal: this.off.signal, passive });
    on("pointerdown", (event) => this.down(event));
    on("pointermove", (event) => this.move(event));
    on("pointerup", (event) => this.up(event));
    on("pointercancel", () => {
      this.held = null;
      driver.bench.store.set({ pulling: null, dragging: null, tripodDrag: null });
    });
    on("contextmenu", (event) => event.preventDefault(), false);
    on("wheel", (event) => this.wheel(event), false);
  }

  dispose(): void {
    this.off.abort();
  }

  private down(event: PointerEvent): void {
    const { offsetX: x, offsetY: y } = event;
    const { driver } = this;
    driver.stage.canvas.setPointerCapture(event.pointerId);
    const shifting = event.button !== 0 || event.shiftKey;
    const mark = shifting || this.looking ? null : driver.markAt(x, y);
    if (mark) driver.bench.select(mark);
    const grip = shifting || mark || this.looking ? null : driver.gripAt(x, y);
    const tripod = shifting || mark || grip || this.looking ? null : driver.tripodAt(x, y);
    const margin = shifting || mark || grip || tripod !== null || this.looking ? null : driver.marginAt(x, y);
    if (margin) driver.bench.store.set({ pulling: { from: margin, to: margin } });
    const border = shifting || mark || grip || tripod !== null || this.looking ? null : driver.borderAt(x, y);
    if (border) driver.bench.store.set({ dragging: { from: border, to: border } });
    const kind = shifting ? "pan" : mark ? "mark" : grip ? "arm" : tripod !== null ? "tripod" : margin ? "margin" : border ? "border" : "orbit";
    this.held = { kind, id: mark ?? grip?.row ?? String(tripod), at: grip?.at ?? 0, gesture: newGesture(), x, y, moved: false };
  }

  private move(event: PointerEvent): void {
    const { offsetX: x, offsetY: y } = event;
    const { driver, held } = this;
    if (!held) {
      if (!this.looking) this.carry(event);
      return;
    }
    const dx = x - held.x;
    const dy = y - held.y;
    if (!held.moved && Math.hypot(dx, dy) < 4) return;
    held.moved = true;
    held.x = x;
    held.y = y;
    if (held.kind === "orbit") driver.setView(orbit(driver.view, dx * 0.0075, dy * 0.0075));
    else if (held.kind === "pan") driver.setView(pan(driver.view, dx * driver.stage.mmPerPx, -dy * driver.stage.mmPerPx));
    else if (held.kind === "mark") this.slide(event, held.id, held.gesture);
    else if (held.kind === "border") this.drag(x, y);
    else if (held.kind === "tripod") this.dragTripod(Number(held.id), x, y);
    else if (held.kind === "arm") this.pullArm(x, y, held);
    else this.pull(x, y);
  }

  private drag(x: number, y: number): void {
    const { bench, stage } = this.driver;
    const { dragging } = bench.store.get();
    const spot = stage.pick(x, y);
    if (dragging && spot) bench.store.set({ dragging: { from: dragging.from, to: spot.point } });
  }

  private pullArm(x: number, y: number, { id, at, gesture }: { readonly id: string; readonly at: number; readonly gesture: number }): void {
    const spot = this.driver.stage.pick(x, y);
    if (spot) this.driver.bench.pullArm(id, at, spot.point, gesture);
  }

  private pull(x: number, y: number): void {
    const { bench, stage } = this.driver;
    const { pulling } = bench.store.get();
    const spot = stage.pick(x, y);
    if (pulling && spot) bench.store.set({ pulling: { from: pulling.from, to: spot.point } });
  }

  private dragTripod(which: number, x: number, y: number): void {
    const spot = this.driver.stage.pick(x, y);
    if (spot) this.driver.bench.store.set({ tripodDrag: { which, to: spot.point } });
  }

  private up(event: PointerEvent): void {
    const { held, driver } = this;
    this.held = null;
    const { tripodDrag } = driver.bench.store.get();
    if (tripodDrag) {
      void driver.bench.paths.move(tripodDrag.which, tripodDrag.to).finally(() => driver.bench.store.set({ tripodDrag: null }));
    }
    const { pulling, tooth } = driver.bench.store.get();
    if (pulling) driver.bench.store.set({ pulling: null });
    if (held?.kind === "margin" && held.moved && pulling && tooth !== null) driver.bench.pullMargin(tooth, pulling.from, pulling.to);
    const { dragging } = driver.bench.store.get();
    if (dragging) driver.bench.store.set({ dragging: null });
    if (held?.kind === "border" && held.moved && dragging) driver.bench.moveBorder(dragging.from, dragging.to);
    if (!held || this.looking || held.moved || held.kind !== "orbit" || event.button !== 0) return;
    const { bench } = driver;
    const { gauge, asking, page, picking } = bench.store.get();
    if (picking) {
      const place = driver.stage.pick(event.offsetX, event.offsetY);
      if (place) void bench.paths.pick(place.point);
      return;
    }
    const spot = driver.spotAt(event.offsetX, event.offsetY, gauge, event.altKey);
    if (!spot) {
      bench.store.set({ adding: null });
      return;
    }
    if (asking === "front") {
      const { document } = bench.store.get();
      if (document) bench.setFrame({ ...document.frame, front: driver.fromMiddle(spot.point) });
    } else if (asking === "plane") {
      void bench.planePoint(spot.point);
    } else if (spot.onCurve || event.altKey) {
      bench.leaveMark(spot, spot.onCurve ? gauge : null);
      bench.carry(spot, spot.onCurve);
    } else if (page === "arch") this.tooth(spot);
    else if (page === "ledger") this.row(spot);
    else if (page === "plan") bench.store.set({ chosenPart: driver.partAt(event.offsetX, event.offsetY), step: null });
  }

  /** A click with no mark to leave is about the tooth there: one that was found is chosen, else one may be added. */
  private tooth(spot: Spot): void {
    const { bench } = this.driver;
    const { labels, tooth: chosen, toothHand } = bench.store.get();
    const tooth = labels?.[spot.triangle] ?? 0;
    if (toothHand && chosen !== null) {
      bench.store.set({ toothHand: null });
      if (toothHand === "join" && tooth !== 0) bench.charting.join(chosen, tooth);
      if (toothHand === "cut" && tooth === chosen) bench.pointAt(spot, this.otherHalf(chosen, spot));
    } else if (tooth === 0) bench.pointAt(spot);
    else bench.chooseTooth(tooth);
  }

  /** A click on a judged tooth opens its row of the ledger; on one that has two, the one that is not open. */
  private row(spot: Spot): void {
    const { bench } = this.driver;
    const { labels, judged, row } = bench.store.get();
    const rows = (judged?.sheet?.abutments ?? []).filter(({ tooth }) => tooth === labels?.[spot.triangle]).map(rowOf);
    const next = rows.find((each) => each !== row);
    if (next) bench.openRow(next);
  }

  /** Where the rest of a tooth has its middle once a part of it is cut off: opposite, across the middle of its top. */
  private otherHalf(tooth: number, { point: [x, y, z] }: Spot): ToothPoint | null {
    const { bench, stage } = this.driver;
    const on = bench.store.get().teeth?.teeth.find((each) => each.tooth === tooth)?.on;
    return on && stage.cast ? { tooth, point: stage.cast.nearest(scan(2 * on[0] - x, 2 * on[1] - y, 2 * on[2] - z)).point } : null;
  }

  private slide(event: PointerEvent, id: string, gesture: number): void {
    const { driver } = this;
    const mark = driver.bench.store.get().document?.marks.find((each) => each.id === id);
    if (!mark) return;
    const spot = driver.spotAt(event.offsetX, event.offsetY, mark.gaugeMm, event.altKey);
    // A mark that was left with a gauge stays on its curves unless Alt frees it.
    if (!spot || (mark.gaugeMm !== null && !spot.onCurve && !event.altKey)) return;
    driver.bench.moveMark(id, spot, gesture);
    driver.bench.carry(spot, spot.onCurve);
  }

  private carry(event: PointerEvent): void {
    const { bench } = this.driver;
    const { gauge, asking, selected } = bench.store.get();
    if (asking) return;
    const spot = this.driver.spotAt(event.offsetX, event.offsetY, gauge, event.altKey);
    if (!spot) return;
    if (selected) bench.store.set({ selected: null });
    bench.carry(spot, spot.onCurve);
  }

  private wheel(event: WheelEvent): void {
    event.preventDefault();
    const { driver } = this;
    const [x, y] = driver.stage.onPlane(event.offsetX, event.offsetY);
    const lines = event.deltaMode === 1 ? 16 : 1;
    driver.setView(zoomAbout(driver.view, Math.exp(-event.deltaY * lines * 0.0015), x, y));
  }
}
