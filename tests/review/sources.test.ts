import { describe, expect, test } from "vitest";
import { broken, findingsOf } from "./card.ts";

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
