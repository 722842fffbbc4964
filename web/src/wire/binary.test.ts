import { describe, expect, it } from "vitest";
import { decodeMesh } from "./mesh";
import { curvePoints, decodeSurvey } from "./survey-frame";

// Truth: docs/protocol.md, written out byte by byte here and not by the code under test.
function meshBytes(): ArrayBuffer {
  const bytes = new ArrayBuffer(16 + 12 * 3 + 12 + 1);
  const view = new DataView(bytes);
  [0x52, 0x57, 0x4d, 0x31].forEach((byte, i) => view.setUint8(i, byte)); // "RWM1"
  view.setUint32(4, 3, true);
  view.setUint32(8, 1, true);
  [0, 0, 0, 1.5, 0, 0, 0, -2.25, 0].forEach((v, i) => view.setFloat32(16 + 4 * i, v, true));
  [0, 1, 2].forEach((v, i) => view.setUint32(52 + 4 * i, v, true));
  view.setUint8(64, 1);
  return bytes;
}

function surveyBytes(): ArrayBuffer {
  const head = JSON.stringify({ seq: 7, tilt: [1, 2], vertices: 5, points: 2, curves: [{ kind: "mark", gaugeMm: 0.25, from: 1, count: 1, closed: false, lengthMm: 0 }] });
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

describe("the binary mesh", () => {
  it("is read as the protocol writes it", () => {
    const mesh = decodeMesh(meshBytes());
    expect([...mesh.positions]).toEqual([0, 0, 0, 1.5, 0, 0, 0, -2.25, 0]);
    expect([...mesh.corners]).toEqual([0, 1, 2]);
    expect([...mesh.base]).toEqual([1]);
  });
  it("is refused when cut off, wrongly begun, or naming a vertex it does not have", () => {
    expect(() => decodeMesh(meshBytes().slice(0, 60))).toThrow(/60 bytes.*need 65/);
    expect(() => decodeMesh(new ArrayBuffer(4))).toThrow(/16-byte head/);
    expect(() => decodeMesh(surveyBytes())).toThrow(/not with RWM1/);
    const wrong = meshBytes();
    new DataView(wrong).setUint32(52, 9, true);
    expect(() => decodeMesh(wrong)).toThrow(/corner 0 names vertex 9 of 3/);
  });
});

describe("the binary survey", () => {
  it("is read as the protocol writes it", () => {
    const survey = decodeSurvey(surveyBytes());
    expect(survey.head.seq).toBe(7);
    expect([...survey.depth]).toEqual([0, 0.25, 0.5, 4, 0]);
    expect([...survey.flags]).toEqual([0, 0, 2, 1, 8]);
    expect([...curvePoints(survey, survey.head.curves[0]!)]).toEqual([4, 5, 6]);
  });
  it("is refused when its sizes do not agree", () => {
    expect(() => decodeSurvey(surveyBytes().slice(0, -4))).toThrow(/5 vertices and 2 points need/);
    expect(() => decodeSurvey(meshBytes())).toThrow(/not with RWS1/);
    const wrong = surveyBytes();
    new DataView(wrong).setUint32(4, 1 << 30, true);
    expect(() => decodeSurvey(wrong)).toThrow(/head of 1073741824 bytes/);
  });
});
