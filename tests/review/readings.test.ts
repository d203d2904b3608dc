import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { reviewRubric } from "../../src/review/check.ts";
import { readPhrases } from "../../src/review/read-phrases.ts";
import { readingsSchema } from "../../src/review/readings.ts";
import { loadPlacedRubric, type PlacedRubric } from "../../src/rubric/load.ts";
import { BLOCK, broken, lineOf, SOUND, TODAY } from "./card.ts";

const load = (text: string, file = "card.yaml", readBlock = (_: string) => BLOCK): PlacedRubric => loadPlacedRubric(text, { file, readBlock });
const stored = (placed: PlacedRubric) => readingsSchema.parse(JSON.parse(JSON.stringify(readPhrases(placed.rubric))));

/** Invented: a rubric of whose phrases much is to be told. */
const WANTING = broken("          - rinse and spit afterwards\n", "          - (rinse with water|rinse) and spit afterwards\n          - shake the inhaler well and gargle with water\n          - swallow the rinsing water every time\n        must: [water]\n        examples: { earns: [See you next week.], misses: [Shake the inhaler well.] }\n")
  .replace("          - hold your breath for {quantity}\n          - keep holding your breath for {quantity}\n          - don't breathe for {quantity}\n        quantity: { value: 10, unit: second }\n", "          - hold your breath for ten seconds\n          - keep holding your breath for ten seconds\n          - don't breathe for ten seconds\n");

test("readings that were written and read back tell what fresh ones tell", () => {
  const placed = load(WANTING);
  const review = reviewRubric(placed, TODAY, readPhrases(placed.rubric));
  expect(reviewRubric(placed, TODAY, stored(placed))).toEqual(review);
  expect(new Set(review.findings.map(({ code }) => code))).toEqual(new Set(["SW-C01", "SW-C02", "SW-C04", "SW-C06", "SW-C07", "SW-C08"]));
});

test("so they do of a shipped rubric", () => {
  const placed = load(readFileSync("rubrics/naloxone-nasal-spray.yaml", "utf8"), "rubrics/naloxone-nasal-spray.yaml", (include) => readFileSync(join("rubrics", include), "utf8"));
  const fresh = readPhrases(placed.rubric);
  expect(reviewRubric(placed, TODAY, stored(placed))).toEqual(reviewRubric(placed, TODAY, fresh));
  expect(fresh.utterances).toBeGreaterThan(500);
});

test("readings hold no lines: the same ones are told at the lines of another day, and dates are of that day", () => {
  const readings = stored(load(WANTING));
  const longer = `# A comment.\n# Another.\n${WANTING}`;
  const [before, after] = [reviewRubric(load(WANTING), TODAY, readings), reviewRubric(load(longer), "2029-01-01", readings)];
  const lines = (review: typeof before, code: string) => review.findings.filter((finding) => finding.code === code).map(({ line }) => line);
  expect(lines(after, "SW-C04")).toEqual([lineOf(longer, "- swallow the rinsing")]);
  for (const code of ["SW-C01", "SW-C02", "SW-C07", "SW-C08"]) expect(lines(after, code)).toEqual(lines(before, code).map((line) => line! + 2));
  expect(after.findings.map(({ code }) => code)).toContain("SW-C11");
});

test("a rubric whose phrases all do what they are there for leaves next to nothing to keep", () => {
  expect(readPhrases(load(SOUND).rubric)).toEqual({ utterances: 9, responses: [], examples: [], numbers: [], written: [], unfound: [], untold: [], idle: [], questions: [], light: [], speaking: { words: expect.any(Number), middleWords: expect.any(Number) } });
});

test.each([
  ["most of its responses state a number", ["take two tablets", "swallow two tablets", "two tablets please", "the tablets go down with water"], [{ element: 3, first: "two tablets", responses: 3 }]],
  ["half of them do", ["take two tablets", "the tablets go down with water", "two tablets please", "have them with food"], []],
  ["one does", ["the tablets go down with water", "have them with food", "two tablets please"], []],
])("an element without a quantity is told of when most state a number: %s", (_, say, numbers) => {
  const text = broken("order:\n", `      - id: take\n        label: Takes them\n        say: ${JSON.stringify(say)}\norder:\n`);
  expect(readPhrases(load(text).rubric).numbers).toEqual(numbers);
});
