import type { Curve, SurveyHead } from "./types";

/**
 * One survey: the head in words, the field on every vertex, and the points of all curves. One that is not exact has depths
 * alone, and its vertices are those of the thinned cast.
 */
export interface SurveyFrame {
  readonly head: SurveyHead;
  /** Undercut depth of each vertex [mm], capped. */
  readonly depth: Float32Array<ArrayBuffer>;
  /** Flags of each vertex, see {@link Flag}; none where the survey is not exact. */
  readonly flags: Uint8Array<ArrayBuffer>;
  /** x, y, z of the curves' points [mm, scan frame]; stride 3. */
  readonly points: Float32Array<ArrayBuffer>;
}

export const Flag = { capped: 1, unsure: 2, noGaugeReaches: 4, base: 8 } as const;

const MAGIC = 0x31535752; // "RWS1", little-endian

/** Reads the binary survey frame of docs/protocol.md; throws when the sizes do not agree. */
export function decodeSurvey(bytes: ArrayBuffer): SurveyFrame {
  if (bytes.byteLength < 8) throw new RangeError(`survey: ${bytes.byteLength} bytes, shorter than its 8-byte head`);
  const view = new DataView(bytes);
  if (view.getUint32(0, true) !== MAGIC) {
    throw new RangeError(`survey: starts with 0x${view.getUint32(0, true).toString(16)}, not with RWS1`);
  }
  const jsonBytes = view.getUint32(4, true);
  if (8 + jsonBytes > bytes.byteLength) {
    throw new RangeError(`survey: a head of ${jsonBytes} bytes in a frame of ${bytes.byteLength}`);
  }
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 8, jsonBytes))) as SurveyHead;
  const depthAt = 8 + jsonBytes;
  const flagsAt = depthAt + 4 * head.vertices;
  const pointsAt = (flagsAt + head.flags + 3) & ~3;
  const wanted = pointsAt + 12 * head.points;
  if (wanted !== bytes.byteLength) {
    throw new RangeError(`survey: ${bytes.byteLength} bytes, but ${head.vertices} vertices, ${head.flags} flags and ${head.points} points need ${wanted}`);
  }
  return {
    head,
    depth: new Float32Array(bytes, depthAt, head.vertices),
    flags: new Uint8Array(bytes, flagsAt, head.flags),
    points: new Float32Array(bytes, pointsAt, 3 * head.points),
  };
}

/** The points of one curve, stride 3; a view, not a copy. */
export const curvePoints = (survey: SurveyFrame, curve: Curve): Float32Array =>
  survey.points.subarray(3 * curve.from, 3 * (curve.from + curve.count));
