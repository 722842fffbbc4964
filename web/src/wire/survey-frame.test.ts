import { describe, expect, it } from "vitest";
import { curvePoints, decodeSurvey } from "./survey-frame";

// Truth: docs/protocol.md, written out byte by byte here and not by the code under test.
function surveyBytes(): ArrayBuffer {
  const head = JSON.stringify({ seq: 7, tilt: [1, 2], vertices: 5, flags: 5, points: 2, curves: [{ kind: "mark", gaugeMm: 0.25, from: 1, count: 1, closed: false, lengthMm: 0 }] });
  const json = new TextEncoder().encode(head.padEnd((head.length + 3) & ~3));
  const bytes = new ArrayBuffer(8 + json.length + 20 + 8 + 24);
  const view = new DataView(bytes);
  [0x52, 0x57, 0x53, 0x31].forEach((byte, i) => view.setUint8(i, byte)); // "RWS1"
  view.setUint32(4, json.length, true);
  new Uint8Array(bytes, 8).set(json);
  const at = 8 + json.length;
  [0, 0.25, 0.5, 4, 0].forEach((v, i) => view.setFloat32(at + 4 * i, v, true));
  [0, 0, 2, 1, 8].forEach((v, i) => view.setUint8(at + 20 + i, v));
  [1, 2, 3, 4, 5, 6].forEach((v, i) => view.setFloat32(at + 28 + 4 * i, v, true));
  return bytes;
}

describe("the binary survey", () => {
  it("is read as the protocol writes it", () => {
    const survey = decodeSurvey(surveyBytes());
    expect(survey.head.seq).toBe(7);
    expect([...survey.depth]).toEqual([0, 0.25, 0.5, 4, 0]);
    expect([...survey.flags]).toEqual([0, 0, 2, 1, 8]);
    expect([...curvePoints(survey, survey.head.curves[0]!)]).toEqual([4, 5, 6]);
  });
  it("is refused when its sizes do not agree", () => {
    expect(() => decodeSurvey(surveyBytes().slice(0, -4))).toThrow(/5 vertices, 5 flags and 2 points need/);
    expect(() => decodeSurvey(new ArrayBuffer(64))).toThrow(/not with RWS1/);
    const wrong = surveyBytes();
    new DataView(wrong).setUint32(4, 1 << 30, true);
    expect(() => decodeSurvey(wrong)).toThrow(/head of 1073741824 bytes/);
  });
});
