import { beforeEach, describe, expect, it } from "vitest";
import { mm } from "../values/units";
import { tilt, totalTilt } from "../values/tilt";
import { scan } from "../values/vec";
import { type Api, Refused } from "../wire/api";
import type { CastInfo, FrameChoice } from "../wire/types";
import { Bench, movedOn, nextName } from "./bench";
import { EMPTY_BENCH, HOMES } from "./bench-state";
import { BrowserKeep } from "./keep";

const INFO = {
  id: "c1",
  name: "cast.stl",
  jaw: "lower",
  triangles: 1,
  vertices: 3,
  frame: null, // no channel is opened
  frameProblem: null,
  gaugesMm: [0.25, 0.5, 0.75],
  limitTiltDeg: 15,
  warnTiltDeg: 10,
  noteTiltDeg: 5,
} as unknown as CastInfo;
const FRAMED = { ...INFO, frame: { x: scan(1, 0, 0), y: scan(0, 1, 0), z: scan(0, 0, 1) } } as unknown as CastInfo;

class Memory implements Storage {
  private readonly map = new Map<string, string>();
  get length(): number {
    return this.map.size;
  }
  clear = (): void => this.map.clear();
  getItem = (key: string): string | null => this.map.get(key) ?? null;
  key = (i: number): string | null => [...this.map.keys()][i] ?? null;
  removeItem = (key: string): void => void this.map.delete(key);
  setItem = (key: string, value: string): void => void this.map.set(key, value);
}

/** A server that opens what it is told to and refuses "broken.stl". */
function server(frames: FrameChoice[] = []): Api {
  const mesh = { positions: new Float32Array(9), corners: new Uint32Array([0, 1, 2]), base: new Uint8Array(1) };
  return {
    openDemo: () => Promise.resolve(INFO),
    openFile: (name: string) =>
      name === "broken.stl"
        ? Promise.reject(new Refused({ code: "read.cut-off", message: "broken.stl ends early.", advice: "Export it again." }))
        : Promise.resolve({ ...INFO, id: name, name }),
    casts: () => Promise.resolve({ casts: [], demo: ["lower", "upper"] }),
    mesh: () => Promise.resolve(mesh),
    setFrame: (_: string, choice: FrameChoice) => {
      frames.push(choice);
      return Promise.resolve({ ...INFO, jaw: choice.jaw });
    },
  } as unknown as Api;
}

let now = 0;
const tab = new Memory();
const browser = new Memory();
const made = (api: Api = server()): Bench => new Bench(api, new BrowserKeep(browser, tab), () => now);

async function withCast(bench: Bench): Promise<Bench> {
  await bench.opening.demo("lower");
  bench.store.set({ cast: FRAMED });
  return bench;
}

beforeEach(() => {
  tab.clear();
  browser.clear();
  now = 0;
});

describe("the tilt", () => {
  it("stops at the limit and says so, until a person lifts it", async () => {
    const bench = await withCast(made());
    bench.setTilt(tilt(20, 0));
    expect(bench.store.get().document?.tilt).toEqual(tilt(15, 0));
    expect(bench.store.get().note).toMatch(/Stopped at 15°/);
    bench.allowPastLimit(true);
    bench.setTilt(tilt(20, 0));
    expect(bench.store.get().document?.tilt).toEqual(tilt(20, 0));
    bench.allowPastLimit(false);
    expect(totalTilt(bench.store.get().document!.tilt)).toBeLessThanOrEqual(15.01);
  });
  it("has no right side while the jaw is unknown", async () => {
    const bench = await withCast(made());
    bench.store.set({ cast: { ...FRAMED, jaw: null } });
    bench.setTilt(tilt(3, 4));
    expect(bench.store.get().document?.tilt).toEqual(tilt(3, 0));
  });
});

describe("a reload", () => {
  it("shows the cast that lay on this tab's table, not the one that another tab opened since", async () => {
    const cards = [{ id: "mine", name: "mine.stl" }, { id: "later", name: "later.stl" }];
    const api = Object.assign(server(), {
      casts: () => Promise.resolve({ casts: cards, demo: ["lower", "upper"] }),
      cast: (id: string) => Promise.resolve({ ...INFO, id }),
    }) as unknown as Api;
    await made(api).opening.show(cards[0] as never);
    const again = made(api);
    await again.opening.start();
    expect(again.store.get().cast?.id).toBe("mine");
    tab.clear();
    const other = made(api);
    await other.opening.start();
    expect(other.store.get().cast?.id).toBe("later");
  });
});

describe("the questions on the cast", () => {
  it("stay open when the jaw is told, and are answered by what they ask for", async () => {
    const bench = await withCast(made());
    bench.store.set({ asking: "front" });
    bench.setFrame({ ...bench.store.get().document!.frame, jaw: "upper" });
    expect(bench.store.get().asking).toBe("front");
    bench.setFrame({ ...bench.store.get().document!.frame, front: scan(0, 1, 0) });
    expect(bench.store.get().asking).toBeNull();
  });
});

