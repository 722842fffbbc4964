import { chartDocument } from "../values/chart";
import type { Jaw, Tilt } from "../values/tilt";
import type { ChoicesSaid, PlanSheet } from "./plan";
import type { AbutmentSheet, AnswersSaid } from "./abutments";
import { type CastMesh, decodeMesh } from "./mesh";
import type { PathFound, PathMap, PathsCompared } from "./path";
import type { ScanVec } from "../values/vec";
import type { CastInfo, CastList, Fdi, FrameChoice, Problem, TeethInfo, TeethSaid } from "./types";

/** An answer that was refused: what happened, and what to do. */
export class Refused extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
    this.name = "Refused";
  }
}

export const LENGTH_UNITS = ["mm", "cm", "m", "in"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

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

  /** A map of few tilts, made within about a second. */
  async coarsePath(id: string): Promise<PathMap> {
    return (await this.json<{ map: PathMap }>("POST", `api/casts/${encodeURIComponent(id)}/path`, JSON.stringify({ coarse: true }))).map;
  }

  /** Every tilt tried. */
  path(id: string): Promise<PathFound> {
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/path`, "{}");
  }

  /** Two tilts side by side, tooth by tooth. */
  comparePaths(id: string, from: Tilt, to: Tilt): Promise<PathsCompared> {
    const body = { from: [from.anterior, from.right], to: [to.anterior, to.right] };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/path/compare`, JSON.stringify(body));
  }

  /** Judges the abutments of a cast whose teeth are known, at a tilt. */
  abutments(id: string, tilt: Tilt, answers: AnswersSaid): Promise<AbutmentSheet> {
    const body = { tilt: [tilt.anterior, tilt.right], answers };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/abutments`, JSON.stringify(body));
  }

  /** Plans the denture on a cast whose teeth are known, at a tilt, with its drawing. */
  plan(id: string, tilt: Tilt, answers: AnswersSaid, choices: ChoicesSaid): Promise<PlanSheet> {
    const body = { tilt: [tilt.anterior, tilt.right], answers, choices };
    return this.json("POST", `api/casts/${encodeURIComponent(id)}/plan`, JSON.stringify(body));
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

  private async send(method: string, path: string, body?: BodyInit): Promise<Response> {
    let answer: Response;
    try {
      answer = await fetch(new URL(path, this.origin), {
        method,
        headers: { Authorization: `Bearer ${this.token}` },
        ...(body === undefined ? {} : { body }),
      });
    } catch {
      throw new Refused({
        code: "server.gone",
        message: "The Rodwork program does not answer.",
        advice: "Start it again with ./rodwork and open the address it prints.",
      });
    }
    if (!answer.ok) throw new Refused(await problemOf(answer));
    return answer;
  }
}

async function problemOf(answer: Response): Promise<Problem> {
  try {
    const said = (await answer.json()) as Partial<Problem>;
    if (said.code && said.message) return { code: said.code, message: said.message, advice: said.advice ?? "" };
  } catch {
    // Not a problem in our own form: told below.
  }
  return {
    code: `http.${answer.status}`,
    message: `The program answered ${answer.status} ${answer.statusText} without a reason.`,
    advice: answer.status === 401 || answer.status === 403 ? "Open the address that ./rodwork prints; it carries the key." : "Try again.",
  };
}
