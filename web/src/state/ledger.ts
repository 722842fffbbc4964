import type { Abutment, AnswersSaid, Answer, ArmsTold, FamilyAnswer, Finding, Told, Where } from "../wire/abutments";
import type { Pull } from "../values/arm-shape";
import type { BenchState } from "./bench-state";

/** Which row of the ledger: a tooth between two spaces has two. */
export const rowOf = ({ tooth, side }: Pick<Abutment, "tooth" | "side">): string => `${tooth} ${side}`;

/** Signs that are read without colour. */
export const SIGNS: Readonly<Record<Answer, string>> = {
  serves: "●",
  "serves after": "◐",
  "not decided": "?",
  "does not serve": "×",
};

/** A family's name in a row: the word "clasp" goes without saying. */
export const shortName = (name: string): string => name.replace(/ clasp\b/, "");

/** Why a family does not serve: the findings that rule it out, in the order in which they were asked. */
export const refusals = ({ answer, findings }: FamilyAnswer): readonly Finding[] =>
  answer === "does not serve" ? findings.filter(({ verdict, otherwise }) => verdict === "not met" && otherwise !== "warns" && otherwise !== "shows") : [];

/** The one of them to say first: a number before a word, and a stop before a preparation that goes too far. */
export function deciding(family: FamilyAnswer): Finding | null {
  const no = refusals(family);
  const stops = no.filter(({ otherwise }) => otherwise === "rules out");
  const among = stops.length > 0 ? stops : no;
  return among.find(({ reading }) => isNumber(reading)) ?? among[0] ?? null;
}

export const isNumber = (told: Told): boolean => told.kind === "measured" || told.kind === "at-least";

export interface No {
  readonly names: readonly string[];
  readonly finding: Finding | null;
}

/** The refusals of an abutment, families with the same number together: few lines that each say why. */
export function noes(families: readonly FamilyAnswer[]): readonly No[] {
  const lines = new Map<string, { names: string[]; finding: Finding | null }>();
  for (const family of families) {
    if (family.answer !== "does not serve") continue;
    const finding = deciding(family);
    const key = finding ? `${finding.what} ${finding.place.words} ${finding.reading.words} ${finding.limit.words}` : "";
    const line = lines.get(key) ?? { names: [], finding };
    line.names.push(shortName(family.name));
    lines.set(key, line);
  }
  // Numbers first: a word is soon read elsewhere.
  const words = ({ finding }: No): number => (finding && isNumber(finding.reading) ? 0 : 1);
  return [...lines.values()].sort((a, b) => words(a) - words(b));
}

/** What is not known and decides, of all families that are open, the most often asked first. */
export function openQuestions({ families, couldReorder }: Abutment): readonly { readonly fact: string; readonly decides: readonly string[] }[] {
  const asked = new Map<string, string[]>();
  for (const { name, undecided } of families) {
    for (const fact of undecided) asked.set(fact, [...(asked.get(fact) ?? []), shortName(name)]);
  }
  for (const fact of couldReorder) if (!asked.has(fact)) asked.set(fact, []);
  return [...asked].map(([fact, decides]) => ({ fact, decides })).sort((a, b) => b.decides.length - a.decides.length);
}

/** Two families side by side: each thing that either asks for, with both findings. */
export function sideBySide(one: FamilyAnswer, other: FamilyAnswer): readonly { readonly what: string; readonly one: Finding | null; readonly other: Finding | null }[] {
  const whats = [...new Set([...one.findings, ...other.findings].map(({ what }) => what))];
  const of = (family: FamilyAnswer, what: string): Finding | null => worst(family.findings.filter((each) => each.what === what));
  return whats.map((what) => ({ what, one: of(one, what), other: of(other, what) }));
}

const ORDER = ["not met", "too close to call", "not known", "met"] as const;

/** What stands against a family first, then what is open, then what is met; within each as it was asked. */
export const byVerdict = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict));

const worst = (findings: readonly Finding[]): Finding | null => byVerdict(findings)[0] ?? null;

/** A person's choice for an abutment, with what Rodwork said against it then. */
export interface ClaspChoice {
  readonly family: string;
  readonly name: string;
  readonly answer: Answer;
  readonly warnings: readonly string[];
  /** What was made of its retentive arm by hand; missing: it lies as it was laid out. */
  readonly arm?: readonly Pull[];
}

/** What was made of arms by hand, by row, as the server is told; a clasp chosen against the ledger has its arms laid out all the same. */
export const armsSaid = (clasps: Readonly<Record<string, ClaspChoice>>): ArmsTold =>
  Object.fromEntries(
    Object.entries(clasps).flatMap(([row, { family, answer, arm = [] }]) => (arm.length > 0 || answer === "does not serve" ? [[row, { family, pulls: arm }]] : [])),
  );

/** Whether the arms of two sets of choices lie alike. */
export const sameArms = (a: Readonly<Record<string, ClaspChoice>>, b: Readonly<Record<string, ClaspChoice>>): boolean =>
  a === b || JSON.stringify(armsSaid(a)) === JSON.stringify(armsSaid(b));

