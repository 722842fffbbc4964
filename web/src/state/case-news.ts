import { chartSaid } from "../values/chart";
import { degrees } from "../values/units";
import type { CaseNews } from "../wire/cases";
import type { ChoicesSaid } from "../wire/plan";
import type { Command, Document, PlanChosen } from "./document";
import { NOTHING_CHOSEN } from "./plan-choices";

/**
 * What the command line put into a case since the bench saved it last, as edits of the bench's own document: each is a step to undo
 * like any other.
 */
export function newsCommands(document: Document, news: CaseNews): readonly Command[] {
  const { chart, path, choices, answers } = news;
  const commands: Command[] = [];
  let teeth = document.teeth;
  if (chart) {
    const { missing, said } = chartSaid(chart);
    teeth = { ...teeth, missing, chart: said, points: teeth.points.filter(({ tooth }) => !missing.includes(tooth)), pins: teeth.pins.filter(({ tooth }) => !missing.includes(tooth)) };
    commands.push({ kind: "teeth", what: "chart of the case", from: document.teeth, to: teeth });
  }
  if (answers) commands.push({ kind: "answers", what: "answers of the case", from: document.answers, to: answers });
  if (path) commands.push({ kind: "tilt", from: document.tilt, to: { anterior: degrees(path.tilt[0]), right: degrees(path.tilt[1]) } });
  if (choices) commands.push({ kind: "chosen", what: "choices of the case", from: { plan: document.plan, clasps: document.clasps }, to: chosenOf(choices) });
  return commands;
}

/** What the parts are called, for the note. */
export const newsWords = (news: CaseNews): string => (["chart", "path", "choices", "answers"] as const).filter((part) => news[part]).join(", ");

/** Choices as the bench keeps them: a clasp in the row that its arm was shaped in, else under its tooth alone; the ledger finds the row (`choiceAt`). */
function chosenOf({ rests, clasps, connector, notUsed, moves, indirect, arms }: Partial<ChoicesSaid>): PlanChosen {
  const families = Object.entries(clasps ?? {});
  // An arm of another family than the one chosen for its tooth is laid nowhere.
  const shaped = Object.entries(arms ?? {}).filter(([row, { family }]) => (clasps?.[row.slice(0, 2)] ?? family) === family);
  const clasp = (family: string) => ({ family, name: family.replaceAll("-", " "), answer: "not decided" as const, warnings: [] });
  return {
    plan: {
      ...NOTHING_CHOSEN,
      rests: rests ?? {},
      connector: connector ?? null,
      notUsed: (notUsed ?? []).map(Number),
      unclasped: families.filter(([, family]) => family === "none").map(([tooth]) => Number(tooth)),
      moves: moves ?? [],
      ...(indirect ? { indirect } : {}),
    },
    clasps: Object.fromEntries([
      ...families
        .filter(([tooth, family]) => family !== "none" && !shaped.some(([row]) => row.startsWith(`${tooth} `)))
        .map(([tooth, family]) => [tooth, clasp(family)] as const),
      // An arm that a person shaped is kept also where nobody chose its clasp.
      ...shaped.map(([row, { family, pulls }]) => [row, { ...clasp(family), ...(pulls.length > 0 ? { arm: pulls } : {}) }] as const),
    ]),
  };
}
