import { describe, expect, test } from "vitest";
import { HELD_SIGNS } from "../../src/matching/held-likelihood.ts";
import weights from "../../src/matching/likelihood.json";
import { loadRubric } from "../../src/rubric/load.ts";
import { markTalk, OPENING } from "../scoring/station-card.ts";

// Invented, and long enough that what is spoken of around tells: behaviour only.
const card = loadRubric(
  `
saidwell: rubric@1
id: around-card
version: 1
jurisdiction: [any]
title: Powder puffer, an invented station
history: ["2026-11-26 invented for the tests"]
time: { limit: 300, target: 240 }
scenario:
  task: Explain the powder puffer.
  counselled: patient
  label: { dose: { text: one puff, quantity: { value: 1, unit: puff } } }
sections:
  - id: all
    title: Everything
    items:
      - { id: dry, label: Never wets it, say: [keep it dry], incorrect: [wash it every evening] }
      - id: dose
        label: When and how much
        elements:
          - { id: morning, label: In the morning, say: [take it in the morning] }
          - { id: puffs, label: One puff, say: ["take {quantity} of it"], quantity: { value: 1, unit: puff } }
      - id: keep
        label: How it is kept
        elements:
          - { id: cool, label: In a cool place, say: [keep it in a cool cupboard] }
          - { id: life, label: Six weeks once open, say: ["once it is open it keeps for {quantity}"], quantity: { value: 6, unit: week } }
pass: { minimum: 50 }
`,
  { file: "around-card.yaml", readBlock: () => { throw new Error("no blocks"); } },
);
const TALK = ["C: You take it in the morning, when you have your breakfast, and that is all for the whole of the day.", "P: Okay.", "C: My daughter is coming over from the coast on the boat this weekend with the children."];
const incorrect = (says: string) => markTalk([...OPENING, ...TALK, `C: ${says}`], {}, card).incorrect.map(({ item }) => item);

describe("what is held against the speaker", () => {
  test("a wrong number beside what else is said of its item", () => {
    expect(incorrect("You keep it in a cool cupboard, mind. Once it is open it keeps for twelve weeks.")).toContain("keep");
  });

  test("no number that is said of something else altogether", () => {
    expect(incorrect("The shop on the front is open, my daughter says, and they are staying with us for about twelve weeks of the summer.")).not.toContain("keep");
  });

  test("a wrong statement said whole", () => expect(incorrect("Wash it every evening.")).toContain("dry"));

  test("no wrong statement where the right thing fits the same words better", () => expect(incorrect("Keep it dry every evening, whatever else you wash.")).not.toContain("dry"));
});

test("every sign has its weight", () => {
  expect(weights.statement.signs).toHaveLength(HELD_SIGNS.length);
  expect(weights.number.signs).toHaveLength(HELD_SIGNS.length);
});
