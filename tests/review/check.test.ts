import { describe, expect, test } from "vitest";
import { reviewBlock } from "../../src/review/block.ts";
import { reportOf } from "../../src/review/check.ts";
import { BLOCK, broken, findingsOf, lineOf, review, SOUND } from "./card.ts";

test("a sound rubric has no finding", () => {
  expect(findingsOf(SOUND)).toEqual([]);
});

test("the figures count what was said", () => {
  const { figures } = review(SOUND);
  expect(figures).toMatchObject({ items: 3, critical: 1, elements: 3, responses: 9, utterances: 9, unearned: 0, confused: 0, share: 0 });
});

describe("form: a fault names its line", () => {
  test.each<[string, string, string, string, string, number?]>([
    ["an id that stands twice", "      - id: rinse\n        label: Rinses", "      - id: hold\n        label: Again, rinses", "SW-R06", "        label: Again", -1],
    ["a pair of the order that leads nowhere", "then: hold,", "then: held,", "SW-R05", "then: held"],
    ["a quantity without unit", "quantity: { value: 10, unit: second }", "quantity: { value: 10 }", "SW-R03", "quantity: { value: 10 }"],
    ["a place for a number and no number", "          - shake the inhaler well", "          - shake the inhaler {quantity}", "SW-R07", "          - shake the inhaler {quantity}"],
    ["a key that is none", "        critical: true", "        crucial: true", "SW-R03", "crucial"],
  ])("%s", (_name, from, to, code, at, before = 0) => {
    const text = broken(from, to);
    expect(findingsOf(text)).toEqual(expect.arrayContaining([expect.objectContaining({ code, severity: "error", file: "card.yaml", line: lineOf(text, at) + before, mend: expect.any(String) })]));
  });

  test("in a block, the block's own file and line", () => {
    const text = broken("sections:\n", "sections:\n  - include: opening.yaml\n");
    const block = BLOCK.replace("    label: Greets\n", "    label: Greets\n    wieght: 2\n");
    expect(findingsOf(text, { blocks: { "opening.yaml": block } })).toEqual([expect.objectContaining({ code: "SW-R03", file: "folder/opening.yaml", line: 7 })]);
  });

  test("a block alone is checked for its form and for ids that stand twice", () => {
    expect(reviewBlock(BLOCK, "opening.yaml")).toEqual({ id: "opening", line: 2, findings: [] });
    expect(reviewBlock(BLOCK.replace("label", "labell"), "opening.yaml").findings).toContainEqual(expect.objectContaining({ code: "SW-R03", file: "opening.yaml", line: 6 }));
    expect(reviewBlock(BLOCK + BLOCK.slice(BLOCK.indexOf("  - id: greet")), "opening.yaml").findings).toEqual([expect.objectContaining({ code: "SW-R06", line: 8 })]);
    expect(reviewBlock("a: [", "opening.yaml").findings[0]).toMatchObject({ code: "SW-R02" });
  });
});

