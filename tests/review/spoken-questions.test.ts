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
    ["a wrong reply that an answer has too", { incorrect: ["a bitter taste that goes off"] }, "incorrect:", /wrong reply/],
  ])("%s is told at its line", (_what, phrases, at, message) => {
    const text = asking(phrases);
    const told = findingsOf(text).filter(({ code }) => code === "SW-C28");
    expect(told.length).toBeGreaterThan(0);
    expect(told).toContainEqual(expect.objectContaining({ severity: "warning", file: "card.yaml", message: expect.stringMatching(message), mend: expect.any(String) }));
    if (at !== "incorrect:") expect(told.map(({ line }) => line)).toContain(lineOf(text, `- ${at}`));
  });
});

test("a wording that is heard as another question is told", () => {
  const text = asking({ says: ["does it taste of anything", "does it smell of anything"] }).replace("    - id: taste", "    - { id: smell, says: [does it smell of anything, is there a smell to it], answer: [it smells of mint] }\n    - id: taste");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C28", line: lineOf(text, "- does it smell of anything"), message: "'does it smell of anything' is not heard as the patient's question 'taste': it is heard as 'smell'" })]);
});

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

describe("a unit that is said again behind {quantity} is told", () => {
  test.each([
    ["hold your breath for {quantity} seconds", "seconds"],
    ["hold your breath {quantity} second|seconds long", "second"],
  ])("%s", (phrase, unit) => {
    const text = broken("- hold your breath for {quantity}", `- ${phrase}`);
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C27", severity: "warning", line: lineOf(text, phrase), message: expect.stringMatching(/here 'ten seconds'/), mend: `Take '${unit}' out.` }));
  });

  test.each(["hold your breath for {quantity} every time", "for {quantity} hold your breath in, minutes don't count"])("'%s' says none", (phrase) => {
    expect(findingsOf(broken("- hold your breath for {quantity}", `- ${phrase}`)).filter(({ code }) => code === "SW-C27")).toEqual([]);
  });

  test("how often has its 'a day' in it", () => {
    const text = broken("quantity: { value: 10, unit: second }", "quantity: { value: 2, unit: time-per-day }").replace("- hold your breath for {quantity}", "- hold your breath {quantity} a day");
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C27", message: expect.stringMatching(/here 'twice a day'/) }));
    const habit = text.replace("{quantity} a day", "{quantity} every day");
    expect(findingsOf(habit).filter(({ code }) => code === "SW-C27")).toEqual([]);
  });
});

describe("a source that nothing rests on is told in a block of one's own too", () => {
  const BLOCK = "saidwell: block@1\nid: opening\ntitle: Opening\nsources:\n  idle: { body: A body, title: A title, year: 2024 }\n  used: { body: A body, title: Another, year: 2024 }\nitems:\n  - id: greet\n    label: Greets\n    fact: { source: used, jurisdiction: [any], review_by: 2028-01-31 }\n    say: [hello and welcome to the pharmacy, good morning and welcome, hi and welcome to the pharmacy]\n  - id: seat\n    label: Offers a seat\n    say: [please take a seat, sit down if you like, would you like to sit down]\n";
  const text = broken("sections:\n", "sections:\n  - include: opening.yaml\n    drop: [greet]\n");

  test("at its line in the block; what an item names that the rubric drops is used by others", () => {
    const told = findingsOf(text, { blocks: { "opening.yaml": BLOCK } }).filter(({ code }) => code === "SW-C22");
    expect(told).toEqual([expect.objectContaining({ file: "folder/opening.yaml", line: 5, message: "no fact names the source 'idle'" })]);
  });

  test("not in a block that is part of the program, which nobody can mend", () => {
    expect(findingsOf(text, { blocks: { "opening.yaml": BLOCK }, foreign: () => true }).filter(({ code }) => code === "SW-C22")).toEqual([]);
  });
});
