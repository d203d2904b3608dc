import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

describe("the supplied label says in words what its quantity compares", () => {
  const labelled = (text: string, quantity: string) => broken("label: { dose: { text: Two puffs, quantity: { value: 2, unit: puff } } }", `label: { dose: { text: ${text}, quantity: { ${quantity} } } }`);

  test.each([
    ["Three puffs", "value: 2, unit: puff", /reads 'three puffs', and its quantity is 2 puffs/],
    ["Twice a day", "value: 2, unit: day", /reads 'twice a day', and its quantity is 2 days/],
    ["Inhale TWO puffs twice a day", "value: 3, unit: time-per-day", /3 times a day/],
  ])("'%s' with { %s } is told", (text, quantity, message) => {
    const rubric = labelled(text, quantity);
    expect(findingsOf(rubric)).toEqual([expect.objectContaining({ code: "SW-C29", severity: "warning", line: lineOf(rubric, "label:"), message: expect.stringMatching(message) })]);
  });

  test.each([
    ["Inhale TWO puffs twice a day", "value: 2, unit: puff"],
    ["Inhale TWO puffs twice a day", "value: 2, unit: time-per-day"],
    ["One or two puffs when needed", "value: [1, 2], unit: puff"],
    ["As the nurse has written it", "value: 2, unit: puff"],
    ["every 72 hours", "value: 3, unit: day"],
  ])("'%s' with { %s } is not", (text, quantity) => {
    expect(findingsOf(labelled(text, quantity))).toEqual([]);
  });
});

describe("a fact holds where the rubric's guidance does", () => {
  const where = (rubric: string, fact: string) => broken("jurisdiction: [any]\nscenario", `jurisdiction: [${rubric}]\nscenario`).replace("fact: { source: guideline, jurisdiction: [any]", `fact: { source: guideline, jurisdiction: [${fact}]`);

  test("one of another country alone is told", () => {
    const text = where("GB", "US, CA");
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C30", severity: "warning", line: lineOf(text, "fact:"), message: "the fact of 'shake' holds in US, CA, and the rubric follows GB" })]);
  });

  test.each([["GB", "GB, US"], ["GB", "any"], ["any", "US"], ["GB-SCT", "GB"], ["GB", "GB-SCT"]])("a rubric of %s may rest on a fact of %s", (rubric, fact) => {
    expect(findingsOf(where(rubric, fact))).toEqual([]);
  });
});

test("a limit of seconds that were meant for minutes is told with how to write minutes", () => {
  const text = broken("time: { limit: 7 min, target: 6 min }", "time: { limit: 7, target: 6 }");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C13", line: lineOf(text, "time:"), mend: "A number alone is seconds: write '7 min' for minutes." })]);
});

test("a cue of words that everybody says is told: any patient gives it", () => {
  const text = broken("        label: Rinses the mouth\n", "        label: Rinses the mouth\n        cue: { patient: [my mouth gets sore from it, it is] }\n");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C26", line: lineOf(text, "cue:"), message: "'it is' is of words that everybody says: who says them in any sentence gives the cue of 'rinse'" })]);
});
