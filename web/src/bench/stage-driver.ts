import { fitted, legendShare, middle } from "../scene/fit";
import { nearestOnCurve } from "../scene/snap";
import { Stage } from "../scene/stage";
import type { Hands } from "../state/actions";
import type { Bench } from "../state/bench";
import type { BenchState } from "../state/bench-state";
import { cutShown, partShown } from "../state/plan-parts";
import { bands, LIGHT, type Look } from "../values/look";
import { directionToScan, directionToWorld, type Pose, toWorld } from "../values/pose";
import type { Mm } from "../values/units";
import { scan, type ScanVec, sub, world } from "../values/vec";
import { alongRod, facing, type Side, sideView, type View } from "../values/view";
import type { Plan } from "../wire/plan";
import type { Spot } from "../wire/types";
import { CurveWalk } from "./curve-walk";
import { knots, nearestOn, partAt, type PlanFigure, planFigures, withCut } from "../scene/plan-figure";
import { armsFor, gripsFor, lookOf, marginsFor, pinsFor, planShown, poseFor, standFor, tripodPlaces } from "./stage-model";

/** How near to its curve a gauge slides onto it [CSS px]. */
export const SNAP_PX = 16;
/** How near to a margin it is taken hold of [CSS px]. */
const GRIP_PX = 8;
const CENTRE = world(0, 0, 0);

/** Keeps the drawing in step with the state, and answers what only the drawing knows: view, picking, sliding. */
export class StageDriver implements Pick<Hands, "look" | "fit" | "show" | "alongRod" | "slide" | "nextCurve"> {
  readonly stage: Stage;
  /** Told each time the view was changed. */
  onView: (view: View) => void = () => undefined;
  view: View = sideView("above", null, CENTRE, 40);
  private pose: Pose = poseFor({ survey: null, cast: null } as BenchState, scan(0, 0, 0));
  private pivot: ScanVec = scan(0, 0, 0);
  private shown: Partial<BenchState> = {};
  private look_: Look = LIGHT;
  private systemDark = false;
  private readonly walk = new CurveWalk();
  private plan: Plan | null = null;
  private figures: readonly PlanFigure[] = [];
  private readonly stop: () => void;

  constructor(
    canvas: HTMLCanvasElement,
    readonly bench: Bench,
  ) {
    this.stage = new Stage(canvas);
    this.stage.onCoarse = (coarse) => bench.store.set({ coarse });
    this.stop = bench.store.subscribe(() => this.follow());
    this.follow();
  }

  setSystemDark(dark: boolean): void {
    this.systemDark = dark;
    this.follow();
  }

  dispose(): void {
    this.stop();
    this.stage.dispose();
  }

  setView(view: View): void {
    if (view === this.view) return;
    this.view = view;
    this.stage.setView(view);
    this.place();
    this.onView(view);
  }

  look(side: Side): void {
    const { mesh, cast } = this.state;
    if (!mesh) return;
    this.setView(fitted(sideView(side, cast?.jaw ?? null, CENTRE, this.view.half), mesh.positions, this.pose, this.aspect, this.covered));
  }

  fit(): void {
    const { mesh } = this.state;
    if (mesh) this.setView(fitted(this.view, mesh.positions, this.pose, this.aspect, this.covered));
  }

  /** Turns the stage so that a place of the cast faces the viewer, marks it, and carries the rod to it. */
  show(place: ScanVec): void {
    const { cast } = this.stage;
    if (!cast) return;
    const spot = cast.nearest(place);
    this.bench.store.set({ pointed: place });
    this.bench.carry({ ...spot, point: place }, false);
    this.setView(facing(this.view, directionToWorld(this.pose, cast.outward(spot.triangle)), toWorld(this.pose, place)));
  }

  alongRod(): void {
    const { carried } = this.state;
    if (carried) this.setView(alongRod(this.view, toWorld(this.pose, carried.point)));
  }

  slide(steps: number): void {
    this.carryTo(this.walk.slide(this.state, steps * 0.1));
  }

  nextCurve(): void {
    this.carryTo(this.walk.nextCurve(this.state));
  }

