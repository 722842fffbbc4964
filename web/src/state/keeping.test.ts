import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { tilt } from "../values/tilt";
import { type Api, Refused } from "../wire/api";
import type { CastInfo } from "../wire/types";
import { EMPTY_BENCH, type BenchState } from "./bench-state";
import { emptyDocument } from "./document";
import type { Keep } from "./keep";
import { Keeping, SAVE_AFTER_MS } from "./keeping";
import { Store } from "./store";

interface Call {
  readonly code: string;
  readonly on: number | null;
}

function made(answers: (() => Promise<{ code: string; revision: number }>)[]): { keeping: Keeping; store: Store<BenchState>; calls: Call[] } {
  const calls: Call[] = [];
  const api = {
    saveCase: (code: string, { on }: { on: number | null }) => {
      calls.push({ code, on });
      return answers[calls.length - 1]!();
    },
    cases: () => Promise.resolve([]),
  } as unknown as Api;
  const keep = { keepDocument: () => undefined } as unknown as Keep;
  const document = emptyDocument({ jaw: "upper", up: null, front: null });
  const store = new Store<BenchState>({ ...EMPTY_BENCH, cast: { id: "c1" } as CastInfo, document });
  const keeping = new Keeping(store, api, keep);
  store.subscribe(() => keeping.follow());
  return { keeping, store, calls };
}

const at = (revision: number) => () => Promise.resolve({ code: "A 1", revision });
const edited = (store: Store<BenchState>, degrees: number): void => store.set({ document: { ...store.get().document!, tilt: tilt(degrees, 0) } });

describe("keeping", () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it("saves nothing before a person said in which case", async () => {
    const { store, calls } = made([]);
    edited(store, 1);
    await vi.advanceTimersByTimeAsync(5 * SAVE_AFTER_MS);
    expect(calls).toEqual([]);
  });

  it("makes a case, then saves each rest of the hand once on the revision before, and says so", async () => {
    const { keeping, store, calls } = made([at(1), at(2)]);
    await keeping.keepAs(" A 1 ");
    expect(calls).toEqual([{ code: "A 1", on: null }]);
    expect(store.get()).toMatchObject({ caseOf: { code: "A 1", revision: 1 }, kept: "saved" });
    for (let i = 1; i <= 4; i++) {
      edited(store, i);
      await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS / 3);
      expect(store.get().kept).toBe("changed");
    }
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(calls.slice(1)).toEqual([{ code: "A 1", on: 1 }]);
    expect(store.get()).toMatchObject({ caseOf: { revision: 2 }, kept: "saved" });
  });

  it("waits for a save that is under way, and saves what came meanwhile", async () => {
    let end: (answer: { code: string; revision: number }) => void = () => undefined;
    const { keeping, store, calls } = made([at(1), () => new Promise((resolve) => (end = resolve)), at(3)]);
    await keeping.keepAs("A 1");
    edited(store, 1);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    edited(store, 2);
    const now = keeping.saveNow();
    expect(calls).toHaveLength(2);
    end({ code: "A 1", revision: 2 });
    await now;
    expect(calls.at(-1)).toEqual({ code: "A 1", on: 2 });
    expect(store.get()).toMatchObject({ caseOf: { revision: 3 }, kept: "saved" });
  });

  it("a case that was opened is saved as it is", async () => {
    const { keeping, store, calls } = made([]);
    store.set({ caseOf: { code: "A 1", revision: 4 } });
    expect(store.get().kept).toBe("changed");
    keeping.opened();
    await vi.advanceTimersByTimeAsync(5 * SAVE_AFTER_MS);
    expect(calls).toEqual([]);
    expect(store.get().kept).toBe("saved");
  });

  it("a refusal is shown, and tried again with the next edit alone", async () => {
    const refused = (): Promise<never> => Promise.reject(new Refused({ code: "store-full", message: "no room", advice: "make room" }));
    const { keeping, store, calls } = made([at(1), refused, at(2)]);
    await keeping.keepAs("A 1");
    edited(store, 1);
    await vi.advanceTimersByTimeAsync(10 * SAVE_AFTER_MS);
    expect(calls).toHaveLength(2);
    expect(store.get()).toMatchObject({ kept: "failed", problem: { code: "store-full" } });
    edited(store, 2);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(store.get()).toMatchObject({ kept: "saved", caseOf: { revision: 2 } });
  });
});
