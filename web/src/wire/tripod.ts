import type { Degrees, Mm } from "../values/units";
import type { ScanVec } from "../values/vec";

export interface TripodMark {
  readonly point: ScanVec;
  readonly triangle: number;
  readonly slopeDeg: Degrees;
  /** How it is set with dividers; null where no two landmarks fix it, or no teeth are known. */
  readonly bearings?: MarkBearings | null;
}

export interface MarkBearings {
  /** The nearer landmark first. */
  readonly from: readonly {
    readonly landmark: string;
    readonly tooth: number;
    /** The tooth on the other side of a papilla. */
    readonly other: number | null;
    readonly point: ScanVec;
    readonly distanceMm: Mm;
  }[];
  readonly errorMm: Mm;
}

export interface TiltTold {
  readonly anteriorDeg: Degrees;
  readonly rightDeg: Degrees;
  readonly totalDeg: Degrees;
}

/** Three marks at one height, as docs/schema/tripod.schema.json has them. */
export interface Tripod {
  readonly format: "rodwork tripod";
  readonly version: number;
  readonly axis: ScanVec;
  readonly tilt: TiltTold | null;
  readonly heightMm: Mm;
  readonly marks: readonly TripodMark[];
  /** 1–2, 2–3, 3–1. */
  readonly distancesMm: readonly Mm[];
  /** How far an axis found again may be off, 95 times in 100. */
  readonly axisErrorDeg: Degrees;
  readonly pickingErrorMm: Mm;
}

interface FoundAgain {
  readonly axis: ScanVec;
  readonly tilt: TiltTold | null;
}

/** A path found again from three points picked on another scan. */
export interface Recovered extends FoundAgain {
  readonly axisErrorDeg: Degrees;
  readonly disagreementMm: Mm;
}

/** A path carried over from another open cast, on which this one was laid. */
export interface CarriedOver extends FoundAgain {
  /** How much of this scan lies on the first one [0 to 1]. */
  readonly share: number;
  readonly medianMm: Mm;
  readonly rmsMm: Mm;
}
