import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { matchStation } from "../../src/matching/match.ts";
import { packRubric, unpackRubric } from "../../src/matching/packed.ts";
import { findStation } from "../../src/station/find.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { CARD, cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

const compiled = compileRubric(CARD);

function verdicts(candidate: string, element: string, rubric = compiled): string[] {
  const transcript = readTranscript(`[0:00] Candidate: Hello, I am the pharmacist.\n[0:05] Patient: Hello.\n[0:08] Candidate: ${candidate}`, { file: "talk.txt" });
  const [item, part = item] = element.split("/");
  return matchStation(findStation(transcript, {}), rubric)
    .elements.filter((match) => match.item === item && match.element === part)
    .map(({ verdict }) => verdict);
}

// Invented sentences about an invented rubric: behaviour only.
describe("an element is found", () => {
  test.each([
    ["in the response's words", "Shake the inhaler well.", "shake"],
    ["in another inflection", "You should be shaking the inhaler well.", "shake"],
    ["with the device called otherwise", "Give your puffer a good shake.", "shake"],
    ["in changed order", "The inhaler, you shake that well.", "shake"],
    ["with fillers between", "So um you shake, uh, the inhaler, you know, well.", "shake"],
    ["without punctuation or capitals", "so now you shake the inhaler well and then we move on", "shake"],
    ["mis-heard", "shayk the inhaler well", "shake"],
    ["split by the recogniser", "shake the in haler well", "shake"],
    ["with its number in words", "Hold your breath for ten seconds.", "hold"],
    ["with its number within the tolerance", "Hold your breath for about nine seconds.", "hold"],
    ["with a self-correction", "Hold your breath for two, sorry, ten seconds.", "hold"],
    ["as a request in question form", "Can you shake the inhaler well for me?", "shake"],
    ["behind a denied warning", "Don't forget to shake the inhaler well.", "shake"],
    ["with the speaker's name", "So, I'm Robin and we will look at this.", "own-name"],
    ["as a frequency", "Clean the case once a week.", "wash/weekly"],
    ["asked in a last word without a verb", "That matches. And any allergies.", "allergies"],
  ])("%s", (_how, sentence, element) => expect(verdicts(sentence, element)).toContain("right"));
});

describe("an element is not found", () => {
  test.each([
    ["when it is only asked about", "Do you know how to shake the inhaler well?", "shake"],
    ["when a word that must be there is missing", "Use the inhaler well before each puff.", "shake"],
    ["when the number is missing", "Hold your breath.", "hold"],
    ["when 'I am' leads to no name", "So, I'm going to explain this.", "own-name"],
    ["in talk about something else", "The weather is good and the bus was late.", "shake"],
    ["when what is asked for is a question, and this is none", "You have no allergies.", "allergies"],
    ["in a check of understanding that is no teach-back", "Do you understand how to use it?", "teach-back"],
  ])("%s", (_why, sentence, element) => expect(verdicts(sentence, element)).not.toContain("right"));
});

describe("a number is of something else", () => {
  test.each([
    ["when it is a thousand times as long", "Keep your breath steady in town for three weeks.", "hold"],
    ["when it counts", "Hold your breath and have a second if you like.", "hold"],
  ])("%s", (_why, sentence, element) => expect(verdicts(sentence, element)).not.toContain("wrong"));
});