  /** The place under the pointer; with a gauge, on its curve when that is near (`free` switches this off). */
  spotAt(x: number, y: number, gauge: Mm | null, free: boolean): (Spot & { readonly onCurve: boolean }) | null {
    const spot = this.stage.pick(x, y);
    const { survey } = this.state;
    if (!spot || !this.stage.cast) return null;
    if (free || gauge === null || !survey) return { ...spot, onCurve: false };
    const point = nearestOnCurve(survey, gauge, spot.point, this.pose, this.view, SNAP_PX * this.stage.mmPerPx);
    return point ? { ...this.stage.cast.nearest(point), point, onCurve: true } : { ...spot, onCurve: false };
  }

  /** The mark under the pointer. */
  markAt(x: number, y: number): string | null {
    let best: string | null = null;
    let best2 = 10 * 10;
    for (const mark of this.state.document?.marks ?? []) {
      const [mx, my] = this.stage.toCanvas(toWorld(this.pose, mark.point));
      const d2 = (mx - x) ** 2 + (my - y) ** 2;
      if (d2 < best2) [best, best2] = [mark.id, d2];
    }
    return best;
  }

  /** The tripod mark under the pointer. */
  tripodAt(x: number, y: number): number | null {
    if (this.state.picking) return null;
    const near = tripodPlaces(this.state).findIndex((point) => {
      const [mx, my] = this.canvasPlace(point);
      return Math.hypot(mx - x, my - y) < 11;
    });
    return near < 0 ? null : near;
  }

  /** The grip of the arm on the cast under the pointer. */
  gripAt(x: number, y: number): { readonly row: string; readonly at: number } | null {
    const near = gripsFor(this.state).find(({ point }) => {
      const [gx, gy] = this.canvasPlace(point);
      return (gx - x) ** 2 + (gy - y) ** 2 < 10 * 10;
    });
    return near ?? null;
  }

  /** The place of the chosen tooth's margin under the pointer. */
  marginAt(x: number, y: number): ScanVec | null {
    const { teeth, tooth, page } = this.state;
    if (page !== "arch") return null;
    let best: ScanVec | null = null;
    let best2 = GRIP_PX * GRIP_PX;
    for (const point of teeth?.teeth.find((each) => each.tooth === tooth)?.margin ?? []) {
      const [mx, my] = this.canvasPlace(point);
      const d2 = (mx - x) ** 2 + (my - y) ** 2;
      if (d2 < best2) [best, best2] = [point, d2];
    }
    return best;
  }

  /** Where the connector's border can be taken hold of. */
  get knots(): readonly ScanVec[] {
    return knots(this.plan);
  }

  /** The place of the connector's border under the pointer. */
  borderAt(x: number, y: number): ScanVec | null {
    const connector = this.plan?.majorConnector;
    const spot = connector ? this.stage.pick(x, y) : null;
    const near = connector && spot ? nearestOn(connector.outline.points, spot.point) : null;
    if (!near) return null;
    const [nx, ny] = this.canvasPlace(near);
    return Math.hypot(nx - x, ny - y) <= GRIP_PX ? near : null;
  }

  /** The part of the plan under the pointer. */
  partAt(x: number, y: number): string | null {
    const spot = this.plan ? this.stage.pick(x, y) : null;
    return spot ? partAt(this.figures, spot.point) : null;
  }

  /** What looks at the viewer, in the scan frame: "this is from above". */
  towardsViewer(): ScanVec {
    return directionToScan(this.pose, this.view.back);
  }

  /** The direction from the middle of the cast to a place of it, in the scan frame. */
  fromMiddle(point: ScanVec): ScanVec {
    return sub(point, this.pivot);
  }

  /** Whether something that stands up along a direction of the cast is seen, and not its foot. */
  facesViewer(direction: ScanVec): boolean {
    const d = directionToWorld(this.pose, direction);
    return d[0] * this.view.back[0] + d[1] * this.view.back[1] + d[2] * this.view.back[2] > -0.3;
  }

  canvasPlace(point: ScanVec): readonly [number, number] {
    return this.stage.toCanvas(toWorld(this.pose, point));
  }

  get palette(): Look {
    return this.look_;
  }

  private get covered(): number {
    return legendShare(this.stage.canvas.clientHeight);
  }

