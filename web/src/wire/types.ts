import type { Pieces } from "../values/tooth-number";
import type { Degrees, Mm } from "../values/units";
import type { Jaw } from "../values/tilt";
import type { ChartSaid } from "../values/chart";
import type { ScanVec } from "../values/vec";

/** What the server says, as in docs/protocol.md. The bench measures nothing itself: every figure it shows stands here. */

export interface Problem {
  readonly code: string;
  readonly message: string;
  readonly advice: string;
  /** The message with its teeth apart; missing where the bench itself has it to say. */
  readonly pieces?: Pieces;
}

export interface ArchFrame {
  readonly origin: ScanVec;
  readonly x: ScanVec;
  readonly y: ScanVec;
  readonly z: ScanVec;
  readonly upUncertaintyDeg: Degrees;
  readonly frontUncertaintyDeg: Degrees;
  readonly confident: boolean;
}

export interface CastInfo {
  readonly id: string;
  readonly name: string;
  readonly jaw: Jaw | null;
  readonly triangles: number;
  readonly vertices: number;
  readonly edgeMm: Mm;
  readonly accuracyMm: Mm;
  readonly intakeLines: readonly string[];
  readonly frame: ArchFrame | null;
  readonly frameProblem: Problem | null;
  readonly gaugesMm: readonly Mm[];
  readonly capMm: Mm;
  readonly noteTiltDeg: Degrees;
  readonly warnTiltDeg: Degrees;
  readonly limitTiltDeg: Degrees;
  /** A shallower undercut holds nothing. */
  readonly shallowMm: Mm;
  /** Up to this depth a place counts as free of what is above. */
  readonly freeMm: Mm;
  /** With less undercut at the reference orientation a place holds along the path only. */
  readonly holdsAtReferenceMm: Mm;
  /** Of an undercut gauge. */
  readonly shankRadiusMm: Mm;
  /** How near a shank must come to the free line to reach a place. */
  readonly shankReachMm: Mm;
  /** Neighbours closer than this have closed their space. */
  readonly closedSpaceMm: Mm;
  /** Mobility I ends here, sideways; null: the rulebook gives no figure. */
  readonly mobilityFirstMm: Mm | null;
}

/** What the words of a reading are chosen by. */
export type ReadingLimits = Pick<CastInfo, "shallowMm" | "holdsAtReferenceMm">;

export interface CastCard {
  readonly id: string;
  readonly name: string;
  readonly jaw: Jaw | null;
  readonly triangles: number;
}

export interface CastList {
  readonly casts: readonly CastCard[];
  readonly demo: readonly Jaw[];
}

/** What a person said about the frame; null: found from the shape. */
export interface FrameChoice {
  readonly jaw: Jaw | null;
  readonly up: ScanVec | null;
  readonly front: ScanVec | null;
  /** How well up is known where a person took a plane [± degrees]; without it up counts as exact. */
  readonly upUncertaintyDeg?: Degrees;
}

export type CurveKind = "line" | "band-upper" | "band-lower" | "mark";

export interface Curve {
  readonly kind: CurveKind;
  readonly gaugeMm: Mm | null;
  /** First point and number of points, in the survey's point array. */
  readonly from: number;
  readonly count: number;
  readonly closed: boolean;
  readonly lengthMm: Mm;
}

export interface SurveyHead {
  readonly seq: number;
  readonly tilt: readonly [anterior: Degrees, right: Degrees];
  readonly axis: ScanVec;
  readonly totalTiltDeg: Degrees;
  readonly millis: number;
  /** False where the depths are those of the thinned cast, while the tilt moves; at rest always true. */
  readonly exact: boolean;
  readonly vertices: number;
  /** Number of flags: as many as vertices, or none. */
  readonly flags: number;
  readonly points: number;
  readonly curves: readonly Curve[];
  // Of an exact survey alone:
  readonly hiddenLines?: number;
  readonly undercutAreaMm2?: number;
  readonly undercutVolumeMm3?: number;
  readonly deepest?: readonly { readonly point: ScanVec; readonly depthMm: Mm }[];
  readonly notes?: readonly string[];
}

export interface Reading {
  readonly point: ScanVec;
  readonly depthMm: Mm;
  readonly uncertaintyMm: Mm;
  readonly capped: boolean;
  readonly unsure: boolean;
  readonly noGaugeReaches: boolean;
  /** The free line at the point's level. */
  readonly free: ScanVec;
  /** Where the rod touches the height of contour. */
  readonly contact: ScanVec | null;
  readonly fits: string | null;
  readonly fitsText: string;
  readonly belowSurveyLineMm: Mm | null;
  readonly convergenceDeg: Degrees | null;
  readonly depthAtReferenceMm: Mm;
  readonly tooCloseToCall: boolean;
  /** Room to the opposing teeth; null: not known there; missing: no opposing scan. */
  readonly clearanceMm?: Mm | null;
}

/** The opposing scan as it lies over a cast. */
export interface OpposingInfo {
  /** Id of the open bite scan that it was laid by; null: it shares the frame of the cast. */
  readonly biteId: string | null;
  /** The open cast that it is. */
  readonly id: string;
  readonly file: string;
  readonly coveredShare: number;
  readonly bite: { readonly onCastRmsMm: Mm; readonly onOpposingRmsMm: Mm } | null;
  readonly room: readonly { readonly tooth: Fdi; readonly leastMm: Mm | null; readonly mesialMm: Mm | null; readonly middleMm: Mm | null; readonly distalMm: Mm | null }[];
}