describe("undo", () => {
  it("takes back marks, tilt and frame in turn, and does them again", async () => {
    const frames: FrameChoice[] = [];
    const bench = await withCast(made(server(frames)));
    const start = bench.store.get().document;
    bench.setTilt(tilt(2, 0));
    now = 1000;
    bench.leaveMark({ point: scan(1, 2, 3), triangle: 0 }, mm(0.25));
    now = 2000;
    bench.setFrame({ jaw: "upper", up: null, front: null });
    const end = bench.store.get().document;
    for (let i = 0; i < 3; i++) bench.undo();
    expect(bench.store.get().document).toEqual(start);
    bench.undo(); // nothing is left: no harm
    for (let i = 0; i < 3; i++) bench.redo();
    expect(bench.store.get().document).toEqual(end);
    expect(frames.map((frame) => frame.jaw)).toEqual(["upper", "lower", "upper"]);
  });
});

describe("opening", () => {
  it("takes a jump back by itself, however soon it followed another tilt", async () => {
    const bench = await withCast(made());
    bench.setTilt(tilt(3, 0));
    bench.jumpTo(tilt(0, 0));
    bench.jumpTo(tilt(3, 0));
    bench.undo();
    expect(bench.store.get().document?.tilt).toEqual(tilt(0, 0));
    bench.undo();
    expect(bench.store.get().document?.tilt).toEqual(tilt(3, 0));
  });

  it("keeps the cast on the bench when a file is refused, and says why", async () => {
    const bench = await withCast(made());
    const before = bench.store.get();
    await bench.opening.openFile(new File(["x"], "broken.stl"));
    const after = bench.store.get();
    expect(after.problem).toEqual({ code: "read.cut-off", message: "broken.stl ends early.", advice: "Export it again." });
    expect([after.cast, after.mesh, after.document, after.busy]).toEqual([before.cast, before.mesh, before.document, null]);
  });
  it("shows only the cast asked for last", async () => {
    const bench = made();
    await Promise.all([bench.opening.openFile(new File(["x"], "a.stl")), bench.opening.openFile(new File(["x"], "b.stl"))]);
    expect(bench.store.get().cast?.name).toBe("b.stl");
  });
});

describe("what outlives a reload", () => {
  it("is the document in this tab and the habits in this browser", async () => {
    const bench = await withCast(made());
    bench.setTilt(tilt(4, 1));
    bench.leaveMark({ point: scan(1, 2, 3), triangle: 0 }, mm(0.5));
    bench.chooseUnits("in");
    const again = await withCast(made());
    expect(again.store.get().document).toEqual(bench.store.get().document);
    expect(again.store.get().units).toBe("in");
    again.undo();
    expect(again.store.get().document?.marks).toEqual([]);
  });
  it("has a home for every piece of state", () => {
    expect(Object.keys(HOMES).sort()).toEqual(Object.keys(EMPTY_BENCH).sort());
  });
  it("survives storage that is switched off or holds nonsense", () => {
    expect(new Bench(server(), new BrowserKeep(null, null)).store.get().units).toBe("both");
    browser.setItem("rodwork.habits", "{no json");
    expect(made().store.get().units).toBe("both");
  });
});

describe("a tooth said to be missing", () => {
  it("moves those behind it one number on", () => {
    const at = (tooth: number): { tooth: number; point: ReturnType<typeof scan> } => ({ tooth, point: scan(tooth, 0, 0) });
    const told = (points: ReturnType<typeof movedOn>): Record<number, number> => Object.fromEntries(points.map(({ tooth, point }) => [point[0], tooth]));
    expect(told(movedOn([14, 15, 16, 26].map(at), 15, []))).toEqual({ 14: 14, 15: 16, 16: 17, 26: 26 });
    expect(told(movedOn([15, 16].map(at), 15, [16]))).toEqual({ 15: 17, 16: 16 });
    expect(told(movedOn([17, 18].map(at), 17, []))).toEqual({ 17: 18 });
    expect(told(movedOn([14].map(at), 15, []))).toEqual({ 14: 14 });
  });
});

describe("pins", () => {
  it("keep a tilt by name, once, and are undone like any edit", async () => {
    const bench = await withCast(made());
    const names = (): string[] => bench.store.get().document!.pins.map(({ name }) => name);
    bench.setTilt(tilt(3, -2));
    bench.pinTilt();
    bench.pinTilt();
    expect(names()).toEqual(["A"]);
    expect(bench.store.get().note).toContain("pin A");
    bench.setTilt(tilt(4, 0));
    bench.pinTilt();
    const [first] = bench.store.get().document!.pins;
    bench.namePin(first!.id, "more on 47");
    expect(names()).toEqual(["more on 47", "B"]);
    bench.removePin(first!.id);
    expect(names()).toEqual(["B"]);
    bench.undo();
    bench.undo();
    expect(names()).toEqual(["A", "B"]);
    expect(bench.store.get().document!.pins[0]!.tilt).toEqual(tilt(3, -2));
  });
  it("are lettered by what is free", () => {
    const pins = Array.from({ length: 26 }, (_, n) => String.fromCharCode(65 + n)).map((name) => ({ id: name, name, tilt: tilt(0, 0) }));
    expect(nextName([])).toBe("A");
    expect(nextName(pins.filter(({ name }) => name !== "C"))).toBe("C");
    expect(nextName(pins)).toBe("A2");
  });
});
