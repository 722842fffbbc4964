import type { Abutment, Answer, FamilyAnswer, Finding, Told } from "../wire/abutments";

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
}

/** What is kept beside a choice: each thing that stands against it, in words. */
export function chosen(family: FamilyAnswer): ClaspChoice {
  const told = family.findings
    .filter(({ verdict, otherwise }) => verdict !== "met" && otherwise !== "shows")
    .map(({ what, place, reading, limit, verdict, standing }) => `${what}, ${place.words}: ${reading.words}, wanted ${limit.value === null ? "as much as a reading that is not known" : limit.words}: ${verdict} (${standing})`);
  return { family: family.family, name: family.name, answer: family.answer, warnings: [...new Set(told)] };
}
