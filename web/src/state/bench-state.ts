import type { UnitChoice } from "../values/units";
import type { CastMesh } from "../wire/mesh";
import type { StripSection } from "../wire/strip";
import type { SurveyFrame } from "../wire/survey-frame";
import type { CaseCard, CaseOf } from "../wire/cases";
import type { BorderMove } from "../wire/plan";
import type { ScanVec } from "../values/vec";
import type { Notation } from "../values/tooth-number";
import type { CastCard, CastInfo, Fdi, OpposingInfo, Problem, Profile, Reading, Spot, TeethInfo, ToothDepths, ToothPoint } from "../wire/types";
import type { Mm } from "../values/units";
import type { Tilt } from "../values/tilt";
import type { KeptPath, Picking } from "./path-keeping";
import type { Document } from "./document";
import type { Judged } from "./judging";
import type { Compared } from "./comparing";
import type { Planned } from "./planning";
import { ALL_IN_THE_WAY, type InTheWay } from "./searching";
import { type History, NO_HISTORY } from "./history";

export type LookChoice = "system" | "light" | "dark";

/** The rod's place under the pointer: the spot read, whether it was set on a gauge's curve, and what the server read there. */
export interface Carried extends Spot {
  readonly onCurve: boolean;
  readonly reading: Reading | null;
}

/** What the bench is asking a person to do on the cast itself. */
export type Asking = null | "up" | "front" | "plane";

/** What the colours of the cast tell. */
export type Shading = "undercut" | "room";

export const PAGES = ["profile", "arch", "ledger", "plan"] as const;
export type Page = (typeof PAGES)[number];

/** An orientation under a name: the reference, or a pin. */
export interface NamedTilt {
  readonly id: string;
  readonly name: string;
  readonly tilt: Tilt;
}

/** Two casts side by side on the table. */
export interface Beside {
  readonly from: NamedTilt;
  readonly to: NamedTilt;
  /** The cast with the cuts of the mouth preparation, which is the second then; null: it is the same cast. */
  readonly cut: { readonly cast: CastInfo; readonly mesh: CastMesh } | null;
}

export interface BenchState {
  /** The casts that the program keeps open, oldest first. */
  readonly casts: readonly CastCard[];
  readonly cast: CastInfo | null;
  readonly mesh: CastMesh | null;
  /** The same cast with fewer triangles, for surveys that are not exact; null until it is here. */
  readonly thinned: CastMesh | null;
  readonly survey: SurveyFrame | null;
  readonly document: Document | null;
  readonly history: History;
  readonly gauge: Mm | null;
  readonly carried: Carried | null;
  readonly selected: string | null;
  readonly markReadings: ReadonlyMap<string, Reading>;
  readonly profile: Profile | null;
  /** The parallel strip at the newest tilt; empty where the teeth are not known. */
  readonly strip: readonly StripSection[];
  readonly asking: Asking;
  /** Paths kept on the casts of this browser, newest first. */
  readonly keptPaths: readonly KeptPath[];
  /** The tripod marks of another scan, while they are picked on this one. */
  readonly picking: Picking | null;
  /** Two orientations that lie side by side on the table. */
  readonly beside: Beside | null;
  /** A tripod mark while it is dragged. */
  readonly tripodDrag: { readonly which: number; readonly to: ScanVec } | null;
  /** Places clicked so far for the occlusal plane. */
  readonly planePoints: readonly ScanVec[];
  readonly opposing: OpposingInfo | null;
  /** The file of an opposing scan that is kept and could not be laid; null: none. */
  readonly opposingKept: string | null;
  /** Room over each vertex [mm], NaN where it is not known; null without an opposing scan. */
  readonly clearance: Float32Array | null;
  /** True while the opposing scan is laid over the cast. */
  readonly laying: boolean;
  readonly shading: Shading;
  /** The teeth as the server found them from what the document says. */
  readonly teeth: TeethInfo | null;
  /** The tooth of each triangle, 0 for gum. */
  readonly labels: Uint8Array | null;
  /** True while the teeth are looked for. */
  readonly teething: boolean;
  /** The chosen tooth. */
  readonly tooth: Fdi | null;
  readonly toothDepths: ToothDepths | null;
  /** A place pointed at that is no tooth yet, and the number it would have. */
  readonly adding: (Spot & { readonly tooth: Fdi; readonly cuts: ToothPoint | null }) | null;
  /** What the next click on the cast does with the chosen tooth. */
  readonly toothHand: "join" | "cut" | null;
  /** The chosen tooth's margin while it is pulled. */
  readonly pulling: { readonly from: ScanVec; readonly to: ScanVec } | null;
  /** The ledger as it was last judged. */
  readonly judged: Judged | null;
  readonly judging: boolean;
  /** The plan as it was last made. */
  readonly planned: Planned | null;
  readonly planning: boolean;
  /** What a search for the path counts as in the way. */
  readonly inTheWay: InTheWay;
  /** Name of the part of the plan that is spoken of. */
  readonly part: string | null;
  /** The part that was chosen in the list, in the drawing or on the cast. */
  readonly chosenPart: string | null;
  /** The step of the mouth preparation whose cut lies on the cast. */
  readonly step: number | null;
  /** What the plan is held against, as state/comparing.ts names it; null: nothing. */
  readonly against: string | null;
  readonly compared: Compared | null;
  readonly comparing: boolean;
  /** A place of the connector's border while it is dragged. */
  readonly dragging: BorderMove | null;
  /** The case that the work is kept in. */
  readonly caseOf: CaseOf | null;
  readonly kept: "saved" | "saving" | "changed" | "failed";
  readonly cases: readonly CaseCard[];
  /** What is being written for the laboratory. */
  readonly writing: "pages" | "folder" | null;
  /** The row of the ledger that lies open. */
  readonly row: string | null;
  /** The family of that row that is looked at: its arms lie on the cast. null: the one chosen, else the first that has arms. */
  readonly family: string | null;
  /** A place of the cast that the ledger points at. */
  readonly pointed: ScanVec | null;
  /** Which page of the right-hand side lies open. */
  readonly page: Page;
  readonly notation: Notation;
  readonly busy: string | null;
  readonly connected: boolean;
  readonly problem: Problem | null;
  readonly note: string | null;
  /** True while the picture is drawn coarser than the survey, because something moves on a slow screen. */
  readonly coarse: boolean;
  readonly helpOpen: boolean;
  readonly units: UnitChoice;
  readonly look: LookChoice;
}

