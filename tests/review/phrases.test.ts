import { describe, expect, test } from "vitest";
import { broken, findingsOf, lineOf, review, SOUND } from "./card.ts";

const of = (text: string, code: string) => findingsOf(text).filter((finding) => finding.code === code);

describe("a response that does not earn its own element says why", () => {
  test("for want of a must-word that the rest of the phrase has", () => {
    const text = broken("          - rinse and spit afterwards\n", "          - (rinse with water|rinse) and spit afterwards\n        must: [water]\n");
    expect(of(text, "SW-C01")).toEqual([
      expect.objectContaining({ severity: "warning", line: lineOf(text, "- (rinse with water"), message: expect.stringContaining("lacks a must-word ('water')"), mend: expect.stringContaining("must") }),
    ]);
  });

  test("for words of not_with", () => {
    const text = broken("          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n        not_with: [spit]\n");
    expect(of(text, "SW-C01").map(({ message }) => message)).toContainEqual(expect.stringContaining("not_with"));
  });

  test("because it tells where the item asks", () => {
    const text = broken("        label: Rinses the mouth\n", "        label: Rinses the mouth\n        kind: ask-openly\n");
    expect(of(text, "SW-C01").map(({ message }) => message)).toContainEqual(expect.stringContaining("kind 'ask-openly'"));
  });

  test("and only its element: that it earns another of the same item does not help", () => {
    const { figures } = review(broken("          - rinse and spit afterwards\n", "          - (rinse with water|rinse) and spit afterwards\n        must: [water]\n"));
    expect(figures).toMatchObject({ unearned: 1, responses: 9 });
  });
});

test("a response without a must-word stands by its own words: whoever wrote it took it for right", () => {
  const text = broken("          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n        must: [water]\n");
  expect(of(text, "SW-C01")).toEqual([]);
});

describe("a response that earns another item", () => {
  const shared = broken("          - always shake the inhaler hard\n", "          - always shake the inhaler hard\n          - shake it and rinse your mouth with water afterwards\n");

  test("is told at its line, with both items, and stands in the table", () => {
    expect(of(shared, "SW-C02")).toEqual([expect.objectContaining({ severity: "warning", line: lineOf(shared, "shake it and rinse"), message: "'shake it and rinse your mouth with water afterwards', a response of 'shake', earns 'rinse' as well" })]);
    expect(review(shared).confusion).toEqual([
      expect.objectContaining({ item: "shake", response: "shake it and rinse your mouth with water afterwards", other: "rinse", effect: "earns" }),
    ]);
  });

  test("counts towards the share that may be at most 2 of a hundred", () => {
    expect(review(shared).figures).toMatchObject({ confused: 1, responses: 10, share: 0.1 });
    expect(of(shared, "SW-C06")).toEqual([expect.objectContaining({ severity: "warning", message: expect.stringContaining("1 of 10 acceptable responses (10.0%)") })]);
  });

  test("every alternative of a|b is tried, and the one that does it is named", () => {
    const text = broken("          - always shake the inhaler hard\n", "          - shake|rinse the inhaler|mouth well|(with water afterwards)\n");
    expect(of(text, "SW-C02")[0]!.message).toContain("'rinse the mouth with water afterwards'");
  });

  test("does no harm when that item does not apply in this scenario", () => {
    expect(of(shared.replace("        label: Rinses the mouth\n", "        label: Rinses the mouth\n        when: [child]\n"), "SW-C02")).toEqual([]);
  });

  test("of the same item is no confusion", () => {
    const elements = `        elements:
          - { id: water, label: Water, say: [rinse your mouth with water, rinse the mouth out with water, rinse your mouth with plain water] }
          - { id: after, label: After, say: [rinse your mouth with water each time, rinse with water after every puff, rinse your mouth out with water after it] }
`;
    const text = broken("        say:\n          - rinse your mouth with water afterwards\n          - gargle with water and spit it out\n          - rinse and spit afterwards\n", elements);
    expect(review(text).confusion).toEqual([]);
  });

  test("two items with the same words cannot be told apart", () => {
    const twin = `      - id: wash
        label: Washes out the mouth
        say:
          - rinse your mouth with water afterwards
          - gargle with water and spit it out
          - rinse and spit afterwards
`;
    const text = broken("order:\n", `${twin}order:\n`);
    expect(of(text, "SW-C05").map(({ line, message }) => [line, message])).toEqual([
      [lineOf(text, "id: rinse"), expect.stringContaining("'rinse' cannot be told from 'wash': 3 of its 3")],
      [lineOf(text, "id: wash"), expect.stringContaining("'wash' cannot be told from 'rinse'")],
    ]);
  });
});

test("a response that counts as said wrongly for another item is told apart from one that earns it", () => {
  const text = broken("          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n        incorrect: [shake the inhaler well]\n");
  expect(of(text, "SW-C03")).toEqual([expect.objectContaining({ severity: "warning", line: lineOf(text, "- shake the inhaler well"), message: expect.stringContaining("counts as said wrongly for 'rinse'") })]);
  expect(review(text).figures.confused).toBe(0);
});

