import { chartDocument } from "../values/chart";
import type { Jaw, Tilt } from "../values/tilt";
import type { Notation } from "../values/tooth-number";
import type { CaseCard, CaseOf, OpenedCase, Order, Paper } from "./cases";
import type { ChoicesSaid, PlanSheet } from "./plan";
import type { NamedChoices, PlansCompared } from "./comparison";
import type { AbutmentSheet, AnswersSaid, ArmsTold } from "./abutments";
import { type CastMesh, decodeMesh } from "./mesh";
import type { InTheWaySaid, PathFound, PathMap, PathsCompared, SearchListener } from "./path";
import type { ScanVec } from "../values/vec";
import type { CarriedOver, Recovered, Tripod } from "./tripod";
import type { CastInfo, CastList, Fdi, FrameChoice, OpposingTold, PlaneOffer, Problem, TeethInfo, TeethSaid } from "./types";

/** An answer that was refused: what happened, and what to do. */
export class Refused extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
    this.name = "Refused";
  }
}

const GONE: Problem = {
  code: "server.gone",
  message: "The Rodwork program does not answer.",
  advice: "Start it again with ./rodwork and open the address it prints.",
};

/** A line of the answer to a search; one of these. */
interface SearchLine {
  readonly progress?: { readonly what: string; readonly share: number };
  readonly coarse?: PathMap;
  readonly found?: PathFound;
  readonly problem?: Problem;
}

/** The lines of an answer, each as soon as it is here. */
async function* lines(answer: Response): AsyncGenerator<string> {
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (;;) {
    const piece = await reader?.read();
    if (!piece || piece.done) break;
    const whole = (rest + piece.value).split("\n");
    rest = whole.pop() ?? "";
    yield* whole;
  }
  if (rest) yield rest;
}

