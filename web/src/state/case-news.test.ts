import { expect, test } from "vitest";
import { chartDocument, chartSaid } from "../values/chart";
import { newsCommands, newsWords } from "./case-news";
import { apply, type Document, emptyDocument } from "./document";
import { choicesSaid } from "./plan-choices";

const EMPTY = emptyDocument({ jaw: "upper", up: null, front: null });
const CHART = {
  format: "rodwork chart",
  version: 1,
  jaw: "upper",
  teeth: [
    { tooth: 14, presence: "missing" },
    { tooth: 15, presence: "missing", replace: "no" as const },
    { tooth: 18, presence: "missing" },
    { tooth: 16, presence: "to be extracted", mobility: "III" as const },
    { tooth: 13, presence: "present" },
  ],
  places: [{ tooth: 14, vestibuleDepthMm: 6 }],
  freeEnds: {},
  allergies: ["nickel"],
};
const after = (document: Document, news: Parameters<typeof newsCommands>[1]): Document => newsCommands(document, news).reduce(apply, document);

test("a chart of the command line is that of the bench, and what the bench has no field for is kept", () => {
  const { teeth } = after(EMPTY, { chart: CHART });
  expect(teeth.missing).toEqual([14, 15]);
  expect(teeth.chart.teeth).toEqual({ 15: { replace: "no" }, 16: { will: "to be extracted", mobility: "III" } });
  expect(teeth.chart.places).toEqual({ 14: { vestibuleDepthMm: 6 } });
  const back = chartDocument("upper", teeth.missing, teeth.chart) as typeof CHART;
  expect(back.allergies).toEqual(["nickel"]);
  expect(chartSaid({ ...back })).toEqual({ missing: [15], said: teeth.chart });
});

test("path, choices and answers become edits that can be undone; a clasp stands under its tooth, as no side was told", () => {
  const choices = { rests: {}, clasps: { "16": "cast-circumferential", "13": "none" }, connector: "palatal-plate" as const, notUsed: [27], moves: [], indirect: { "12": { kind: "cingulum" as const, side: "lingual" as const } } };
  const news = { chart: CHART, path: { tilt: [3, -1] as const }, choices, answers: { "poor-hygiene": "no" } };
  const document = after(EMPTY, news);
  expect(document.tilt).toEqual({ anterior: 3, right: -1 });
  expect(document.answers).toEqual({ "poor-hygiene": "no" });
  expect(Object.keys(document.clasps)).toEqual(["16"]);
  expect(choicesSaid(document.plan, document.clasps)).toEqual(choices);
  expect(newsWords(news)).toBe("chart, path, choices, answers");
  const shaped = { ...choices, arms: { "16 distal": { family: "cast-circumferential", pulls: [{ at: 1, to: [1, 2, 3] as const }] } } } as unknown as typeof choices;
  const withArm = after(EMPTY, { chart: CHART, choices: shaped });
  expect(Object.keys(withArm.clasps)).toEqual(["16 distal"]);
  expect(choicesSaid(withArm.plan, withArm.clasps)).toEqual(shaped);
  const unchosen = { ...choices, arms: { "17 mesial": { family: "i-bar", pulls: [{ at: 1, to: [1, 2, 3] as const }] } } } as unknown as typeof choices;
  expect(Object.keys(after(EMPTY, { chart: CHART, choices: unchosen }).clasps)).toEqual(["16", "17 mesial"]);
  expect(newsCommands(EMPTY, {})).toEqual([]);
  expect(newsWords({})).toBe("");
});