/** What lies over a cast; where nothing does, the file that its case keeps all the same, which could not be laid. */
export interface OpposingTold {
  readonly opposing: OpposingInfo | null;
  readonly kept?: string | null;
}

/** The occlusal plane over the teeth, against the reference orientation of now. */
export interface PlaneOffer {
  readonly up: ScanVec;
  readonly front: ScanVec;
  readonly anteriorDeg: Degrees;
  readonly rightDeg: Degrees;
  readonly anteriorErrorDeg: Degrees;
  readonly rightErrorDeg: Degrees;
  readonly teeth: number;
  readonly used: number;
  /** True where it is not known well enough and a person should set it. */
  readonly ask: boolean;
}

export interface Place {
  readonly point: ScanVec;
  readonly triangle: number;
  readonly depthMm: Mm;
  readonly gaugeMm: Mm;
  readonly belowSurveyLineMm: Mm | null;
  readonly convergenceDeg: Degrees | null;
  readonly depthAtReferenceMm: Mm;
  readonly flags: number;
}

/** A point of a section: `s` along its horizontal direction, `h` along the axis [mm from its origin]. */
export type SectionPoint = readonly [s: number, h: number];

export interface Profile {
  readonly direction: ScanVec;
  readonly origin: ScanVec;
  readonly polylines: readonly (readonly SectionPoint[])[];
  readonly rod: { readonly s: number; readonly top: number; readonly contact: SectionPoint | null };
  readonly place: SectionPoint;
  readonly surveyLine: SectionPoint | null;
  readonly depthMm: Mm;
  readonly depthInSectionMm: Mm;
  readonly gauge: { readonly mm: Mm; readonly point: SectionPoint } | null;
  readonly belowSurveyLineMm: Mm | null;
  readonly convergenceDeg: Degrees | null;
}

/** A place on the surface: a point and the triangle it lies on. */
export interface Spot {
  readonly point: ScanVec;
  readonly triangle: number;
}

export type Seat = { readonly place: Place; readonly why: null } | { readonly place: null; readonly why: string };

/** An FDI number (ISO 3950). */
export type Fdi = number;

/** One tooth found on the cast. */
export interface FoundTooth {
  readonly tooth: Fdi;
  /** The gingival margin, closed: the last point joins the first. */
  readonly margin: readonly ScanVec[];
  /** Over the middle of the crown, at its height. */
  readonly top: ScanVec;
  /** A place on its surface near the middle of the top. */
  readonly on: ScanVec;
  /** Along the tooth to occlusal. */
  readonly axis: ScanVec;
  readonly widthMm: Mm;
  readonly depthMm: Mm;
  readonly facialHeightMm: Mm;
  readonly lingualHeightMm: Mm;
  /** How far ahead the tooth lay of the next label, 0 to 1; null: not known. */
  readonly certainty: number | null;
}

export interface FoundSpace {
  readonly missing: readonly Fdi[];
  readonly right: Fdi | null;
  readonly left: Fdi | null;
  readonly lengthMm: Mm;
  readonly closed: boolean;
  readonly crest: readonly ScanVec[];
  readonly positions: readonly { readonly tooth: Fdi; readonly at: ScanVec }[];
}

export interface KennedyInfo {
  readonly title: string;
  readonly text: string | null;
  readonly reasons: readonly { readonly rule: number; readonly says: string; readonly text: Pieces }[];
  readonly questions: readonly KennedyQuestion[];
}

/** What is not known and would change the class. */
export interface KennedyQuestion {
  readonly asks: "abutment" | "replaced" | "closed";
  /** One answer is for all of them. */
  readonly places: readonly Fdi[];
  readonly text: Pieces;
  readonly assumed: boolean;
  readonly otherwise: string;
}

export interface TeethInfo {
  readonly jaw: Jaw;
  readonly missing: readonly Fdi[];
  readonly teeth: readonly FoundTooth[];
  readonly spaces: readonly FoundSpace[];
  readonly remarks: readonly Pieces[];
  /** What should be looked at before labels and numbers are trusted. */
  readonly warnings: readonly Problem[];
  /** Why no teeth were told. */
  readonly problem: Problem | null;
  readonly kennedy: KennedyInfo;
}

export interface ToothPoint {
  readonly tooth: Fdi;
  readonly point: ScanVec;
}

/** What a person says of the teeth. */
export interface TeethSaid {
  readonly missing: readonly Fdi[];
  /** One place on each tooth that was pointed at. */
  readonly points: readonly ToothPoint[];
  /** Places fixed as a tooth, or as gum (0), as where a margin was pulled to. */
  readonly pins: readonly Pin[];
  readonly chart: ChartSaid;
}

export interface Pin {
  readonly tooth: Fdi;
  readonly point: ScanVec;
  readonly radiusMm: Mm;
}

export const THIRDS = ["mesiofacial", "midfacial", "distofacial", "mesiolingual", "midlingual", "distolingual"] as const;
export type Zone = (typeof THIRDS)[number] | "mesial" | "distal";

/** The deepest place of one zone of a crown that a gauge can be held to. */
export interface ZoneDepth {
  readonly zone: Zone;
  /** A deeper reading of the zone where no gauge reaches; 0: there is none. */
  readonly hiddenMm: Mm;
  /** null: no undercut. */
  readonly reading: Reading | null;
  readonly triangle?: number;
  readonly fromMarginMm?: Mm | null;
  readonly overMarginMm?: Mm | null;
}

export interface ToothDepths {
  readonly tooth: Fdi;
  readonly zones: readonly ZoneDepth[];
}
