import { describe, expect, it } from "vitest";
import { tilt } from "../values/tilt";
import { scan } from "../values/vec";
import { apply, type Command, type Document, emptyDocument, inverse, type Mark } from "./document";
import { type History, NO_HISTORY, recorded, redone, undone } from "./history";

const START: Document = emptyDocument({ jaw: "lower", up: null, front: null });
const to = (from: number, next: number): Command => ({ kind: "tilt", from: tilt(from, 0), to: tilt(next, 0) });
const mark = (id: string, x: number): Mark => ({ id, name: id, gaugeMm: null, point: scan(x, 0, 0), triangle: 0 });

describe("commands", () => {
  const commands: Command[] = [
    to(0, 3),
    { kind: "limit", from: false, to: true },
    { kind: "frame", from: START.frame, to: { jaw: "upper", up: scan(0, 0, 1), front: null } },
    { kind: "mark", index: 0, from: null, to: mark("a", 1) },
  ];
  it("are undone by their inverses, in their JSON form too", () => {
    for (const command of commands) {
      const sent = JSON.parse(JSON.stringify(command)) as Command;
      expect(apply(START, sent)).not.toEqual(START);
      expect(apply(apply(START, sent), inverse(sent))).toEqual(START);
    }
  });
  it("put a removed mark back in its place", () => {
    const three = { ...START, marks: [mark("a", 1), mark("b", 2), mark("c", 3)] };
    const remove: Command = { kind: "mark", index: 1, from: mark("b", 2), to: null };
    expect(apply(three, remove).marks.map((m) => m.id)).toEqual(["a", "c"]);
    expect(apply(apply(three, remove), inverse(remove))).toEqual(three);
  });
});

describe("history", () => {
  const undoAll = (document: Document, history: History): { document: Document; steps: number } => {
    let steps = 0;
    let at = { document, history };
    for (let found = undone(at.history); found; found = undone(at.history)) {
      at = { document: apply(at.document, found.command), history: found.history };
      steps++;
    }
    return { document: at.document, steps };
  };

  it("fuses like edits within half a second", () => {
    let history = recorded(NO_HISTORY, to(0, 1), 1000, null);
    history = recorded(history, to(1, 2), 1400, null);
    expect(history.past).toHaveLength(1);
    history = recorded(history, to(2, 3), 1900, null);
    expect(history.past).toHaveLength(2);
  });
  it("makes one step of a drag, however long the hand rests in it, and two of two drags", () => {
    let history = recorded(NO_HISTORY, to(0, 1), 0, 7);
    history = recorded(history, to(1, 5), 9000, 7);
    history = recorded(history, to(5, 6), 9100, 8);
    expect(history.past).toHaveLength(2);
    expect(undoAll(apply(START, to(0, 6)), history)).toEqual({ document: START, steps: 2 });
  });
  it("keeps no step that changes nothing", () => {
    let history = recorded(NO_HISTORY, to(0, 1), 0, 7);
    history = recorded(history, to(1, 0), 10, 7);
    expect(history.past).toHaveLength(0);
  });
  it("does not fuse a moved mark with another mark's move", () => {
    const move = (id: string, from: number, next: number): Command => ({ kind: "mark", index: 0, from: mark(id, from), to: mark(id, next) });
    let history = recorded(NO_HISTORY, move("a", 0, 1), 0, null);
    history = recorded(history, move("b", 0, 1), 1, null);
    history = recorded(history, move("b", 1, 2), 2, null);
    expect(history.past.map((step) => step.command)).toEqual([move("a", 0, 1), move("b", 0, 2)]);
  });
  it("does an undone step again, and forgets it after a new edit", () => {
    const history = recorded(NO_HISTORY, to(0, 1), 0, null);
    const back = undone(history)!;
    const again = redone(back.history)!;
    expect(again.command).toEqual(to(0, 1));
    expect(undone(recorded(again.history, to(1, 2), 1, null))!.command).toEqual(inverse(to(1, 2)));
    expect(redone(recorded(back.history, to(0, 2), 1, null))).toBeNull();
  });
});
