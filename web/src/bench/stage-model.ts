import { DARK, LIGHT, type Look } from "../values/look";
import { directionToWorld, type Pose, poseOf, toWorld } from "../values/pose";
import { length, scan, type ScanVec, sub, world, type WorldVec } from "../values/vec";
import { type ArmLine, calmed } from "../scene/swept-arm";
import type { CastBody } from "../scene/cast-body";
import type { Margin } from "../scene/margin-lines";
import type { Pin } from "../scene/mark-pins";
import type { RodStand } from "../scene/rod-figure";
import type { BenchState } from "../state/bench-state";
import type { Plan } from "../wire/plan";
import { fitsStill } from "../state/document";
import { choiceAt, looked } from "../state/ledger";
import { following, handles, type Pull } from "../values/arm-shape";
import type { ClaspTold, FamilyAnswer } from "../wire/abutments";

export function lookOf(state: BenchState, systemDark: boolean): Look {
  return state.look === "dark" || (state.look === "system" && systemDark) ? DARK : LIGHT;
}

/** The pose of the picture: that of the survey drawn, so that bands, lines and rod always belong together. */
export function poseFor({ survey, cast }: BenchState, pivot: ScanVec): Pose {
  const axis = survey?.head.axis ?? cast?.frame?.z ?? scan(0, 0, 1);
  const front = cast?.frame?.y ?? scan(0, 1, 0);
  return poseOf(axis, front, pivot);
}

/** Where to draw the rod for what it carries. */
export function standFor({ carried, gauge, cast }: BenchState, pose: Pose, body: CastBody): RodStand | null {
  if (!carried || !cast) return null;
  const point = toWorld(pose, carried.point);
  const { reading } = carried;
  // A reading of the place before, until the new one is here: no free line is drawn that belongs elsewhere.
  const fresh = reading && length(sub(reading.point, carried.point)) < 0.02;
  const free = fresh ? toWorld(pose, reading.free) : point;
  const gap = world(free[0] - point[0], free[1] - point[1], 0);
  const outward = levelUnit(gap, 0.01) ?? levelUnit(directionToWorld(pose, body.outward(carried.triangle)), 1e-9) ?? world(1, 0, 0);
  return { point, free, outward, shankRadiusMm: cast.shankRadiusMm, gauge: carried.onCurve || (fresh && reading.fits !== null && Number(reading.fits) === gauge) ? gauge : null };
}

function levelUnit(v: WorldVec, least: number): WorldVec | null {
  const size = Math.hypot(v[0], v[1]);
  return size > least ? world(v[0] / size, v[1] / size, 0) : null;
}

/** The tripod marks, one of them perhaps under the hand; while those of another scan are picked, the places picked. */
export function tripodPlaces({ document, tripodDrag, picking }: BenchState): ScanVec[] {
  if (picking) return [...picking.picked];
  return (document?.tripod?.marks ?? []).map(({ point }, which) => (tripodDrag?.which === which ? tripodDrag.to : point));
}

export function pinsFor(state: BenchState, pose: Pose): Pin[] {
  const { document, selected, markReadings, pointed } = state;
  const tripod = tripodPlaces(state).map((point, which) => ({ id: `tripod ${which}`, at: toWorld(pose, point), selected: false, seated: true, tripod: true }));
  const marks = (document?.marks ?? []).map((mark) => ({
    id: mark.id,
    at: toWorld(pose, mark.point),
    selected: mark.id === selected,
    seated: fitsStill(mark, markReadings.get(mark.id)),
  }));
  const grips = gripsFor(state).map(({ at, point }) => ({ id: `grip ${at}`, at: toWorld(pose, point), selected: false, seated: false }));
  return [...tripod, ...marks, ...grips, ...(pointed ? [{ id: "pointed", at: toWorld(pose, pointed), selected: true, seated: true }] : [])];
}

/** Teeth are outlined where they are spoken of: on the pages of the arch and the ledger. */
export function marginsFor({ teeth, tooth, page, pulling }: BenchState): Margin[] {
  if (page === "profile") return [];
  const margins = (teeth?.teeth ?? []).map((each) => ({ points: each.margin, chosen: each.tooth === tooth }));
  return pulling ? [...margins, { points: [pulling.from, pulling.to], chosen: true }] : margins;
}

/** The plan that is shown on the cast: the newest, while its page lies open and no second cast beside. */
export const planShown = ({ page, planned, beside }: BenchState): Plan | null => (page === "plan" && !beside ? (planned?.sheet?.plan ?? null) : null);

/** Of an arm round the tooth the last third springs; of a bar all does, and the end that touches is shown [mm]. */
const BAR_TOUCHES_MM = 2;

/** The family whose arms lie on the cast: the one looked at in the ledger, if it has any. */
export function drawnClasp(state: BenchState): FamilyAnswer | null {
  const family = state.page === "ledger" ? looked(state)?.family : null;
  return family?.clasp ? family : null;
}

/** The choice whose arm can be taken hold of: that of the clasp on the cast. */
function shaped(state: BenchState): { readonly row: string; readonly now: readonly Pull[]; readonly laidWith: readonly Pull[] } | null {
  const { row, document, judged } = state;
  const choice = row === null ? null : choiceAt(document?.clasps ?? {}, judged?.sheet?.abutments ?? [], row);
  if (row === null || !choice || drawnClasp(state)?.family !== choice.family) return null;
  const then = judged?.clasps[row];
  return { row, now: choice.arm ?? [], laidWith: then?.family === choice.family ? (then.arm ?? []) : [] };
}

/** The retentive arm as the hand has it: as it was laid, and moved by what it was pulled since. */
function lineOf(state: BenchState, { retentive }: ClaspTold): readonly ScanVec[] {
  const shape = shaped(state);
  return shape ? following(retentive.line, shape.laidWith, shape.now) : retentive.line;
}

/** Where the arm on the cast can be taken hold of; nowhere unless its clasp is chosen. */
export function gripsFor(state: BenchState): readonly { readonly row: string; readonly at: number; readonly point: ScanVec }[] {
  const shape = shaped(state);
  const clasp = drawnClasp(state)?.clasp;
  if (!shape || !clasp) return [];
  return handles(lineOf(state, clasp), shape.now).map((grip) => ({ row: shape.row, ...grip }));
}

/** The arms that lie on the cast. */
export function armsFor(state: BenchState, body: CastBody): ArmLine[] {
  const clasp = drawnClasp(state);
  if (!clasp?.clasp) return [];
  const { opposing } = clasp.clasp;
  const retentive = { ...clasp.clasp.retentive, line: lineOf(state, clasp.clasp) };
  const outward = (points: readonly ScanVec[]): readonly ScanVec[] => calmed(points, points.map((point) => body.outward(body.nearest(point).triangle)));
  const arms: ArmLine[] = [
    {
      points: retentive.line,
      outward: outward(retentive.line),
      round: retentive.root.shape === "round",
      root: retentive.root,
      tip: retentive.tip,
      springsFromMm: clasp.arm === "bar" ? retentive.lengthMm - BAR_TOUCHES_MM : (2 / 3) * retentive.lengthMm,
    },
  ];
  if (opposing) arms.push({ points: opposing.line, outward: outward(opposing.line), round: false, root: retentive.root, tip: retentive.root, springsFromMm: Infinity });
  return arms;
}