/** Where on its tooth: a choice stands in the row of the tooth, and what is kept must hold in every notation. */
const withoutTooth = ({ pieces }: Where): string => pieces.filter((each) => typeof each === "string").join("").replace(/^tooth (, )?/, "") || "the tooth";

/** What is kept beside a choice: each thing that stands against it, in words. */
export function chosen(family: FamilyAnswer): ClaspChoice {
  const told = family.findings
    .filter(({ verdict, otherwise }) => verdict !== "met" && otherwise !== "shows")
    .map(({ what, place, reading, limit, verdict, standing }) => `${what}, ${withoutTooth(place)}: ${reading.words}, wanted ${limit.value === null ? "as much as a reading that is not known" : limit.words}: ${verdict} (${standing})`);
  return { family: family.family, name: family.name, answer: family.answer, warnings: [...new Set(told)] };
}

const SERVES: readonly Answer[] = ["serves", "serves after", "not decided", "does not serve"];

/**
 * The choice of a row. The command line chooses by tooth and knows no rows: such a choice stands in the row where the plan lays it, the
 * one of the tooth where the family answers best, and of equals the first.
 */
export function choiceAt(clasps: Readonly<Record<string, ClaspChoice>>, abutments: readonly Abutment[], row: string): ClaspChoice | null {
  const { [row]: own } = clasps;
  if (own) return own;
  const said = clasps[toothOf(row)];
  if (!said) return null;
  const rows = abutments
    .filter(({ tooth }) => String(tooth) === toothOf(row))
    .flatMap((abutment) => abutment.families.filter(({ family }) => family === said.family).map((family) => ({ row: rowOf(abutment), family })))
    .sort((a, b) => SERVES.indexOf(a.family.answer) - SERVES.indexOf(b.family.answer));
  const [best] = rows;
  return best?.row === row ? { ...chosen(best.family), ...(said.arm ? { arm: said.arm } : {}) } : null;
}

/** The choices with one put into its row, or taken out (null); what was said of the tooth without a row goes with it. */
export function withChoice(clasps: Readonly<Record<string, ClaspChoice>>, row: string, to: ClaspChoice | null): Readonly<Record<string, ClaspChoice>> {
  const others = Object.fromEntries(Object.entries(clasps).filter(([key]) => key !== row && key !== toothOf(row)));
  return to ? { ...others, [row]: to } : others;
}

export const toothOf = (row: string): string => row.split(" ")[0] ?? row;

/** The abutment whose row lies open, and the family of it that is looked at: its arms lie on the cast. */
export function looked({ judged, row, family, document }: Pick<BenchState, "judged" | "row" | "family" | "document">): { readonly abutment: Abutment; readonly family: FamilyAnswer } | null {
  const abutment = judged?.sheet?.abutments.find((each) => rowOf(each) === row);
  if (!abutment) return null;
  const wanted = family ?? choiceAt(document?.clasps ?? {}, judged?.sheet?.abutments ?? [], rowOf(abutment))?.family;
  const found = abutment.families.find((each) => each.family === wanted) ?? abutment.families.find(({ clasp }) => clasp);
  return found ? { abutment, family: found } : null;
}

/** Facts of the patient, which are the same at every abutment. */
const OF_THE_PATIENT: readonly string[] = ["poor-hygiene", "heavy-handling"];

export interface AskedOnce {
  readonly fact: string;
  readonly what: string;
  readonly choices: readonly string[];
  /** At how many rows it is open. */
  readonly rows: number;
  /** What was said for all; null: nothing yet. */
  readonly answer: string | null;
}

/** What is worth asking once for all abutments: facts of the patient, and what is open at two rows or more. What was said stays, first. */
export function forAll(abutments: readonly Abutment[], said: AnswersSaid): readonly AskedOnce[] {
  const asked = new Map<string, AskedOnce>();
  for (const abutment of abutments) {
    const open = new Set(openQuestions(abutment).map(({ fact }) => fact));
    for (const { fact, what, choices = [] } of abutment.facts) {
      const answer = said[fact];
      const before = asked.get(fact) ?? { fact, what, choices, rows: 0, answer: typeof answer === "string" ? answer : null };
      if (choices.length > 0) asked.set(fact, { ...before, rows: before.rows + (open.has(fact) ? 1 : 0) });
    }
  }
  const spoken = Object.entries(said).flatMap(([fact, answer]) =>
    typeof answer === "string" ? [asked.get(fact) ?? { fact, what: fact.replaceAll("-", " "), choices: [], rows: 0, answer }] : [],
  );
  const open = [...asked.values()].filter(({ fact, rows, answer }) => answer === null && (rows > 1 || (rows > 0 && OF_THE_PATIENT.includes(fact))));
  return [...spoken, ...open.sort((a, b) => b.rows - a.rows)];
}
