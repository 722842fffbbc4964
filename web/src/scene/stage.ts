import { ColorManagement, LinearSRGBColorSpace, Matrix4, OrthographicCamera, Scene, WebGLRenderer } from "three";
import type { Band, Look } from "../values/look";
import { directionToScan, type Pose, poseMatrix, toWorld } from "../values/pose";
import { add, scan, times, type WorldVec } from "../values/vec";
import type { View } from "../values/view";
import type { CastMesh } from "../wire/mesh";
import type { SurveyFrame } from "../wire/survey-frame";
import type { Spot } from "../wire/types";
import { ArmFigures } from "./arm-figures";
import { BandMaterial } from "./band-material";
import { CastBody } from "./cast-body";
import { LeadLines, LIFT_MM } from "./lead-lines";
import { type Margin, MarginLines } from "./margin-lines";
import { PlanLines } from "./plan-lines";
import { MarkPins, type Pin } from "./mark-pins";
import { RodFigure, type RodStand } from "./rod-figure";
import { StillLayer } from "./still-layer";
import type { ArmLine } from "./swept-arm";

ColorManagement.enabled = false; // colours are drawn as written in look.ts

const SAMPLES = 4;
const DEPTH_RANGE_MM = 500;
/** A screen that needs longer than this for the whole cast gets a coarser one while something moves [ms]. */
const SLOW_MS = 60;
/** Nothing moved for this long: draw it whole [ms]. */
const SETTLED_MS = 220;

/**
 * Draws one cast, its lines, the rod and the marks, when something changed and not otherwise. It is told everything; it measures
 * and decides nothing.
 */
export class Stage {
  private readonly renderer: WebGLRenderer;
  private readonly still: StillLayer;
  private readonly stillScene = new Scene();
  private readonly movingScene = new Scene();
  private readonly camera = new OrthographicCamera(-1, 1, 1, -1, 0, 2 * DEPTH_RANGE_MM);
  private readonly material = new BandMaterial();
  private readonly lines = new LeadLines();
  private readonly margins = new MarginLines();
  private readonly plan = new PlanLines();
  private readonly arms = new ArmFigures();
  private readonly rod = new RodFigure();
  private readonly pins = new MarkPins();
  private body: CastBody | null = null;
  private width = 1;
  private height = 1;
  private view: View | null = null;
  private pose: Pose | null = null;
  private rodStand: RodStand | null = null;
  private pinList: readonly Pin[] = [];
  private stillStale = true;
  private coarse = false;
  /** Whether the survey shown is that of the whole cast. */
  private exact = true;
  /** An exact survey has just come: it comes at rest, and is drawn whole at once. */
  private fresh = false;
  private slow: boolean | null = null;
  private settle: ReturnType<typeof setTimeout> | undefined;
  private frame = 0;
  /** Told after each drawn picture; for labels that lie over the canvas. */
  onDrawn: () => void = () => undefined;
  /** Told when the picture becomes coarser than the survey (while something moves on a slow screen), and whole again. */
  onCoarse: (coarse: boolean) => void = () => undefined;

