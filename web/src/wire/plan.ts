import type { Jaw } from "../values/tilt";
import type { Pieces } from "../values/tooth-number";
import type { TorusSite } from "../values/chart";
import type { Mm } from "../values/units";
import type { ScanVec } from "../values/vec";
import type { ArmsTold, ClaspPreparation, Finding, Told } from "./abutments";
import type { Cut, Preparation } from "./preparation";
import type { Fdi } from "./types";

/** The plan of a denture, as docs/schema/plan.schema.json has it; curves lie on the cast. */

export interface PlanLine {
  readonly closed: boolean;
  readonly points: readonly ScanVec[];
}

export const REST_KINDS = ["occlusal", "extended", "cingulum", "incisal"] as const;
export type RestKind = (typeof REST_KINDS)[number];
export type RestSide = "mesial" | "distal" | "lingual";

export const UPPER_CONNECTORS = ["palatal-strap", "anterior-posterior-strap", "palatal-plate", "u-shaped"] as const;
export const LOWER_CONNECTORS = ["lingual-bar", "sublingual-bar", "lingual-plate"] as const;
export type ConnectorKind = (typeof UPPER_CONNECTORS)[number] | (typeof LOWER_CONNECTORS)[number];

export interface PlannedRest {
  readonly tooth: Fdi;
  readonly kind: RestKind;
  readonly side: RestSide;
  readonly outline: PlanLine;
  readonly point: ScanVec;
  readonly lengthMm: Mm;
  readonly widthMm: Mm;
  readonly depthMm: Mm;
  readonly because: string;
}

export interface PlannedPlate {
  readonly tooth: Fdi;
  readonly side: "mesial" | "distal";
  readonly line: PlanLine;
  readonly wantedHeightMm: Mm;
  readonly heightMm: Mm;
}

export interface PlannedClasp {
  readonly tooth: Fdi;
  readonly side: string;
  readonly family: string;
  readonly name: string;
  readonly answer: string;
  readonly approach: "circumferential" | "bar";
  readonly surface: string;
  readonly gaugeMm: Mm;
  readonly material: string;
  readonly retentive: PlanLine | null;
  readonly reciprocal: PlanLine | null;
  readonly tip: ScanVec | null;
  /** Whether a person shaped its retentive arm. */
  readonly byHand: boolean;
  readonly chosen: boolean;
  readonly warnings: readonly string[];
  readonly preparations: readonly ClaspPreparation[];
}

export interface PlannedMinor {
  readonly tooth: Fdi;
  readonly side: string;
  readonly line: PlanLine;
  readonly lengthMm: Mm;
}

export interface PlannedConnector {
  readonly kind: ConnectorKind;
  readonly outline: PlanLine;
  readonly opening: PlanLine | null;
  readonly towardsTeeth: readonly PlanLine[];
  readonly areaMm2: number;
  readonly leastWidthMm: Mm;
  readonly room: Told;
  readonly because: string;
  readonly chosen: boolean;
}

export interface PlannedBase {
  readonly missing: readonly Fdi[];
  readonly freeEnd: boolean;
  readonly teeth: readonly { readonly tooth: Fdi; readonly point: ScanVec }[];
  readonly outline: PlanLine;
  readonly areaMm2: number;
  readonly connector: PlanLine;
  readonly finishLine: PlanLine;
  readonly tissueStop: ScanVec | null;
}

/** A rule that the plan meets or breaks. */
export type PlanFinding = Omit<Finding, "otherwise" | "because"> & {
  /** The step of the mouth preparation that puts it right, and what is read then; null: it stays open. */
  readonly putRight: { readonly step: number; readonly after: Told } | null;
};

export interface Plan {
  readonly jaw: Jaw;
  readonly kennedy: string;
  readonly axis: ScanVec;
  readonly rulebook: { readonly title: string; readonly hash: string };
  readonly replaced: readonly Fdi[];
  readonly rests: readonly PlannedRest[];
  readonly guidingPlates: readonly PlannedPlate[];
  readonly clasps: readonly PlannedClasp[];
  readonly minorConnectors: readonly PlannedMinor[];
  readonly majorConnector: PlannedConnector | null;
  readonly bases: readonly PlannedBase[];
  readonly fulcrum: { readonly right: Fdi; readonly left: Fdi; readonly from: ScanVec; readonly to: ScanVec } | null;
  readonly indirectRetainers: readonly { readonly tooth: Fdi; readonly side: string; readonly distanceMm: Mm; readonly ratio: number }[];
  readonly tori: readonly { readonly site: TorusSite; readonly edge: PlanLine | null; readonly roomMm: Mm | null }[];
  readonly findings: readonly PlanFinding[];
  readonly questionPieces: readonly Pieces[];
  readonly preparation: Preparation;
}

/** The plan with its drawing to scale, an SVG document, and the pictures of its cuts. */
export interface PlanSheet {
  readonly plan: Plan;
  readonly drawing: string;
  readonly cuts: readonly Cut[];
}

/** What a person chose instead of what is proposed, as docs/schema/choices.schema.json has it; teeth by FDI number. */
export interface ChoicesSaid {
  readonly rests: Readonly<Record<string, { readonly kind: RestKind; readonly side: RestSide }>>;
  readonly clasps: Readonly<Record<string, string>>;
  readonly connector?: ConnectorKind;
  readonly notUsed: readonly Fdi[];
  readonly moves: readonly BorderMove[];
  /** Retentive arms shaped by hand, by row of the ledger. */
  readonly arms?: ArmsTold;
  /** Indirect retainers by tooth: a rest adds one, "none" takes the proposed one away. */
  readonly indirect?: Readonly<Record<string, { readonly kind: RestKind; readonly side: RestSide } | "none">>;
}

/** A place of a border that was taken hold of, and where it was let go. */
export interface BorderMove {
  readonly from: ScanVec;
  readonly to: ScanVec;
}

/** The name of a part in the list and on the cast. */
export const partName = (kind: string, tooth: Fdi | string, side?: string): string => [kind, tooth, ...(side ? [side] : [])].join(" ");