/** Where a piece of state lives, and so what survives: */
export type Home =
  | "document" // decided by a person; commands and undo; kept for this browser tab
  | "browser" // a habit of this person; kept in this browser
  | "server" // told by the server; asked again after a reload
  | "moment"; // gone on reload, and that is right

/** Every piece of state has its home written down; a missing one does not compile. */
export const HOMES: { readonly [K in keyof BenchState]: Home } = {
  casts: "server",
  cast: "server",
  mesh: "server",
  thinned: "server",
  survey: "server",
  document: "document",
  history: "document",
  gauge: "browser",
  carried: "moment",
  selected: "moment",
  markReadings: "server",
  profile: "server",
  strip: "server",
  asking: "moment",
  keptPaths: "browser",
  picking: "moment",
  beside: "moment",
  tripodDrag: "moment",
  planePoints: "moment",
  opposing: "server",
  opposingKept: "server",
  clearance: "server",
  laying: "moment",
  shading: "moment",
  teeth: "server",
  labels: "server",
  teething: "moment",
  tooth: "moment",
  toothDepths: "server",
  adding: "moment",
  toothHand: "moment",
  pulling: "moment",
  judged: "server",
  judging: "moment",
  planned: "server",
  planning: "moment",
  inTheWay: "moment",
  part: "moment",
  chosenPart: "moment",
  step: "moment",
  against: "moment",
  compared: "server",
  comparing: "moment",
  dragging: "moment",
  caseOf: "document",
  kept: "moment",
  cases: "server",
  writing: "moment",
  row: "moment",
  family: "moment",
  pointed: "moment",
  page: "browser",
  notation: "browser",
  busy: "moment",
  connected: "moment",
  problem: "moment",
  note: "moment",
  coarse: "moment",
  helpOpen: "moment",
  units: "browser",
  look: "browser",
};

export const EMPTY_BENCH: BenchState = {
  casts: [],
  cast: null,
  mesh: null,
  thinned: null,
  survey: null,
  document: null,
  history: NO_HISTORY,
  gauge: null,
  carried: null,
  selected: null,
  markReadings: new Map(),
  profile: null,
  strip: [],
  asking: null,
  keptPaths: [],
  picking: null,
  beside: null,
  tripodDrag: null,
  planePoints: [],
  opposing: null,
  opposingKept: null,
  clearance: null,
  laying: false,
  shading: "undercut",
  teeth: null,
  labels: null,
  teething: false,
  tooth: null,
  toothDepths: null,
  adding: null,
  toothHand: null,
  pulling: null,
  judged: null,
  judging: false,
  planned: null,
  planning: false,
  inTheWay: ALL_IN_THE_WAY,
  part: null,
  chosenPart: null,
  step: null,
  against: null,
  compared: null,
  comparing: false,
  dragging: null,
  caseOf: null,
  kept: "saved",
  cases: [],
  writing: null,
  row: null,
  family: null,
  pointed: null,
  page: "profile",
  notation: "FDI",
  busy: null,
  connected: true,
  problem: null,
  note: null,
  coarse: false,
  helpOpen: false,
  units: "both",
  look: "system",
};
