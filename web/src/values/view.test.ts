import { describe, expect, it } from "vitest";
import { poseOf, directionToWorld, toWorld, directionToScan, poseMatrix } from "./pose";
import { cross, dot, scan, sub, times, unit, world } from "./vec";
import { alongRod, facing, onScreen, orbit, pan, sideView, zoomAbout } from "./view";

const near12 = (v: number): unknown => expect.closeTo(v, 12);
const near10 = (v: number): unknown => expect.closeTo(v, 10);

// The arch frame (rodwork.anatomy.ArchFrame) in a scan that lies askew: Z occlusal, Y anterior, X = Y × Z.
const Z = unit(scan(0.2, -0.5, 0.8));
const Y = unit(sub(scan(0.1, 0.9, 0.3), times(Z, dot(scan(0.1, 0.9, 0.3), Z))));
const X = cross(Y, Z);
const pose = poseOf(Z, Y, scan(1, 2, 3));

describe("the first look at a cast", () => {
  for (const jaw of ["upper", "lower"] as const) {
    // +X is the patient's left on an upper cast and the patient's right on a lower one.
    const patientsRight = directionToWorld(pose, times(X, jaw === "upper" ? -1 : 1));
    const view = sideView("above", jaw, world(0, 0, 0), 40);

    it(`${jaw}: patient's right on the viewer's left, seen from the occlusal side`, () => {
      expect(dot(view.right, patientsRight)).toBeCloseTo(-1, 12);
      expect(dot(view.back, directionToWorld(pose, Z))).toBeCloseTo(1, 12);
    });
    it(`${jaw}: front ${jaw === "upper" ? "up" : "down"}`, () => {
      expect(dot(view.up, directionToWorld(pose, Y))).toBeCloseTo(jaw === "upper" ? 1 : -1, 12);
    });
    it(`${jaw}: turned, never mirrored`, () => {
      for (const side of ["above", "front", "back", "right", "left"] as const) {
        const { right, up, back } = sideView(side, jaw, world(0, 0, 0), 40);
        expect(dot(cross(right, up), back)).toBeCloseTo(1, 12);
      }
    });
    it(`${jaw}: each side looks at the viewer, the rod upright`, () => {
      const facing = (side: "front" | "back" | "right" | "left"): readonly number[] => sideView(side, jaw, world(0, 0, 0), 40).back;
      expect(facing("front")).toEqual([0, 1, 0].map(near12));
      expect(dot(sideView("right", jaw, world(0, 0, 0), 40).back, patientsRight)).toBeCloseTo(1, 12);
      expect(dot(sideView("left", jaw, world(0, 0, 0), 40).back, patientsRight)).toBeCloseTo(-1, 12);
      expect(dot(sideView("front", jaw, world(0, 0, 0), 40).up, world(0, 0, 1))).toBe(1);
    });
  }
});

describe("the pose", () => {
  it("keeps the axis upright and turns back again", () => {
    const p = unit(scan(0.3, -0.4, 0.86));
    const tilted = poseOf(p, Y, scan(0, 0, 0));
    expect(directionToWorld(tilted, p)).toEqual([0, 0, 1].map(near12));
    expect(directionToScan(tilted, directionToWorld(tilted, X))).toEqual(X.map(near12));
  });
  it("is the same as its matrix", () => {
    const q = scan(7, -3, 2);
    const m = poseMatrix(pose);
    const byMatrix = [0, 1, 2].map((r) => m[r]! * q[0] + m[4 + r]! * q[1] + m[8 + r]! * q[2] + m[12 + r]!);
    expect(toWorld(pose, q)).toEqual(byMatrix.map(near12));
  });
});

describe("looking about", () => {
  const start = orbit(sideView("front", "lower", world(1, 2, 3), 30), 0.4, 0.7);

  it("keeps the rod upright on the screen while orbiting", () => {
    expect(onScreen(start, world(1, 2, 13))[0]).toBeCloseTo(0, 10);
    expect(onScreen(start, world(1, 2, 13))[1]).toBeGreaterThan(0);
  });
  it("never tips past straight above", () => {
    const over = orbit(start, 0, 5);
    expect(over.back[2]).toBeCloseTo(1, 10);
    expect(dot(cross(over.right, over.up), over.back)).toBeCloseTo(1, 10);
  });
  it("zooms about the pointer", () => {
    const place = world(4, -6, 5);
    const [x, y] = onScreen(start, place);
    const near = zoomAbout(start, 2.5, x, y);
    const [nx, ny] = onScreen(near, place);
    expect(nx / near.half).toBeCloseTo(x / start.half, 10);
    expect(ny / near.half).toBeCloseTo(y / start.half, 10);
  });
  it("pans with the hand", () => {
    const place = world(0, 0, 0);
    const [x, y] = onScreen(start, place);
    const [px, py] = onScreen(pan(start, 3, -2), place);
    expect([px - x, py - y]).toEqual([expect.closeTo(3, 10), expect.closeTo(-2, 10)]);
  });
  it("turns to a place from the side that it faces, a little from above", () => {
    const seen = facing(start, world(0, -3, 1), world(4, 5, 6));
    expect(seen.target).toEqual([4, 5, 6]);
    expect(seen.back[0]).toBeCloseTo(0, 10);
    expect(seen.back[1]).toBeLessThan(-0.9);
    expect(seen.back[2]).toBeGreaterThan(0.4);
    expect(dot(seen.right, seen.up)).toBeCloseTo(0, 10);
    expect(dot(cross(seen.right, seen.up), seen.back)).toBeCloseTo(1, 10); // turned, never mirrored
    expect(facing(start, world(0, 0, 1), world(1, 1, 1))).toEqual({ ...start, target: [1, 1, 1] });
  });
  it("looks down the rod where it stands", () => {
    const down = alongRod(start, world(9, 8, 7));
    expect(down.back).toEqual([0, 0, 1].map(near12));
    expect(onScreen(down, world(9, 8, 30))).toEqual([0, 0].map(near10));
  });
});
