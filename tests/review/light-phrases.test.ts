import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

describe("a phrase of a few words that everybody says is told: any talk has them", () => {
  test.each([
    ["a response", broken("- rinse and spit afterwards", "- it is"), "- it is", /'it is' is of words that everybody says: who says them in any sentence earns 'rinse' of 'rinse'/],
    ["a single word", broken("- rinse and spit afterwards", "- 'no'"), "- 'no'", /'no' is of words/],
    ["a wrong statement", broken("- rinse and spit afterwards", "- rinse and spit afterwards\n        incorrect:\n          - do it again"), "- do it again", /states wrongly 'rinse'/],
    ["an unsafe statement", broken("say: [swallow the rinsing water every time]", "say: [swallow the rinsing water every time, do it]"), "unsafe:\n  -", /says the unsafe statement 'swallow'/],
  ])("%s", (_what, text, at, message) => {
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C26", severity: "warning", line: lineOf(text, at) + (at.startsWith("unsafe") ? 1 : 0), message: expect.stringMatching(message) }));
  });

  test("a must-word that has to be said as well makes it one of the element's own", () => {
    expect(findingsOf(broken("- rinse and spit afterwards", "- it is\n        must: [rinse|gargle]")).filter(({ code }) => code === "SW-C26")).toEqual([]);
  });
});

test("a cue of words that everybody says is told: any patient gives it", () => {
  const text = broken("        label: Rinses the mouth\n", "        label: Rinses the mouth\n        cue: { patient: [my mouth gets sore from it, it is] }\n");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C26", line: lineOf(text, "cue:"), message: "'it is' is of words that everybody says: who says them in any sentence gives the cue of 'rinse'" })]);
});