export const LENGTH_UNITS = ["mm", "cm", "m", "in"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Pages of the server to read. */
export type HelpPage = "rules" | "tutorial";

export interface PrescriptionSaid {
  readonly tilt: Tilt;
  readonly answers: AnswersSaid;
  readonly choices: ChoicesSaid;
  readonly order: Order;
  readonly paper: Paper;
  /** Of the teeth on the pages; the JSON keeps FDI. */
  readonly notation: Notation;
  readonly case: CaseOf | null;
}

/** What a case keeps of the bench. */
export interface CaseWork {
  readonly cast: string;
  /** The revision that the work went on from; null makes the case. */
  readonly on: number | null;
  readonly bench: object;
  /** [anterior, right], degrees. */
  readonly tilt: readonly [number, number];
  readonly choices: ChoicesSaid;
  readonly answers: AnswersSaid;
}

/** The HTTP half of docs/protocol.md. Every call either gives what it names or throws {@link Refused}. */
export class Api {
  constructor(
    readonly origin: string,
    readonly token: string,
  ) {}

  casts(): Promise<CastList> {
    return this.json("GET", "api/casts");
  }

  openDemo(jaw: Jaw): Promise<CastInfo> {
    return this.json("POST", `api/casts/demo/${jaw}`);
  }

  openFile(name: string, bytes: Blob, as: { jaw?: Jaw; unit?: LengthUnit } = {}): Promise<CastInfo> {
    const query = new URLSearchParams({ name, ...as });
    return this.json("POST", `api/casts?${query.toString()}`, bytes);
  }

  cast(id: string): Promise<CastInfo> {
    return this.json("GET", `api/casts/${encodeURIComponent(id)}`);
  }

  setFrame(id: string, choice: FrameChoice): Promise<CastInfo> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/frame`, JSON.stringify(choice));
  }

  async close(id: string): Promise<void> {
    await this.send("DELETE", `api/casts/${encodeURIComponent(id)}`);
  }

  async mesh(id: string): Promise<CastMesh> {
    const answer = await this.send("GET", `api/casts/${encodeURIComponent(id)}/mesh`);
    return decodeMesh(await answer.arrayBuffer());
  }

  /** The same cast with fewer triangles, for the picture while the tilt moves. */
  async thinned(id: string): Promise<CastMesh> {
    const answer = await this.send("GET", `api/casts/${encodeURIComponent(id)}/mesh?thinned=true`);
    return decodeMesh(await answer.arrayBuffer());
  }

  /** Finds the teeth of a cast from what a person says of them. */
  teeth(id: string, jaw: Jaw, said: TeethSaid): Promise<TeethInfo> {
    const chart = chartDocument(jaw, said.missing, said.chart);
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/teeth`, JSON.stringify({ ...said, chart }));
  }

  /** The FDI number of each triangle, 0 for gum, as the teeth were last found. */
  async toothLabels(id: string): Promise<Uint8Array> {
    const answer = await this.send("GET", `api/casts/${encodeURIComponent(id)}/teeth/labels`);
    return new Uint8Array(await answer.arrayBuffer());
  }

  /** The number that a tooth at a place most likely has. */
  async toothNumber(id: string, point: ScanVec): Promise<Fdi> {
    return (await this.json<{ tooth: Fdi }>("POST", `api/casts/${encodeURIComponent(id)}/teeth/number`, JSON.stringify({ point }))).tooth;
  }

  /** Tries every tilt. The signal ends the search, here and in the program; then null. */
  async path(id: string, inTheWay: InTheWaySaid, listener: SearchListener, signal: AbortSignal): Promise<PathFound | null> {
    try {
      const answer = await this.send("POST", `api/casts/${encodeURIComponent(id)}/path`, JSON.stringify({ inTheWay }), signal);
      for await (const line of lines(answer)) {
        const said = JSON.parse(line) as SearchLine;
        if (said.problem) throw new Refused(said.problem);
        if (said.progress) listener.progress(said.progress.what, said.progress.share);
        if (said.coarse) listener.coarse(said.coarse);
        if (said.found) return said.found;
      }
    } catch (error) {
      if (signal.aborted) return null;
      throw error;
    }
    if (signal.aborted) return null;
    throw new Refused(GONE);
  }

  /** Two tilts side by side, tooth by tooth. */
  comparePaths(id: string, from: Tilt, to: Tilt, inTheWay: InTheWaySaid): Promise<PathsCompared> {
    const body = { from: [from.anterior, from.right], to: [to.anterior, to.right], inTheWay };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/path/compare`, JSON.stringify(body));
  }

  /** The three tripod marks from which a tilt is found again most surely. */
  tripod(id: string, at: Tilt): Promise<Tripod> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/tripod`, JSON.stringify({ tilt: [at.anterior, at.right] }));
  }

  /** The same with one mark moved along its level, to the place nearest to a wanted one. */
  moveTripod(id: string, tripod: Tripod, which: number, to: ScanVec): Promise<Tripod> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/tripod/move`, JSON.stringify({ tripod, which, to }));
  }

  /** A path found again from its three marks, picked on this cast in any order. */
  recover(id: string, tripod: Tripod, points: readonly ScanVec[]): Promise<Recovered> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/recover`, JSON.stringify({ tripod, points }));
  }

  /** A path of another open cast, of which this one is a rescan. */
  carryOver(id: string, first: string, at: Tilt): Promise<CarriedOver> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/recover/rescan`, JSON.stringify({ first, tilt: [at.anterior, at.right] }));
  }

  /** Judges the abutments of a cast whose teeth are known, at a tilt. */
  abutments(id: string, tilt: Tilt, answers: AnswersSaid, arms: ArmsTold): Promise<AbutmentSheet> {
    const body = { tilt: [tilt.anterior, tilt.right], answers, arms };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/abutments`, JSON.stringify(body));
  }

  /** Plans the denture on a cast whose teeth are known, at a tilt, with its drawing. */
  plan(id: string, tilt: Tilt, answers: AnswersSaid, choices: ChoicesSaid): Promise<PlanSheet> {
    const body = { tilt: [tilt.anterior, tilt.right], answers, choices };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/plan`, JSON.stringify(body));
  }

  /** The cast with every cut of the plan's mouth preparation. */
  prepared(id: string, tilt: Tilt, answers: AnswersSaid, choices: ChoicesSaid): Promise<CastInfo> {
    const body = { tilt: [tilt.anterior, tilt.right], answers, choices };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/plan/prepared`, JSON.stringify(body));
  }

  /** Holds plans by different choices against the first of them. */
  comparePlans(id: string, tilt: Tilt, answers: AnswersSaid, plans: readonly NamedChoices[]): Promise<PlansCompared> {
    const body = { tilt: [tilt.anterior, tilt.right], answers, plans };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/plan/compare`, JSON.stringify(body));
  }

  /** A page to read beside the bench, as docs/protocol.md lists them; rules are those that the cast goes by. */
  async helpPage(page: HelpPage, cast: string | null): Promise<Blob> {
    return (await this.send("GET", `help/${page}${cast === null ? "" : `?cast=${encodeURIComponent(cast)}`}`)).blob();
  }

  /** The prescription of what is planned: pages to look at, or a folder for the laboratory; with a case, its new revision. */
  async prescription(id: string, as: "pages" | "folder", said: PrescriptionSaid): Promise<{ readonly file: Blob; readonly revision: number | null }> {
    const { tilt, ...rest } = said;
    const body = JSON.stringify({ ...rest, tilt: [tilt.anterior, tilt.right] });
    const answer = await this.send("POST", `api/casts/${encodeURIComponent(id)}/prescription/${as}`, body);
    const revision = answer.headers.get("Case-Revision");
    return { file: await answer.blob(), revision: revision === null ? null : Number(revision) };
  }

  /** Each scan of each case that is kept. */
  async cases(): Promise<readonly CaseCard[]> {
    return (await this.json<{ cases: readonly CaseCard[] }>("GET", "api/cases")).cases;
  }

  /** Saves the work on a cast in a case; answered once it is on the disk. */
  saveCase(code: string, work: CaseWork): Promise<CaseOf> {
    return this.json("PUT", `api/cases/${encodeURIComponent(code)}`, JSON.stringify(work));
  }

  openCase({ code, jaw }: CaseCard): Promise<OpenedCase> {
    return this.json("POST", `api/cases/${encodeURIComponent(code)}/open${jaw ? `?jaw=${jaw}` : ""}`);
  }

  /** The opposing scan of a cast, as it was last laid. */
  opposing(id: string): Promise<OpposingTold> {
    return this.json("GET", `api/casts/${encodeURIComponent(id)}/opposing`);
  }

  /** Lays another open cast over a cast: in its frame, or as a scan of the bite shows them. */
  setOpposing(id: string, opposing: string | null, bite: string | null): Promise<OpposingTold> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/opposing`, JSON.stringify({ opposing, bite }));
  }

  /** The room over each vertex [mm], NaN where it is not known. */
  async clearance(id: string): Promise<Float32Array> {
    const answer = await this.send("GET", `api/casts/${encodeURIComponent(id)}/opposing/clearance`);
    return new Float32Array(await answer.arrayBuffer());
  }

  /** The occlusal plane over the teeth last found, or through three points. */
  planeOffer(id: string, points: readonly ScanVec[] | null): Promise<PlaneOffer> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/teeth/plane`, JSON.stringify({ points }));
  }

  surveyAddress(id: string): string {
    const address = new URL(`api/casts/${encodeURIComponent(id)}/survey`, this.origin);
    address.protocol = address.protocol.replace("http", "ws");
    address.searchParams.set("token", this.token);
    return address.href;
  }

  private async json<T>(method: string, path: string, body?: BodyInit): Promise<T> {
    const answer = await this.send(method, path, body);
    return (await answer.json()) as T;
  }

  private async send(method: string, path: string, body?: BodyInit, signal?: AbortSignal): Promise<Response> {
    let answer: Response;
    try {
      answer = await fetch(new URL(path, this.origin), {
        method,
        headers: { Authorization: `Bearer ${this.token}` },
        ...(body === undefined ? {} : { body }),
        ...(signal === undefined ? {} : { signal }),
      });
    } catch {
      throw new Refused(GONE);
    }
    if (!answer.ok) throw new Refused(await problemOf(answer));
    return answer;
  }
}

async function problemOf(answer: Response): Promise<Problem> {
  try {
    const said = (await answer.json()) as Partial<Problem>;
    if (said.code && said.message) return { advice: "", ...said, code: said.code, message: said.message };
  } catch {
    // Not a problem in our own form: told below.
  }
  return {
    code: `http.${answer.status}`,
    message: `The program answered ${answer.status} ${answer.statusText} without a reason.`,
    advice: answer.status === 401 || answer.status === 403 ? "Open the address that ./rodwork prints; it carries the key." : "Try again.",
  };
}
