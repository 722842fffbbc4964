import { describe, expect, it } from "vitest";
import { decodeMesh, fingerprint } from "./mesh";

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
    expect(() => decodeMesh(new ArrayBuffer(64))).toThrow(/not with RWM1/);
    const wrong = meshBytes();
    new DataView(wrong).setUint32(52, 9, true);
    expect(() => decodeMesh(wrong)).toThrow(/corner 0 names vertex 9 of 3/);
  });
});

describe("the fingerprint of a cast", () => {
  it("is the same for the same surface and changes with one vertex", () => {
    const mesh = decodeMesh(meshBytes());
    expect(fingerprint(decodeMesh(meshBytes()))).toBe(fingerprint(mesh));
    mesh.positions[4] = 0.001;
    expect(fingerprint(mesh)).not.toBe(fingerprint(decodeMesh(meshBytes())));
  });
});