  get aspect(): number {
    return this.stage.canvas.clientWidth / Math.max(1, this.stage.canvas.clientHeight);
  }

  private get state(): BenchState {
    return this.bench.store.get();
  }

  private carryTo(point: ScanVec | null): void {
    if (!point || !this.stage.cast) return;
    this.bench.carry({ ...this.stage.cast.nearest(point), point }, true);
    const [x, y] = this.canvasPlace(point);
    const { clientWidth: width, clientHeight: height } = this.stage.canvas;
    if (x < 20 || y < 20 || x > width - 20 || y > height - 20) this.setView({ ...this.view, target: toWorld(this.pose, point) });
  }

  private follow(): void {
    const now = this.state;
    const was = this.shown;
    this.shown = now;
    const look = lookOf(now, this.systemDark);
    const newLook = look !== this.look_ || was.mesh === undefined;
    this.look_ = look;
    if (newLook) this.stage.setLook(look);
    const newCast = now.mesh !== was.mesh;
    if (newCast) {
      this.stage.setCast(now.mesh);
      this.pivot = now.mesh ? middle(now.mesh.positions) : scan(0, 0, 0);
    }
    if (now.thinned && (newCast || now.thinned !== was.thinned)) this.stage.setThinned(now.thinned);
    if (newCast || now.survey !== was.survey) {
      this.stage.setSurvey(now.survey, now.cast ? bands(now.cast.gaugesMm, now.cast.shallowMm) : [], now.gauge, look);
    } else if (newLook || now.gauge !== was.gauge) this.stage.setLines(now.survey, now.gauge, look);
    if (newCast || newLook || now.teeth !== was.teeth || now.tooth !== was.tooth || now.page !== was.page || now.pulling !== was.pulling) {
      this.stage.setMargins(marginsFor(now), look);
    }
    this.followPlan(now, was, newLook || newCast);
    if (newCast || now.clearance !== was.clearance || now.shading !== was.shading || now.page !== was.page) this.stage.setRoom(now.clearance, now.shading === "room" && now.page !== "plan");
    if (newCast || now.judged !== was.judged || now.row !== was.row || now.family !== was.family || now.page !== was.page || now.document?.clasps !== was.document?.clasps) {
      this.stage.setArms(this.stage.cast ? armsFor(now, this.stage.cast) : []);
    }
    if (newCast || now.survey !== was.survey || now.cast?.frame !== was.cast?.frame) {
      this.pose = poseFor(now, this.pivot);
      this.stage.setPose(this.pose);
    }
    const newPose = now.cast?.frame !== was.cast?.frame || now.cast?.jaw !== was.cast?.jaw;
    if (newCast || newPose) this.look("above");
    this.place();
  }

  /** Under a plan the plaster is bare: its lines would drown in bands and survey lines. */
  private followPlan(now: BenchState, was: Partial<BenchState>, anew: boolean): void {
    const plan = planShown(now);
    const { cast } = this.stage;
    const newPlan = anew || plan !== this.plan;
    if (newPlan || now.survey !== was.survey || now.gauge !== was.gauge) {
      if (plan || this.plan) this.stage.setLines(plan ? null : now.survey, now.gauge, this.look_);
      this.stage.setBands(now.survey !== null && !plan);
    }
    if (newPlan) {
      this.plan = plan;
      this.figures = plan && cast && now.cast?.frame ? planFigures(plan, now.cast.frame.y, cast) : [];
    }
    if (newPlan || now.part !== was.part || now.chosenPart !== was.chosenPart || now.step !== was.step || now.dragging !== was.dragging) {
      const dragged = now.dragging ? [now.dragging.from, now.dragging.to] : [];
      const cut = cutShown(now);
      const tooth = plan?.preparation.steps.find(({ number }) => number === cut?.step)?.tooth;
      const figures = cut && tooth !== undefined ? withCut(this.figures, cut, tooth) : this.figures;
      this.stage.setPlan(figures, cut ? `cut ${cut.step}` : partShown(now), this.knots, dragged, this.look_);
    }
  }

  private place(): void {
    const now = this.state;
    this.stage.setPins(pinsFor(now, this.pose));
    this.stage.setRod(this.stage.cast ? standFor(now, this.pose, this.stage.cast) : null);
  }
}