describe("facts", () => {
  test("past its date, a fact is a warning; near it, a note; before that, nothing", () => {
    const on = (today: string) => findingsOf(SOUND, { today }).map(({ code, severity, line }) => [code, severity, line]);
    const line = lineOf(SOUND, "        fact:");
    expect(on("2028-02-01")).toEqual([["SW-C11", "warning", line]]);
    expect(on("2028-01-31")).toEqual([["SW-C11", "info", line]]);
    expect(on("2027-12-10")).toEqual([["SW-C11", "info", line]]);
    expect(on("2027-10-01")).toEqual([]);
  });

  test("a fact of a block is told at the block's line, and once however many rubrics include it", () => {
    const block = BLOCK.replace("    label: Greets\n", '    label: Greets\n    fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2020-01-01 }\n');
    const text = broken("sections:\n", "sections:\n  - include: opening.yaml\n");
    const findings = findingsOf(text, { blocks: { "opening.yaml": block } });
    expect(findings).toEqual([expect.objectContaining({ code: "SW-C11", file: "folder/opening.yaml", line: 7 })]);
    expect(reportOf([], [...findings, ...findings], { version: "0", today: "2026-11-25" }).counts).toEqual({ errors: 0, warnings: 1, notes: 0 });
  });

  test("a critical item without a source is an error, one on common practice a warning", () => {
    const without = broken("        fact: { source: guideline, jurisdiction: [any], review_by: 2028-01-31 }\n", "");
    expect(findingsOf(without)).toContainEqual(expect.objectContaining({ code: "SW-C09", severity: "error", line: lineOf(without, "id: shake") }));
    const practice = broken("source: guideline,", 'source: "common practice, no source",');
    expect(findingsOf(practice)).toContainEqual(expect.objectContaining({ code: "SW-C09", severity: "warning" }));
  });

  test("a critical item of several elements says how many are the least", () => {
    const elements = `        elements:
          - { id: well, label: Well, say: [shake the inhaler well, give the inhaler a good shake, always shake the inhaler hard] }
          - { id: upright, label: Upright, say: [keep the canister upright, hold it with the canister on top, the canister points up] }
`;
    const text = broken("        say:\n          - shake the inhaler well\n          - give the inhaler a good shake\n          - always shake the inhaler hard\n", elements);
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C10", severity: "warning", line: lineOf(text, "id: shake") })]);
    expect(findingsOf(text.replace("        elements:", "        minimum: 1\n        elements:"))).toEqual([]);
  });
});

describe("a block that is part of the program", () => {
  const block = BLOCK.replace(", hi and welcome to the pharmacy]", "]");
  const options = { blocks: { "shipped:opening": block }, foreign: () => true };
  const include = (more = "") => broken("sections:\n", `sections:\n  - include: shipped:opening\n${more}`);

  test("is nobody's to mend: what is found in it is told where it is included, with its own line", () => {
    const text = include();
    expect(findingsOf(text, options)).toEqual([expect.objectContaining({ code: "SW-C14", file: "card.yaml", line: lineOf(text, "include:"), message: expect.stringMatching(/ \(folder\/shipped:opening, line 7\)$/) })]);
  });

  test("what an override brings about is told at the override", () => {
    const text = include("    override:\n      greet:\n        critical: true\n");
    const told = findingsOf(text, options).map(({ code, file, line }) => [code, file, line]);
    expect(told).toContainEqual(["SW-C09", "card.yaml", lineOf(text, "critical: true")]);
    expect(told).toContainEqual(["SW-C14", "card.yaml", lineOf(text, "greet:")]);
  });
});

describe("conditions", () => {
  const when = (condition: string, conditions: string) => broken("        label: Rinses the mouth\n", `        label: Rinses the mouth\n        when: [${condition}]\n`).replace("counselled: patient,", `counselled: patient, conditions: [${conditions}],`);
  test("an item of the rubric's own that waits for what the scenario has not is a warning", () => {
    const text = when("pregnent", "pregnant");
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C20", severity: "warning", line: lineOf(text, "when:"), mend: expect.stringContaining("pregnant") })]);
  });
  test.each([["pregnant", "pregnant"], ["not child", "pregnant"]])("'%s' with the condition '%s' is none", (condition, conditions) => expect(findingsOf(when(condition, conditions))).toEqual([]));
  test("an item that must not meet what the scenario has counts for nobody either", () => {
    expect(findingsOf(when("not child", "child"))).toEqual([expect.objectContaining({ code: "SW-C20", severity: "warning", line: lineOf(when("not child", "child"), "when:"), message: expect.stringContaining("the scenario has that condition") })]);
  });
  test("nor is one of a block: that is what they are for", () => {
    expect(findingsOf(broken("sections:\n", "sections:\n  - include: opening.yaml\n"), { blocks: { "opening.yaml": BLOCK.replace("    label: Greets\n", "    label: Greets\n    when: [child]\n") } })).toEqual([]);
  });
});

describe("responses that stand twice", () => {
  test("are a note, and do not count as several", () => {
    const text = broken("          - gargle with water and spit it out\n", "          - Rinse your mouth with water  afterwards.\n");
    const findings = findingsOf(text);
    expect(findings).toHaveLength(2);
    expect(findings).toContainEqual(expect.objectContaining({ code: "SW-C14", message: expect.stringContaining("only 2") }));
    expect(findings).toContainEqual(expect.objectContaining({ code: "SW-C19", severity: "info", line: lineOf(text, "Rinse your mouth") }));
  });
});

