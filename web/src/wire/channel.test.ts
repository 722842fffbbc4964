import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { tilt } from "../values/tilt";
import { mm } from "../values/units";
import { scan } from "../values/vec";
import { SurveyChannel } from "./channel";
import type { Problem } from "./types";

/** A line whose other end the test holds. */
class Line {
  static last: Line;
  readonly sent: { kind: string; seq: number; tilt?: number[]; thinned?: boolean }[] = [];
  onopen: () => void = () => undefined;
  onmessage: (event: { data: string | ArrayBuffer }) => void = () => undefined;
  onclose: () => void = () => undefined;
  constructor(readonly address: string) {
    Line.last = this;
  }
  send(text: string): void {
    this.sent.push(JSON.parse(text) as Line["sent"][number]);
  }
  close(): void {
    this.onclose();
  }
  survey(seq: number, exact = true): void {
    const head = JSON.stringify({ seq, tilt: [0, 0], exact, vertices: 0, flags: 0, points: 0, curves: [] });
    const json = new TextEncoder().encode(head.padEnd((head.length + 3) & ~3));
    const bytes = new Uint8Array(8 + json.length);
    bytes.set([0x52, 0x57, 0x53, 0x31]);
    new DataView(bytes.buffer).setUint32(4, json.length, true);
    bytes.set(json, 8);
    this.onmessage({ data: bytes.buffer });
  }
}

const SPOT = { point: scan(1, 2, 3), triangle: 4 };

describe("the survey channel", () => {
  const heard: string[] = [];
  const problems: Problem[] = [];
  let channel: SurveyChannel;

  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal("WebSocket", Line);
    heard.length = 0;
    problems.length = 0;
    channel = new SurveyChannel("ws://here", {
      surveyed: (frame) => heard.push(`survey ${frame.head.seq}`),
      refused: (problem) => problems.push(problem),
      connected: (open) => heard.push(open ? "open" : "lost"),
    });
  });
  afterEach(() => {
    channel.close();
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it("lets the newest tilt win", () => {
    Line.last.onopen();
    for (let a = 1; a <= 5; a++) channel.survey(tilt(a, 0), [mm(0.25)]);
    Line.last.survey(Line.last.sent[0]!.seq);
    expect(Line.last.sent.map((said) => said.tilt)).toEqual([[1, 0], [5, 0]]);
    Line.last.survey(Line.last.sent[1]!.seq);
    expect(channel.surveying).toBe(false);
  });

  it("gives an exact survey up for a glimpse, and a glimpse for an exact survey", () => {
    Line.last.onopen();
    channel.survey(tilt(0, 0), [mm(0.25)]);
    Line.last.survey(1);
    channel.survey(tilt(1, 0), [mm(0.25)]);
    void channel.glimpse(tilt(2, 0), [mm(0.25)]);
    expect(Line.last.sent.map((said) => said.thinned ?? false)).toEqual([false, false, true]);
    Line.last.survey(2); // too late
    channel.survey(tilt(3, 0), [mm(0.25)]);
    Line.last.survey(3, false); // too late
    void channel.glimpse(tilt(4, 0), [mm(0.25)]);
    Line.last.survey(5, false);
    expect(heard).toEqual(["open", "survey 1", "survey 5"]);
  });

  it("reads no place before the first survey is there, then answers by its number", async () => {
    Line.last.onopen();
    channel.survey(tilt(0, 0), [mm(0.25)]);
    const first = channel.read("rod", SPOT, null);
    const second = channel.read("rod", SPOT, mm(0.25));
    expect(Line.last.sent).toHaveLength(1);
    await expect(first).resolves.toBeNull(); // overtaken
    Line.last.survey(1);
    const { seq } = Line.last.sent[1]!;
    Line.last.onmessage({ data: JSON.stringify({ kind: "reading", seq: seq + 99, reading: { depthMm: 9 } }) });
    Line.last.onmessage({ data: JSON.stringify({ kind: "reading", seq, reading: { depthMm: 0.25 } }) });
    await expect(second).resolves.toEqual({ depthMm: 0.25 });
  });

  it("goes on after a refusal", async () => {
    Line.last.onopen();
    channel.survey(tilt(0, 0), [mm(0.25)]);
    Line.last.survey(1);
    const seat = channel.seat("mark", SPOT, mm(0.25));
    Line.last.onmessage({ data: JSON.stringify({ kind: "problem", seq: Line.last.sent[1]!.seq, problem: { code: "x", message: "m", advice: "a" } }) });
    await expect(seat).resolves.toBeNull();
    expect(problems).toHaveLength(1);
    void channel.seat("mark", SPOT, mm(0.25));
    expect(Line.last.sent).toHaveLength(3);
  });

  it("opens the line again by itself and asks what was in flight", () => {
    Line.last.onopen();
    channel.survey(tilt(3, 0), [mm(0.25)]);
    const first = Line.last;
    first.onclose();
    vi.advanceTimersByTime(400);
    expect(Line.last).not.toBe(first);
    Line.last.onopen();
    expect(Line.last.sent.map((said) => said.tilt)).toEqual([[3, 0]]);
    expect(heard).toEqual(["open", "lost", "open"]);
  });
});
