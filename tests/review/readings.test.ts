import { expect, test } from "vitest";
import { reviewRubric } from "../../src/review/check.ts";
import { readPhrases } from "../../src/review/read-phrases.ts";
import { readingsSchema, type Readings } from "../../src/review/readings.ts";
import { loadPlacedRubric, type PlacedRubric } from "../../src/rubric/load.ts";
import { BLOCK, broken, lineOf, SOUND, TODAY } from "./card.ts";

const load = (text: string): PlacedRubric => loadPlacedRubric(text, { file: "card.yaml", readBlock: () => BLOCK });
const stored = (readings: Readings) => readingsSchema.parse(JSON.parse(JSON.stringify(readings)));

/** Invented: a rubric of whose phrases much is to be told: each of the lists that readings have has something. */
const WANTING = [
  ["          - rinse and spit afterwards\n", "          - (rinse with water|rinse) and spit afterwards\n          - shake the inhaler well and gargle with water\n          - swallow the rinsing water every time\n        must: [water, mouthwash]\n        examples: { earns: [See you next week.], misses: [Shake the inhaler well.] }\n"],
  ["          - hold your breath for {quantity}\n          - keep holding your breath for {quantity}\n          - don't breathe for {quantity}\n        quantity: { value: 10, unit: second }\n", "          - hold your breath for ten seconds\n          - keep holding your breath for ten seconds\n          - don't breathe for ten seconds\n        incorrect: [hold your breath for ten seconds]\n"],
  ["order:\n", "      - { id: wait, label: Waits, say: ['wait for {quantity}', leave it for ten seconds], quantity: { value: 10, unit: second } }\norder:\n"],
  ["say: [swallow the rinsing water every time]", "say: [swallow the rinsing water every time, do it, drink the dirty water], not_with: [dirty]"],
  ["counselled: patient,", "counselled: patient, questions: [{ id: taste, says: [does it taste of anything], answer: [a bitter taste], incorrect: [a bitter taste] }],"],
].reduce((text, [before, after]) => {
  expect(text).toContain(before);
  return text.replace(before!, after!);
}, SOUND);

test("readings that were written and read back tell what fresh ones tell", () => {
  const placed = load(WANTING);
  const fresh = readPhrases(placed.rubric);
  const review = reviewRubric(placed, TODAY, fresh);
  expect(Object.entries(fresh).filter(([, list]) => Array.isArray(list) && list.length === 0)).toEqual([]);
  expect(reviewRubric(placed, TODAY, stored(fresh))).toEqual(review);
  expect([...new Set(review.findings.map(({ code }) => code))].sort()).toEqual(["SW-C01", "SW-C02", "SW-C04", "SW-C06", "SW-C07", "SW-C08", "SW-C14", "SW-C23", "SW-C24", "SW-C25", "SW-C26", "SW-C28"]);
});

test("readings hold no lines: the same ones are told at the lines of another day, and dates are of that day", () => {
  const readings = stored(readPhrases(load(WANTING).rubric));
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
