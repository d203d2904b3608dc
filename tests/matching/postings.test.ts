import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf } from "../../src/matching/stream.ts";
import { stem } from "../../src/language/stem.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const rubric = compileRubric(
  cardWith(`
      - { id: painkiller, label: Which painkiller, say: [no ibuprofen with these] }
      - { id: lancet, label: A new one, say: [a new lancet each time] }
      - { id: spare, label: Where it is kept, say: [spare ones live in the fridge, take a double dose] }
      - { id: blood, label: Tests, say: [have your bloods done] }
      - { id: letters, label: The measure, say: [the inr shows how thick the oil is, take it to a and e] }
      - { id: summer, label: Not in summer, say: [put it away in winter] }
`),
);

/** Keys of several words. */
function phrasesIn(says: string): string[] {
  const postings = postingsOf(streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]), rubric);
  return [...postings].filter(([key, hits]) => !key.startsWith("=") && hits.some(({ first, end }) => end - first > 1)).map(([key]) => key);
}

/** Whether the recogniser's words are looked up as a word of the card too. */
function heardAs(says: string, word: string): boolean {
  return postingsOf(streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]), rubric).has(stem(word));
}

describe("a word that the recogniser split is found", () => {
  test.each([
    ["and no i be pro fen with these", "ibuprofen"],
    ["a fresh lance it every single time", "lancet"],
    ["a dub bull dose", "double"],
  ])("%s: %s", (says, word) => expect(heardAs(says, word)).toBe(true));
});

describe("a short form said letter by letter is found", () => {
  test.each([["the i n r tells you"], ["your I.N.R. tells you"], ["an I N R of three"]])("%s", (says) => expect(heardAs(says, "inr")).toBe(true));
  test("but no other letters", () => expect(heardAs("i in r", "inr")).toBe(false));
});

describe("small words that sound like one are what they are", () => {
  test.each([
    ["don't go in there with the tea towel", "winter"],
    ["you can win, her time is up", "winter"],
    ["lance, it was a pleasure", "lancet"],
    ["a dub bull dose", "bloods"],
  ])("%s: %s", (says, word) => expect(heardAs(says, word)).toBe(false));
});

test("a set phrase is found though one of its words was mis-heard", () => {
  const phrases = phrasesIn("spare ones live in the fridge");
  expect(phrases).not.toEqual([]);
  expect(phrasesIn("spare ones live in the frij")).toEqual(expect.arrayContaining(phrases));
  expect(phrasesIn("spare ones live in the hall")).not.toEqual(expect.arrayContaining(phrases));
});
