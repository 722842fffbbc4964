import { describe, expect, it } from "vitest";
import { Newest } from "./newest";

describe("newest wins", () => {
  const made = (): { sent: string[]; lost: string[]; lane: Newest<string, string> } => {
    const sent: string[] = [];
    const lost: string[] = [];
    return { sent, lost, lane: new Newest<string, string>((r) => sent.push(r), (r) => lost.push(r)) };
  };

  it("has one in flight, and of the waiting ones keeps the newest of each key", () => {
    const { sent, lost, lane } = made();
    lane.resume();
    lane.want("tilt", "1");
    lane.want("tilt", "2");
    lane.want("tilt", "3");
    lane.want("mark", "m");
    expect(sent).toEqual(["1"]);
    expect(lost).toEqual(["2"]);
    lane.done();
    lane.done();
    lane.done();
    expect(sent).toEqual(["1", "3", "m"]);
    expect(lane.idle).toBe(true);
  });

  it("sends nothing until the line is open", () => {
    const { sent, lane } = made();
    lane.want("tilt", "1");
    expect(sent).toEqual([]);
    lane.resume();
    expect(sent).toEqual(["1"]);
  });

  it("asks again what was in flight when the line broke, unless something newer waits", () => {
    const { sent, lost, lane } = made();
    lane.resume();
    lane.want("tilt", "1");
    lane.pause();
    lane.resume();
    expect(sent).toEqual(["1", "1"]);
    lane.want("tilt", "2");
    lane.pause();
    lane.resume();
    expect(sent).toEqual(["1", "1", "2"]);
    expect(lost).toEqual(["1"]);
  });
});
