import { expect, test } from "vitest";
import { CARD, cardWith, markTalk, OPENING } from "./station-card.ts";

/* What is printed beside a wrong statement. All talks and the rubric are invented. */

const PAINT = cardWith(`
      - { id: stir, label: Stirs the bottle gently, say: [stir the bottle gently, swirl the bottle gently], incorrect: ["beat|whip the bottle until it (gets|turns) (foamy|frothy)"] }
      - { id: sharing, label: Never shares the brush, say: [never share the brush with your family, do not lend the brush to your family] }
      - { id: nightly, label: Two or three times a week, say: ["paint the nail {quantity}"], must: [paint], quantity: { value: [0.28, 0.43], unit: time-per-day, tolerance: 0.01 } }
`);

const reasons = (line: string) => markTalk([...OPENING, line], {}, PAINT).incorrect.map(({ reason }) => reason);

test("what the rubric lists as wrong is told in a plain sentence, in the words that were spoken", () => {
  expect(reasons("C: Then whip the bottle until it turns frothy.")).toEqual(["amounts to 'whip the bottle until it turns frothy', which is wrong"]);
});

test("what must not be done and was allowed is told as that", () => {
  expect(reasons("C: You can share the brush with your family.")).toEqual(["the opposite was said: that it may be done, or is so"]);
});

test("a wrong number stands beside the right one, both as people say them", () => {
  expect(reasons("C: You paint the nail four times a day.")).toEqual(["said 'four times a day'; right is 2 to 3 times a week"]);
  expect(markTalk([...OPENING, "C: Hold your breath for two seconds."]).incorrect.map(({ reason }) => reason)).toEqual(["said 'two seconds'; right is 10 seconds, give or take 1"]);
});

test("what a change is worth is told in marks and in the total, not in figures of the program", () => {
  const worths = markTalk([...OPENING, "C: Hold your breath for ten seconds."]).changes.map(({ worth }) => worth);
  expect(worths[0]).toMatch(/^a critical item, 2 marks, \d+(\.\d)?% of the total$/);
});

test("one sheet has one count of the candidate's words", () => {
  const sheet = markTalk([...OPENING, "C: Shake the inhaler well - [laughs] and hold your breath for ten seconds."], {}, CARD);
  expect(sheet.station.roles.find(({ role }) => role === "candidate")?.words).toBe(sheet.time.candidateWords);
});
