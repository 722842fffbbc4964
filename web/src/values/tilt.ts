import { type Degrees, degrees, radians, toDegrees, toRadians } from "./units";

export type Jaw = "upper" | "lower";

/**
 * How the cast is set under the upright rod.
 * `anterior` > 0: the front of the cast goes down. `right` > 0: the patient's right side goes down.
 */
export interface Tilt {
  readonly anterior: Degrees;
  readonly right: Degrees;
}

export const REFERENCE: Tilt = { anterior: degrees(0), right: degrees(0) };
export const tilt = (anterior: number, right: number): Tilt => ({ anterior: degrees(anterior), right: degrees(right) });
export const sameTilt = (a: Tilt, b: Tilt): boolean => a.anterior === b.anterior && a.right === b.right;

/** Angle between the withdrawal axis and the occlusal normal: `atan √(tan² a + tan² r)`. */
export function totalTilt({ anterior, right }: Tilt): Degrees {
  return toDegrees(radians(Math.atan(Math.hypot(Math.tan(toRadians(anterior)), Math.tan(toRadians(right))))));
}

/** A place on the tilt map: x to the viewer's right, y up, in degrees; its distance from the middle is the total tilt. */
export interface MapPlace {
  readonly x: Degrees;
  readonly y: Degrees;
}

/** On the map the front lies up for an upper cast (and for one of unknown jaw), down for a lower one: turned, never mirrored. */
export const frontUp = (jaw: Jaw | null): 1 | -1 => (jaw === "lower" ? -1 : 1);

/** Where the dot stands: towards the side of the cast that goes down, the patient's right on the viewer's left. */
export function mapPlace(at: Tilt, jaw: Jaw | null): MapPlace {
  const total = totalTilt(at);
  const towardsLeft = Math.tan(toRadians(at.right));
  const towardsFront = Math.tan(toRadians(at.anterior));
  const size = Math.hypot(towardsLeft, towardsFront);
  const scale = size > 0 ? total / size : 0;
  return { x: degrees(-towardsLeft * scale), y: degrees(frontUp(jaw) * towardsFront * scale) };
}

/** The tilt at which the dot stands at a place of the map; the inverse of {@link mapPlace}. */
export function tiltAt(place: MapPlace, jaw: Jaw | null): Tilt {
  const total = Math.hypot(place.x, place.y);
  if (total === 0) return REFERENCE;
  const slope = Math.tan(toRadians(degrees(Math.min(total, 89)))) / total;
  const angle = (t: number): Degrees => toDegrees(radians(Math.atan(t)));
  return { anterior: angle(frontUp(jaw) * place.y * slope), right: angle(-1 * place.x * slope) };
}

/** The nearest tilt on the same line from the reference whose total does not pass `limit`. */
export function within(at: Tilt, limit: Degrees): Tilt {
  const total = totalTilt(at);
  if (total <= limit) return at;
  const place = mapPlace(at, "upper");
  const k = limit / total;
  return tiltAt({ x: degrees(place.x * k), y: degrees(place.y * k) }, "upper");
}

/** Rounded to hundredths of a degree, so that what is shown is what is sent; never past the limit by rounding. */
export function rounded(at: Tilt): Tilt {
  const r = (angle: number): Degrees => degrees(Math.round(angle * 100) / 100 + 0);
  return { anterior: r(at.anterior), right: r(at.right) };
}