test("a response that is taken for an unsafe statement is an error", () => {
  const text = broken("          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n          - swallow the rinsing water every time\n");
  expect(of(text, "SW-C04")).toEqual([expect.objectContaining({ severity: "error", line: lineOf(text, "- swallow the") })]);
});

test("few wordings of an element are a note", () => {
  const text = broken("          - gargle with water and spit it out\n          - rinse and spit afterwards\n", "");
  expect(of(text, "SW-C14")).toEqual([expect.objectContaining({ severity: "info", message: "'rinse' has only one acceptable response" })]);
});

describe("an unsafe statement's own phrases", () => {
  const statement = (fields: string) => broken("say: [swallow the rinsing water every time] }", `say: [swallow the rinsing water every time], ${fields} }`);

  test.each([
    ["must: [elephant]", "it lacks a must-word ('elephant')"],
    // "Hits" in a list of words is "hit" in a phrase: words are compared by their stems.
    ["not_with: [gargle, swallows]", "it has words of 'not_with' ('swallows')"],
  ])("are told when %s shuts them out: nobody who says them would be", (fields, why) => {
    const text = statement(fields);
    expect(of(text, "SW-C23").map(({ severity, line, message }) => [severity, line, message])).toEqual([["warning", lineOf(text, "swallow the rinsing"), `'swallow the rinsing water every time' is not found for the unsafe statement 'swallow': ${why}`]]);
  });

  test.each(["must: [rinsing|gargling]", "not_with: [gargle]", "severity: minor"])("are not, where they are found: %s", (fields) => {
    expect(of(fields.startsWith("severity") ? SOUND : statement(fields), "SW-C23")).toEqual([]);
  });

  test("one wording of a phrase that is found is enough", () => {
    expect(of(broken("say: [swallow the rinsing water every time] }", "say: [swallow|drink the rinsing water every time], must: [drink] }"), "SW-C23")).toEqual([]);
  });
});

describe("an element's own wrong statements", () => {
  const wrong = (fields: string) => broken("          - rinse and spit afterwards\n", `          - rinse and spit afterwards\n        ${fields}\n`);

  test("are told when nobody who makes them would be", () => {
    const said = "rinse your mouth with water afterwards";
    const why = "it earns the element: a response has the same words";
    const text = wrong(`incorrect: [${said}]`);
    expect(of(text, "SW-C24").map(({ severity, line, message }) => [severity, line, message])).toEqual([["warning", lineOf(text, "incorrect:"), `'${said}', a wrong statement of 'rinse' of 'rinse', is not told when it is made: ${why}`]]);
  });

  test.each(["incorrect: [swallow the water you gargled with]", "incorrect: [never rinse your mouth with water, rinse your mouth with petrol afterwards]", "incorrect: [gargle with the mouthpiece water]\n        not_with: [mouthpiece]"])("are not, where they are told: %s", (fields) => {
    expect(of(wrong(fields), "SW-C24")).toEqual([]);
  });
});

describe("a must-word", () => {
  const must = (words: string) => broken("          - rinse and spit afterwards\n", `          - rinse and spit afterwards\n        must: ${words}\n`);

  test("that no response has keeps nothing out, since each stands by its own words", () => {
    const text = must("[rinse|gargle, elephant]");
    expect(of(text, "SW-C25").map(({ severity, line, message }) => [severity, line, message])).toEqual([["warning", lineOf(text, "must:"), "no response of 'rinse' has the must-word 'elephant', so it keeps nothing out"]]);
  });

  test("that one of them has is asked for", () => expect(of(must("[rinse|gargle, water]"), "SW-C25")).toEqual([]));
});

describe("examples", () => {
  const withExamples = (examples: string) => broken("          - rinse and spit afterwards\n", `          - rinse and spit afterwards\n        examples: ${examples}\n`);

  test("that do what they are there for pass", () => {
    expect(findingsOf(withExamples('{ earns: ["When you are done, rinse your mouth out with water."], misses: ["Shake the inhaler well."] }'))).toEqual([]);
  });

  test("that must earn and do not, or must not and do, are errors", () => {
    const text = withExamples('{ earns: ["See you next week."], misses: ["rinse your mouth with water afterwards"] }');
    expect(of(text, "SW-C07").map(({ severity, line, message }) => [severity, line, message])).toEqual([
      ["error", lineOf(text, "examples:"), "the example 'See you next week.' must earn 'rinse' of 'rinse', and does not"],
      ["error", lineOf(text, "examples:"), "the example 'rinse your mouth with water afterwards' must not earn 'rinse' of 'rinse', and does"],
    ]);
  });

  test("of an unsafe statement too", () => {
    const text = broken("say: [swallow the rinsing water every time] }", "say: [swallow the rinsing water every time], examples: { earns: [swallow the rinsing water every time], misses: [swallow the rinsing water every time] } }");
    expect(of(text, "SW-C07").map(({ message }) => message)).toEqual([expect.stringContaining("must not earn the unsafe statement 'swallow'")]);
  });
});

test("the label's number goes before the rubric's own, as in marking", () => {
  const text = SOUND.replaceAll("for {quantity}", "of {quantity}").replace("quantity: { value: 10, unit: second }", "quantity: { label: dose }");
  expect(review(text).figures.utterances).toBe(9);
});
