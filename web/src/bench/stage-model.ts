import { DARK, LIGHT, type Look } from "../values/look";
import { directionToWorld, type Pose, poseOf, toWorld } from "../values/pose";
import { length, scan, type ScanVec, sub, world, type WorldVec } from "../values/vec";
import type { CastBody } from "../scene/cast-body";
import type { Margin } from "../scene/margin-lines";
import type { Pin } from "../scene/mark-pins";
import type { RodStand } from "../scene/rod-figure";
import type { BenchState } from "../state/bench-state";
import type { Plan } from "../wire/plan";
import { fitsStill } from "../state/document";

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
export function standFor({ carried, gauge }: BenchState, pose: Pose, body: CastBody): RodStand | null {
  if (!carried) return null;
  const point = toWorld(pose, carried.point);
  const { reading } = carried;
  // A reading of the place before, until the new one is here: no free line is drawn that belongs elsewhere.
  const fresh = reading && length(sub(reading.point, carried.point)) < 0.02;
  const free = fresh ? toWorld(pose, reading.free) : point;
  const gap = world(free[0] - point[0], free[1] - point[1], 0);
  const outward = levelUnit(gap, 0.01) ?? levelUnit(directionToWorld(pose, body.outward(carried.triangle)), 1e-9) ?? world(1, 0, 0);
  return { point, free, outward, gauge: carried.onCurve || (fresh && reading.fits !== null && Number(reading.fits) === gauge) ? gauge : null };
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
  return [...tripod, ...marks, ...(pointed ? [{ id: "pointed", at: toWorld(pose, pointed), selected: true, seated: true }] : [])];
}

/** Teeth are outlined where they are spoken of: on the pages of the arch and the ledger. */
export function marginsFor({ teeth, tooth, page, pulling }: BenchState): Margin[] {
  if (page === "profile") return [];
  const margins = (teeth?.teeth ?? []).map((each) => ({ points: each.margin, chosen: each.tooth === tooth }));
  return pulling ? [...margins, { points: [pulling.from, pulling.to], chosen: true }] : margins;
}

/** The plan that is shown on the cast: the newest, while its page lies open. */
export const planShown = ({ page, planned }: BenchState): Plan | null => (page === "plan" ? (planned?.sheet?.plan ?? null) : null);
