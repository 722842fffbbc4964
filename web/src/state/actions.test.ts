import { describe, expect, it } from "vitest";
import { ACTIONS, keyName, labelOf } from "./actions";
import { EMPTY_BENCH } from "./bench-state";

const key = (name: string, held: Partial<Record<"ctrlKey" | "metaKey" | "altKey" | "shiftKey", boolean>> = {}): string =>
  keyName({ key: name, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held });

describe("actions", () => {
  it("have each key once, and each name once", () => {
    const keys = ACTIONS.flatMap((action) => action.keys);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(ACTIONS.map((action) => action.id)).size).toBe(ACTIONS.length);
    for (const action of ACTIONS) expect(labelOf(action, EMPTY_BENCH)).not.toBe("");
  });
  it("know keys as keyboards send them", () => {
    expect(key("?", { shiftKey: true })).toBe("?");
    expect(key("Z", { ctrlKey: true, shiftKey: true })).toBe("Ctrl+Shift+z");
    expect(key("z", { metaKey: true })).toBe("Ctrl+z");
    expect(key("ArrowUp", { shiftKey: true })).toBe("Shift+ArrowUp");
    expect(key("O")).toBe("o");
  });
});
