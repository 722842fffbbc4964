import { describe, expect, it } from "vitest";
import type { Abutment, FamilyAnswer, Finding, Told, Verdict } from "../wire/abutments";
import type { ClaspTold } from "../wire/abutments";
import type { Judged } from "./judging";
import { choiceAt, chosen, deciding, forAll, looked, noes, openQuestions, rowOf, sideBySide, withChoice } from "./ledger";

const mmTold = (value: number): Told => ({ kind: "measured", value, uncertainty: 0.03, unit: "mm", words: `${value} ± 0.03 mm` });

function finding(what: string, reading: Told, verdict: Verdict, otherwise = "rules out"): Finding {
  return {
    rule: what,
    what,
    place: { words: "tooth 14, facial", pieces: ["tooth ", 14, ", facial"], point: null },
    reading,
    limit: { kind: "at-most", words: "at most 1.5 mm" },
    verdict,
    source: "a text",
    standing: "common practice",
    otherwise,
    because: "it stands out",
  };
}

function family(name: string, answer: FamilyAnswer["answer"], findings: Finding[], undecided: string[] = []): FamilyAnswer {
  return {
    family: name.replaceAll(" ", "-"),
    name,
    answer,
    arm: "circlet",
    surface: "facial",
    third: "middle",
    gauge: { rule: "undercut-cast", value: 0.25, unit: "mm", source: "a text", standing: "published" },
    material: "cobalt-chromium-cast",
    rankedBy: "",
    preparations: [],
    changes: [],
    warnings: [],
    undecided,
    findings,
    clasp: null,
    noClasp: null,
  };
}

const standOff = finding("total stand-off", mmTold(2.31), "not met");
const iBar = family("I-bar", "does not serve", [finding("jaw", { kind: "word", word: "upper", words: "upper" }, "not met"), standOff, finding("shows", mmTold(1), "not met", "warns")]);
const tBar = family("T clasp", "does not serve", [standOff]);
const wire = family("wrought-wire clasp", "not decided", [finding("mobile", { kind: "not-known", words: "not known: not asked" }, "not known")], ["mobile"]);

describe("the ledger", () => {
  it("says a number before a word, and never a warning, as the reason of a no", () => {
    expect(deciding(iBar)).toBe(standOff);
    expect(deciding(wire)).toBeNull();
  });
  it("says one number once for all families it rules out", () => {
    expect(noes([iBar, wire, tBar])).toEqual([{ names: ["I-bar", "T"], finding: standOff }]);
  });
  it("asks first what decides most", () => {
    const both = { families: [wire, family("RPA", "not decided", [], ["far-rest", "mobile"])], couldReorder: ["short-root"] } as unknown as Abutment;
    expect(openQuestions(both)).toEqual([
      { fact: "mobile", decides: ["wrought-wire", "RPA"] },
      { fact: "far-rest", decides: ["RPA"] },
      { fact: "short-root", decides: [] },
    ]);
  });
  it("keeps with a choice all that stood against it, in words", () => {
    const kept = chosen(iBar);
    expect(kept.answer).toBe("does not serve");
    expect(kept.warnings).toHaveLength(3);
    expect(kept.warnings[1]).toBe("total stand-off, facial: 2.31 ± 0.03 mm, wanted at most 1.5 mm: not met (common practice)");
  });
  it("lays two choices side by side by what they ask for", () => {
    const rows = sideBySide(iBar, wire);
    expect(rows.map(({ what }) => what)).toEqual(["jaw", "total stand-off", "shows", "mobile"]);
    expect(rows[3]).toMatchObject({ one: null, other: { verdict: "not known" } });
  });
  it("has a row for each side of a tooth", () => {
    expect(rowOf({ tooth: 44, side: "distal" })).toBe("44 distal");
  });
});

describe("a clasp that the command line chose by tooth", () => {
  const at = (side: string, answer: FamilyAnswer["answer"]): Abutment => ({ tooth: 34, side, families: [family("RPI", answer, [standOff])] }) as unknown as Abutment;
  const said = { 34: { family: "RPI", name: "RPI", answer: "not decided", warnings: [] } } as const;

  it("stands in the row where the plan lays it, with what the ledger says of it there", () => {
    const abutments = [at("mesial", "not decided"), at("distal", "serves")];
    expect(choiceAt(said, abutments, "34 mesial")).toBeNull();
    expect(choiceAt(said, abutments, "34 distal")).toMatchObject({ family: "RPI", answer: "serves", warnings: [expect.stringContaining("total stand-off")] });
    expect(choiceAt(said, [at("mesial", "serves"), at("distal", "serves")], "34 mesial")).not.toBeNull();
    expect(choiceAt(said, [], "34 mesial")).toBeNull();
  });
  it("is in one row only once a person chose or took it back", () => {
    const other = chosen(iBar);
    expect(withChoice(said, "34 distal", other)).toEqual({ "34 distal": other });
    expect(withChoice(said, "34 mesial", null)).toEqual({});
    expect(choiceAt({ ...said, "34 mesial": other }, [at("mesial", "serves")], "34 mesial")).toBe(other);
  });
});

describe("the arms on the cast", () => {
  const laid = (name: string): FamilyAnswer => ({ ...family(name, "serves", []), clasp: {} as ClaspTold });
  const row = { tooth: 34, side: "distal", families: [tBar, laid("I-bar"), laid("RPI")] } as unknown as Abutment;
  const judged = { sheet: { abutments: [row] } } as unknown as Judged;
  const state = { judged, row: "34 distal", family: null, document: null };

  it("are those of the first family that has any, until one is looked at or chosen", () => {
    expect(looked(state)?.family.name).toBe("I-bar");
    expect(looked({ ...state, family: "RPI" })?.family.name).toBe("RPI");
    const document = { clasps: { "34 distal": { family: "RPI" } } } as unknown as Parameters<typeof looked>[0]["document"];
    expect(looked({ ...state, document })?.family.name).toBe("RPI");
    expect(looked({ ...state, document, family: "I-bar" })?.family.name).toBe("I-bar");
  });
  it("are none while no row is open", () => {
    expect(looked({ ...state, row: null })).toBeNull();
    expect(looked({ ...state, judged: null })).toBeNull();
  });
});

describe("what is asked once for all abutments", () => {
  const open = (tooth: number, fact: string): Abutment =>
    ({ tooth, side: "distal", facts: [{ fact, what: `the ${fact}`, choices: ["yes", "no"] }], families: [family("RPI", "not decided", [], [fact])], couldReorder: [] }) as unknown as Abutment;

  it("is what is open at two of them or more, and how the patient keeps and handles a denture", () => {
    const asked = forAll([open(34, "frenum"), open(44, "frenum"), open(47, "shows"), open(13, "poor-hygiene")], {});
    expect(asked.map(({ fact, rows }) => [fact, rows])).toEqual([
      ["frenum", 2],
      ["poor-hygiene", 1],
    ]);
  });
  it("keeps what was answered, so that it can be taken back", () => {
    const [first] = forAll([open(34, "shows")], { frenum: "no" });
    expect(first).toMatchObject({ fact: "frenum", answer: "no" });
  });
});
