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
