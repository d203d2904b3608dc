import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf } from "./card.ts";

/** A question of the patient's with its own answers and wrong replies, one a line. */
function asking({ says = ["does it taste of anything", "is there a taste to it", "what does it taste like"], answer = ["it tastes a bit bitter", "a bitter taste that goes off"], incorrect = ["it tastes of nothing at all", "it's sweet as sugar"] }: { says?: string[]; answer?: string[]; incorrect?: string[] }): string {
  const list = (name: string, phrases: string[]) => [`      ${name}:`, ...phrases.map((phrase) => `        - ${phrase}`)];
  const question = ["  questions:", "    - id: taste", ...list("says", says), ...list("answer", answer), ...list("incorrect", incorrect)];
  return broken("scenario: { task: Explain it., counselled: patient, label: { dose: { text: Two puffs, quantity: { value: 2, unit: puff } } } }", ["scenario:", "  task: Explain it.", "  counselled: patient", ...question].join("\n"));
}

describe("the phrases of a patient's question are said to the matcher", () => {
  test("those that are heard as what they are there for are not told", () => {
    expect(findingsOf(asking({}))).toEqual([]);
  });

  test.each([
    ["an answer that is an unsafe statement", { answer: ["it tastes a bit bitter", "swallow the rinsing water every time"] }, "swallow the rinsing water every time", /taken for the unsafe statement 'swallow'/],
    ["a wrong reply that an answer has too", { answer: ["it tastes a bit bitter"], incorrect: ["it tastes a bit bitter"] }, "it tastes a bit bitter", /wrong reply/],
  ])("%s is told at its line", (_what, phrases, at, message) => {
    const text = asking(phrases);
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C28", severity: "warning", file: "card.yaml", line: text.slice(0, text.lastIndexOf(`- ${at}`)).split("\n").length, message: expect.stringMatching(message), mend: expect.any(String) }));
  });
});

test("a wording that is heard as another question is told", () => {
  const text = asking({ says: ["does it taste of anything", "does it smell of anything"] }).replace("    - id: taste", "    - { id: smell, says: [does it smell of anything, is there a smell to it], answer: [it smells of mint] }\n    - id: taste");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C28", line: lineOf(text, "- does it smell of anything"), message: "'does it smell of anything' is not heard as the patient's question 'taste': it is heard as 'smell'" })]);
});
