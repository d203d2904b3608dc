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
      - { id: summer, label: Not in summer, say: [put it away in winter] }
`),
);

/** Whether the recogniser's words are looked up as a word of the card too. */
function heardAs(says: string, word: string): boolean {
  return postingsOf(streamOf(toldStation([{ role: "candidate", says }], "talk"), ["candidate"]), rubric).has(stem(word));
}

describe("a word that the recogniser split is found", () => {
  test.each([
    ["and no i be pro fen with these", "ibuprofen"],
    ["a fresh lance it every single time", "lancet"],
  ])("%s: %s", (says, word) => expect(heardAs(says, word)).toBe(true));
});

describe("small words that sound like one are what they are", () => {
  test.each([
    ["don't go in there with the tea towel", "winter"],
    ["you can win, her time is up", "winter"],
    ["lance, it was a pleasure", "lancet"],
  ])("%s: %s", (says, word) => expect(heardAs(says, word)).toBe(false));
});
