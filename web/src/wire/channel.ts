import type { StripSection } from "./strip";
import type { Tilt } from "../values/tilt";
import type { Mm } from "../values/units";
import { Newest } from "./newest";
import { decodeSurvey, type SurveyFrame } from "./survey-frame";
import type { Fdi, Problem, Profile, Reading, Seat, Spot, ToothDepths, Zone } from "./types";

export interface ChannelListener {
  surveyed(frame: SurveyFrame): void;
  refused(problem: Problem): void;
  /** True when the line opened, false when it broke (it is tried again by itself). */
  connected(open: boolean): void;
}

interface Question {
  readonly seq: number;
  readonly text: string;
  readonly settle: (answer: unknown) => void;
}

const KINDS = ["survey", "glimpse", "read", "profile", "seat", "tooth", "placed", "strip"] as const;
type Kind = (typeof KINDS)[number];

const RETRY_FIRST_MS = 300;
const RETRY_MOST_MS = 5000;

/**
 * The WebSocket half of docs/protocol.md, for one cast. Each kind of question has its own lane with one in flight; of the
 * waiting ones only the newest of each key is kept. A question that was overtaken is answered with null.
 */
export class SurveyChannel {
  private readonly lanes = new Map<Kind, Newest<string, Question>>();
  private socket: WebSocket | null = null;
  private seq = 0;
  private retryMs = RETRY_FIRST_MS;
  private retry: ReturnType<typeof setTimeout> | undefined;
  private closed = false;

  constructor(
    private readonly address: string,
    private readonly listener: ChannelListener,
  ) {
    for (const kind of KINDS) {
      this.lanes.set(
        kind,
        new Newest(
          (question) => this.socket?.send(question.text),
          (question) => question.settle(null),
        ),
      );
    }
    this.open();
  }

  /** True while a survey that was asked for has not come yet. */
  get surveying(): boolean {
    return !this.lane("survey").idle;
  }

  survey({ anterior, right }: Tilt, gauges: readonly Mm[]): void {
    this.lane("glimpse").drop(); // the server answers the newest alone
    void this.ask("survey", "survey", { tilt: [anterior, right], gauges });
  }

  /**
   * Asks for the depths of the thinned cast, for a picture that moves. An exact survey on its way is given up.
   *
   * @returns when it came, was overtaken or was refused
   */
  glimpse({ anterior, right }: Tilt, gauges: readonly Mm[]): Promise<unknown> {
    this.lane("survey").drop();
    return this.ask("glimpse", "glimpse", { tilt: [anterior, right], gauges, thinned: true }, "survey");
  }

  read(key: string, spot: Spot, gauge: Mm | null): Promise<Reading | null> {
    return this.ask<{ reading: Reading }>("read", key, { ...spot, gauge }).then((answer) => answer?.reading ?? null);
  }

  profile(key: string, spot: Spot, gauge: Mm | null): Promise<Profile | null> {
    return this.ask<{ profile: Profile }>("profile", key, { ...spot, gauge }).then((answer) => answer?.profile ?? null);
  }

  seat(key: string, spot: Spot, gauge: Mm): Promise<Seat | null> {
    return this.ask<Seat>("seat", key, { ...spot, gauge });
  }

  /** The depth of each zone of a tooth at the path of the newest survey. */
  tooth(tooth: Fdi): Promise<ToothDepths | null> {
    return this.ask<{ depths: ToothDepths }>("tooth", "tooth", { tooth }).then((answer) => answer?.depths ?? null);
  }

  /** The mark of a gauge at a named place of a tooth. */
  placed(tooth: Fdi, zone: Zone, gauge: Mm): Promise<Seat | null> {
    return this.ask<Seat>("placed", `${tooth} ${zone} ${gauge}`, { tooth, zone, gauge });
  }

  /** The sections of the parallel strip at a tilt. */
  strip({ anterior, right }: Tilt): Promise<readonly StripSection[] | null> {
    return this.ask<{ strip: readonly StripSection[] }>("strip", "strip", { tilt: [anterior, right] }).then((answer) => answer?.strip ?? null);
  }

  close(): void {
    this.closed = true;
    clearTimeout(this.retry);
    for (const lane of this.lanes.values()) lane.pause();
    this.socket?.close();
  }

  private lane(kind: Kind): Newest<string, Question> {
    return this.lanes.get(kind)!;
  }

  private ask<T>(lane: Kind, key: string, body: object, kind: Exclude<Kind, "glimpse"> | null = null): Promise<T | null> {
    const seq = ++this.seq;
    return new Promise((resolve) => {
      const settle = (answer: unknown): void => resolve(answer as T | null);
      this.lane(lane).want(key, { seq, text: JSON.stringify({ kind: kind ?? lane, seq, ...body }), settle });
    });
  }

  private open(): void {
    const socket = new WebSocket(this.address);
    socket.binaryType = "arraybuffer";
    this.socket = socket;
    socket.onopen = () => {
      this.retryMs = RETRY_FIRST_MS;
      this.listener.connected(true);
      this.lane("survey").resume(); // places can be read once the first survey is there
    };
    socket.onmessage = ({ data }: MessageEvent<string | ArrayBuffer>) => this.hear(data);
    socket.onclose = () => {
      this.lane("glimpse").drop();
      for (const lane of this.lanes.values()) lane.pause();
      if (this.closed) return;
      this.listener.connected(false);
      this.retry = setTimeout(() => this.open(), this.retryMs);
      this.retryMs = Math.min(RETRY_MOST_MS, 2 * this.retryMs);
    };
  }

  private hear(data: string | ArrayBuffer): void {
    if (typeof data !== "string") {
      const frame = decodeSurvey(data);
      const wanted = this.answer(frame.head.exact ? "survey" : "glimpse", frame.head.seq, frame);
      for (const lane of this.lanes.values()) lane.resume();
      if (wanted) this.listener.surveyed(frame);
      return;
    }
    const said = JSON.parse(data) as { kind: string; seq: number; problem?: Problem };
    if (said.kind === "problem" && said.problem) {
      const kind = KINDS.find((each) => this.lane(each).inFlight?.seq === said.seq);
      if (kind) this.answer(kind, said.seq, null);
      this.listener.refused(said.problem);
      return;
    }
    const kind = said.kind === "reading" ? "read" : (said.kind as Kind);
    if (this.lanes.has(kind)) this.answer(kind, said.seq, said);
  }

  /** Whether the answer was still waited for. */
  private answer(kind: Kind, seq: number, answer: unknown): boolean {
    const lane = this.lane(kind);
    const question = lane.inFlight;
    // An answer to a question of before the line broke: the question was asked again under the same number, or dropped.
    if (question?.seq !== seq) return false;
    lane.done();
    question.settle(answer);
    return true;
  }
}
