import { expect, test, describe } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { matchStation } from "../../src/matching/match.ts";
import { findStation } from "../../src/station/find.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { CARD } from "../scoring/station-card.ts";

/** The verdicts on a card whose element "shake" has one response. */
function verdicts(response: string, candidate: string): string[] {
  const sections = CARD.sections.map((section) => ({
    ...section,
    items: section.items.map((item) => (item.id === "shake" ? { ...item, elements: item.elements.map((element) => ({ ...element, say: [response], must: [] })) } : item)),
  }));
  const rubric = compileRubric({ ...CARD, sections });
  const transcript = readTranscript(`[0:00] Candidate: Hello, I am the pharmacist.\n[0:05] Patient: Hello.\n[0:08] Candidate: ${candidate}`, { file: "talk.txt" });
  return matchStation(findStation(transcript, {}), rubric)
    .elements.filter(({ item }) => item === "shake")
    .map(({ verdict }) => verdict);
}

// Invented sentences about an invented thing: behaviour only.
describe("a response is said, whichever way the denial is put", () => {
  test.each([
    ["don't put your elbows near the hinge", "keep your elbows well away from the hinge"],
    ["make sure there's no gravel in the funnel", "have a look down the funnel in case there is gravel in the funnel"],
    ["if it's hard to whistle a tune in the morning", "and if you cannot whistle a tune in the morning"],
    ["dust the lantern with a feather", "no polish on it ever you dust the lantern with a feather"],
    ["the lantern works after several days", "the lantern doesn't work on the spot, it works after several days"],
    ["don't wait until the lantern is empty to order another", "order another, and don't wait until the lantern is empty"],
    ["if you drop the lantern go to the smithy", "if you drop the lantern don't go to bed, go to the smithy"],
    ["not even if they bring a new wick for the lantern", "they can't even if they bring a new wick for the lantern"],
    ["the lantern lives on the landing", "not by the oven the lantern lives on the landing"],
    ["never light more than two lanterns even in a storm", "never light more than two lanterns, even in a storm"],
  ])("%s: %s", (response, sentence) => expect(verdicts(response, sentence)).toContain("right"));
});

describe("a response is not said where its denial is missing or added", () => {
  test.each([
    ["don't put your elbows near the hinge", "put your elbows near the hinge"],
    ["don't rub it dry with a towel", "rub it dry with a tea towel don't leave it to drip on the landing"],
    ["never use double the next evening", "you can double up the next evening if you forget"],
    ["dust the lantern with a feather", "never dust the lantern with a feather"],
    ["dust the lantern with a feather", "polish the lantern with a feather rather than dust it"],
    ["not even if they bring a new wick for the lantern", "they can as long as they bring a new wick for the lantern"],
    ["don't wait until the lantern is empty to order another", "wait until the lantern is empty to order another"],
    ["the colour of the lantern may change", "the colour of the lantern will not change"],
    ["if you drop the lantern go to the smithy", "a lantern you drop, if it still burns don't go to the smithy, you stay at home"],
    ["don't let the ladle touch the lantern", "it doesn't matter if the ladle touches the lantern"],
    ["if you forget dust it when you remember", "if you forget don't dust it when you remember, just wait"],
  ])("%s: %s", (response, sentence) => expect(verdicts(response, sentence)).not.toContain("right"));
});