  constructor(readonly canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, premultipliedAlpha: true });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.renderer.setClearColor(0x000000, 0);
    this.renderer.autoClear = false;
    this.still = new StillLayer(this.renderer);
    this.stillScene.add(this.lines.group, this.margins.group, this.plan.group, this.arms.group);
    this.movingScene.add(this.rod.group, this.pins.group);
  }

  setCast(mesh: CastMesh | null): void {
    if (this.body) this.stillScene.remove(this.body.group);
    this.body?.dispose();
    this.body = mesh ? new CastBody(mesh, this.material) : null;
    if (this.body) this.stillScene.add(this.body.group);
    this.material.setShown(false);
    this.slow = null;
    this.exact = true;
    this.touch(true);
  }

  setThinned(mesh: CastMesh): void {
    this.body?.setThinned(mesh);
  }

  setSurvey(survey: SurveyFrame | null, all: readonly Band[], gauge: number | null, look: Look): void {
    if (survey) this.body?.setSurvey(survey);
    this.exact = survey?.head.exact ?? true;
    this.fresh = this.exact;
    this.material.setShown(survey !== null);
    if (all.length > 0) this.material.setBands(all);
    this.lines.set(survey, gauge, look);
    this.touch(true);
  }

  /** Shows the room to the opposing teeth instead of the undercut, or the undercut again. */
  setRoom(room: Float32Array | null, shown: boolean): void {
    this.body?.setRoom(room);
    this.material.setShowRoom(shown && room !== null);
    this.touch(true);
  }

  setLines(survey: SurveyFrame | null, gauge: number | null, look: Look): void {
    this.lines.set(survey, gauge, look);
    this.touch(true);
  }

  setMargins(margins: readonly Margin[], look: Look): void {
    this.margins.set(margins, look);
    this.touch(true);
  }

  setPlan(...given: Parameters<PlanLines["set"]>): void {
    this.plan.set(...given);
    this.touch(true);
  }

  /** Whether the bands of the undercut are shown, or bare plaster. */
  setBands(shown: boolean): void {
    this.material.setShown(shown);
    this.touch(true);
  }

  setArms(arms: readonly ArmLine[]): void {
    this.arms.set(arms);
    this.touch(true);
  }

  setLook(look: Look): void {
    this.material.setLook(look);
    this.arms.setLook(look);
    this.rod.setLook(look);
    this.pins.setLook(look);
    this.touch(true);
  }

  setPose(pose: Pose): void {
    this.pose = pose;
    const matrix = new Matrix4().fromArray(poseMatrix(pose));
    if (this.body) {
      this.body.group.matrix.copy(matrix);
      this.body.group.matrixWorldNeedsUpdate = true;
    }
    this.arms.group.matrix.copy(matrix);
    this.arms.group.matrixWorldNeedsUpdate = true;
    this.touch(true);
  }

  setView(view: View): void {
    this.view = view;
    this.touch(true);
  }

  setRod(stand: RodStand | null): void {
    this.rodStand = stand;
    this.touch(false);
  }

  setPins(pins: readonly Pin[]): void {
    this.pinList = pins;
    this.touch(false);
  }

  resize(width: number, height: number): void {
    const ratio = Math.min(2, window.devicePixelRatio || 1);
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(this.width, this.height, false);
    this.still.resize(this.width, this.height, ratio, SAMPLES);
    this.touch(true);
  }

  get mmPerPx(): number {
    return this.view ? (2 * this.view.half) / this.height : 1;
  }

  /** A place of the canvas [CSS px from its upper left] in mm from its middle, right and up. */
  onPlane(x: number, y: number): readonly [number, number] {
    return [(x - this.width / 2) * this.mmPerPx, (this.height / 2 - y) * this.mmPerPx];
  }

  /** Where a world place stands on the canvas [CSS px from its upper left]. */
  toCanvas(place: WorldVec): readonly [number, number] {
    const view = this.view;
    if (!view) return [0, 0];
    const d = add(place, times(view.target, -1));
    const right = view.right[0] * d[0] + view.right[1] * d[1] + view.right[2] * d[2];
    const up = view.up[0] * d[0] + view.up[1] * d[1] + view.up[2] * d[2];
    return [this.width / 2 + right / this.mmPerPx, this.height / 2 - up / this.mmPerPx];
  }

  /** The place of the cast under a place of the canvas. */
  pick(x: number, y: number): Spot | null {
    const { body, pose, view } = this;
    if (!body || !pose || !view) return null;
    const [right, up] = this.onPlane(x, y);
    const far = times(view.back, DEPTH_RANGE_MM);
    const from = add(add(view.target, far), add(times(view.right, right), times(view.up, up)));
    const start = directionToScan(pose, from);
    const [px, py, pz] = pose.pivot;
    return body.hit(scan(start[0] + px, start[1] + py, start[2] + pz), directionToScan(pose, times(view.back, -1)));
  }

  get cast(): CastBody | null {
    return this.body;
  }

  /** Draws now and gives the picture, for saving. */
  picture(): HTMLCanvasElement {
    this.stillStale = true;
    this.draw(true);
    return this.canvas;
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    clearTimeout(this.settle);
    this.body?.dispose();
    this.lines.dispose();
    this.margins.dispose();
    this.plan.dispose();
    this.arms.dispose();
    this.rod.dispose();
    this.pins.dispose();
    this.still.dispose();
    this.material.dispose();
    this.renderer.dispose();
  }

  private touch(still: boolean): void {
    this.stillStale ||= still;
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.draw();
    });
  }

  private draw(whole = false): void {
    const { view, pose, camera } = this;
    if (!view || !pose) return;
    this.aim(view);
    this.rod.stand(this.rodStand, this.mmPerPx);
    this.pins.set(this.pinList, camera.quaternion, view.back, this.mmPerPx);
    if (this.stillStale) {
      this.stillStale = false;
      const began = performance.now();
      this.setCoarse(!this.exact || (this.slow === true && !whole && !this.fresh));
      this.fresh = false;
      const lift = times(view.back, LIFT_MM);
      const matrix = poseMatrix(pose);
      for (let i = 0; i < 3; i++) matrix[12 + i]! += lift[i as 0 | 1 | 2];
      for (const { group } of [this.lines, this.margins, this.plan]) {
        group.matrix.fromArray(matrix);
        group.matrixWorldNeedsUpdate = true;
      }
      const ratio = this.coarse ? Math.min(1, this.renderer.getPixelRatio()) : this.renderer.getPixelRatio();
      const [ax, ay] = this.toCanvas(toWorld(pose, pose.pivot));
      this.material.setScreen(ax * ratio, (this.height - ay) * ratio, ratio);
      this.lines.setScreen(this.width, this.height);
      this.margins.setScreen(this.width, this.height);
      this.plan.setScreen(this.width, this.height);
      this.still.draw(this.coarse, () => {
        this.renderer.clear();
        this.renderer.render(this.stillScene, camera);
      });
      if (this.slow === null && this.body) this.slow = this.finished(began) > SLOW_MS;
    }
    this.renderer.clear();
    this.still.copyToScreen();
    this.renderer.render(this.movingScene, camera);
    this.onDrawn();
  }

  private setCoarse(coarse: boolean): void {
    clearTimeout(this.settle);
    // A thinned cast stays until the exact survey comes and draws the whole.
    if (coarse && this.exact) {
      this.settle = setTimeout(() => {
        if (this.frame) return; // something moves still; its picture is on the way
        this.stillStale = true;
        this.draw(true);
      }, SETTLED_MS);
    }
    this.body?.draw(!this.exact ? "thinned" : coarse ? "coarse" : "whole");
    if (coarse !== this.coarse) this.onCoarse(coarse);
    this.coarse = coarse;
  }

  /** Waits until the screen has drawn what it was told, once a cast: how long it took [ms]. */
  private finished(began: number): number {
    const gl = this.renderer.getContext();
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    return performance.now() - began;
  }

  private aim({ right, up, back, target, half }: View): void {
    const { camera } = this;
    const wide = (half * this.width) / this.height;
    Object.assign(camera, { left: -wide, right: wide, top: half, bottom: -half });
    camera.matrixAutoUpdate = false;
    const at = add(target, times(back, DEPTH_RANGE_MM));
    camera.matrix.set(right[0], up[0], back[0], at[0], right[1], up[1], back[1], at[1], right[2], up[2], back[2], at[2], 0, 0, 0, 1);
    camera.quaternion.setFromRotationMatrix(camera.matrix);
    camera.matrixWorldNeedsUpdate = true;
    camera.updateProjectionMatrix();
  }
}