describe("an element is stated wrongly", () => {
  test.each([
    ["with a wrong number", "Hold your breath for two seconds.", "hold"],
    ["with a wrong number in another unit than the word that must be there", "Clean the case every day.", "wash/weekly"],
    ["denied", "You don't need to shake the inhaler.", "shake"],
    ["with a denial of something else far behind it", "Hold your breath for two seconds and let go slowly, as the powder must never be blown about.", "hold"],
    ["denied by what is said behind in everyday words", "Shaking the inhaler well, you can leave that out.", "shake"],
    ["told not to worry about doing it", "Do not worry about shaking the inhaler well.", "shake"],
    ["denied by what is said behind", "Shaking the inhaler well is not necessary.", "shake"],
  ])("%s", (_how, sentence, element) => expect(verdicts(sentence, element)).toContain("wrong"));

  test.each([
    ["the denial belongs to another sentence", "You don't want to lose it. Shake the inhaler well.", "shake"],
    ["the number belongs to another element", "Hold your breath. Once a week, clean the case.", "hold"],
    ["a number stands beside too little of what it would be the number of", "For this one the puff comes, and it goes on for two seconds.", "hold"],
    ["the number says how often, not how long", "Hold your breath and do it every four hours.", "hold"],
    ["what may happen is no instruction", "If you don't shake the inhaler well, the dose is wrong.", "shake"],
    ["a denied manner is not a denial", "Don't shake the inhaler too hard.", "shake"],
    ["another number in another unit", "Hold your breath; it takes two puffs.", "hold"],
  ])("but not when %s", (_why, sentence, element) => expect(verdicts(sentence, element)).not.toContain("wrong"));
});

describe("what must not be done", () => {
  const forbidding = structuredClone(CARD);
  const shake = forbidding.sections.flatMap(({ items }) => items).find(({ id }) => id === "shake")!.elements[0]!;
  Object.assign(shake, { say: ["never shake the inhaler"], must: [] });
  const rubric = compileRubric(forbidding);

  test.each([
    ["is told by what comes of it", "If you shake the inhaler, the puff ends up wasted.", "right"],
    ["is told by a reason that is a rule", "Put it down, because you must not shake the inhaler.", "right"],
    ["is not told where nothing bad comes of it", "If you shake the inhaler, you hear it rattle.", "none"],
  ])("%s", (_how, sentence, verdict) => expect(verdicts(sentence, "shake", rubric)[0] ?? "none").toBe(verdict));
});

test("a packed rubric finds what the rubric found", () => {
  const packed = unpackRubric(JSON.parse(JSON.stringify(packRubric(compiled))) as ReturnType<typeof packRubric>, compiled.learnt);
  for (const sentence of ["Shake the inhaler well.", "Hold your breath for two seconds.", "Give your puffer a good shake."]) {
    for (const element of ["shake", "hold"]) expect(verdicts(sentence, element, packed)).toEqual(verdicts(sentence, element));
  }
});

describe("in speech without punctuation an okay parts what is said", () => {
  const sheets = cardWith(`
      - { id: sheet, label: Gives the sheet, say: ["there's a leaflet in the drawer"], not_with: ["(purse|shade)"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, sheets).items.find(({ id }) => id === "sheet")?.content;
  test.each(["it has the day on it for your purse okay theres a leaflet in the drawer", "put the shade up alright theres a leaflet in the drawer"])("%s", (says) => expect(content(says)).toBe("complete"));
  test("far behind it another thing is spoken of", () => expect(content("There's a leaflet in the drawer, and the number for the nurses of the lantern clinic is inside the lid of the purse.")).toBe("complete"));
  test.each(["theres a leaflet in the drawer for your purse", "with the shade it is okay for the leaflet in the drawer"])("but: %s", (says) => expect(content(says)).not.toBe("complete"));
});

describe("what is no denial, no question and no word that keeps out", () => {
  const lamps = cardWith(`
      - { id: dust, label: Never dusts it, say: [never dust the lantern] }
      - { id: oil, label: Oil goes back, say: ["bring the oil back"] }
      - { id: light, label: Lights it, say: [light the lantern for an hour], not_with: ["(leave|each one)"] }
`);
  const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, lamps).items.find(({ id }) => id === item)?.content;
  test.each([
    ["dust", "every monday and i cant stress this enough never dust the lantern"],
    ["oil", "And what's left after the week, bring the oil back."],
    ["light", "So you light the lantern, love, for an hour."],
    ["light", "five matches in each ones box so thats ten and you light the lantern for an hour"],
  ])("%s: %s", (item, says) => expect(content(item, says)).toBe("complete"));
  test.each([
    ["oil", "And what's left, do you bring the oil back?"],
    ["light", "So you light the lantern, or leave it, for an hour."],
  ])("but %s: %s", (item, says) => expect(content(item, says)).not.toBe("complete"));
});