test("a source that no fact names is a note", () => {
  const text = broken("  guideline:", "  other: { body: Some body, title: Other, year: 2020 }\n  guideline:");
  expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C22", severity: "info", line: lineOf(text, "  other:") })]);
});

describe("numbers", () => {
  test("the unit 'number' is no unit", () => {
    const text = broken("unit: second", "unit: number");
    expect(findingsOf(text)).toContainEqual(expect.objectContaining({ code: "SW-C08", severity: "warning", line: lineOf(text, "quantity: { value: 10") }));
  });

  test("a number that most responses state and nothing compares is a note", () => {
    const text = SOUND.replaceAll("for {quantity}", "for ten seconds").replace("        quantity: { value: 10, unit: second }\n", "");
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C08", severity: "info", message: expect.stringContaining("'ten seconds' and 2 more") })]);
  });

  test.each([
    ["hold it in for ten seconds", "ten seconds"],
    ["hold it for at least 10 seconds", "at least 10 seconds"],
    ["count to ten with your mouth shut", "ten"],
  ])("'%s' beside {quantity} writes the number out, and any other would earn it", (say, number) => {
    const text = broken("keep holding your breath for {quantity}", say);
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C08", severity: "warning", line: lineOf(text, say), message: expect.stringContaining(`writes out '${number}'`) })]);
  });

  test.each(["hold your breath until your ears pop", "hold your breath a few seconds", "ten seconds", "hold your breath every time", "hold your breath for one more puff"])("'%s' writes no number out that could be another", (say) => {
    expect(findingsOf(broken("keep holding your breath for {quantity}", say)).filter(({ code }) => code === "SW-C08")).toEqual([]);
  });
});

describe("order", () => {
  test("pairs that lead back to their beginning contradict each other; the circle is told once", () => {
    const text = broken("unsafe:\n", "  - { first: rinse, then: shake, severity: minor, reason: Round. }\nunsafe:\n");
    expect(findingsOf(text)).toEqual([expect.objectContaining({ code: "SW-C12", severity: "error", message: expect.stringContaining("shake before hold before rinse before shake") })]);
  });

  test("an item before itself", () => {
    expect(findingsOf(broken("then: hold,", "then: shake,"))).toEqual([expect.objectContaining({ code: "SW-C12", message: expect.stringContaining("shake before shake") })]);
  });
});

describe("length", () => {
  // 190 words a minute: Tauroza and Allison 1990. The shortest responses have 4, 6 (the number's two words with them) and 4 words.
  test("the shortest words of all elements at the pace of an interview", () => {
    expect(review(SOUND).figures.speaking).toMatchObject({ words: 13, seconds: Math.round((600 * 13) / 190) / 10 });
  });

  test("more than the limit is a warning; middling words beyond the target are a note", () => {
    expect(findingsOf(broken("{ limit: 7 min, target: 6 min }", "{ limit: 4, target: 4 }"))).toEqual([expect.objectContaining({ code: "SW-C13", severity: "warning" })]);
    expect(findingsOf(broken("{ limit: 7 min, target: 6 min }", "{ limit: 4.2, target: 4.2 }"))).toEqual([expect.objectContaining({ code: "SW-C13", severity: "info" })]);
  });

  test("items that do not apply take no time", () => {
    const when = broken("        label: Rinses the mouth\n", "        label: Rinses the mouth\n        when: [child]\n");
    expect(review(when).figures.speaking.words).toBe(9);
  });
});

test("a response of a shared block that earns nothing is told once, though each rubric has its own reason; two other faults of one line are two", () => {
  const at = (code: string, message: string) => ({ code, severity: "warning" as const, file: "block.yaml", line: 7, column: 3, message });
  const told = (code: string) => reportOf([], [at(code, "one reason"), at(code, "another reason")], { version: "0", today: "2026-11-25" }).findings.map(({ message }) => message);
  expect(told("SW-C01")).toEqual(["one reason"]);
  expect(told("SW-C02")).toEqual(["another reason", "one reason"]);
});
