import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { loadRubric } from "../../src/rubric/load.ts";

const BLOCK = `saidwell: block@1
id: opening
title: Opening
items:
  - { id: greet, label: Greets, say: [hello there], weight: 2 }
  - { id: name, label: Gives name, say: [my name is] }
`;

const RUBRIC = `saidwell: rubric@1
id: card
title: Card
version: 1
jurisdiction: [any]
scenario: { task: Explain it., counselled: patient }
time: { limit: 7 min, target: "6:30" }
sections:
  - id: steps
    title: Steps
    items:
      - id: shake
        label: Shakes it
        say: [shake it well]
pass: { minimum: 60 }
`;

const load = (text: string, blocks: Record<string, string> = { "blocks/opening.yaml": BLOCK }) =>
  loadRubric(text, {
    file: "card.yaml",
    readBlock: (include) => {
      const block = blocks[include];
      if (block === undefined) throw new Error("no such file");
      return block;
    },
  });

function findings(text: string) {
  try {
    load(text);
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
  throw new Error("the rubric was read without a complaint");
}

describe("a rubric is read", () => {
  test("durations become seconds; the short form becomes one element", () => {
    const rubric = load(RUBRIC);
    expect(rubric.time).toEqual({ limit: 420, target: 390 });
    expect(rubric.sections[0]!.items[0]!.elements.map(({ id }) => id)).toEqual(["shake"]);
  });

  test("an included block can lose items and have fields overridden, and keeps the rest", () => {
    const rubric = load(RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n    drop: [name]\n    override: { greet: { critical: true } }\n"));
    const [greet, ...others] = rubric.sections[0]!.items;
    expect(others).toEqual([]);
    expect(greet).toMatchObject({ id: "greet", weight: 2, critical: true });
  });

  test("the hash follows the content and not the file's name", () => {
    const again = loadRubric(RUBRIC, { file: "other.yaml", readBlock: () => "" });
    expect(again.hash).toBe(load(RUBRIC).hash);
    expect(load(RUBRIC.replace("minimum: 60", "minimum: 61")).hash).not.toBe(again.hash);
  });
});

describe("a fault is told with file, line and how to mend it", () => {
  test.each<[string, string, string, number, RegExp]>([
    ["broken YAML", RUBRIC.replace("title: Card", "title: [Card"), "SW-R02", 4, /YAML/],
    ["an unknown field", RUBRIC.replace("label: Shakes it", "label: Shakes it\n        wieght: 2"), "SW-R03", 14, /wieght|Unrecognized|unrecognized/],
    ["a missing field", RUBRIC.replace("title: Card\n", ""), "SW-R03", 1, /title/],
    ["a wrong kind of value", RUBRIC.replace("version: 1", "version: one"), "SW-R03", 4, /version/],
    ["a duration that is none", RUBRIC.replace("7 min", "a while"), "SW-R03", 7, /duration/],
    ["a target behind the limit", RUBRIC.replace('"6:30"', '"9:30"'), "SW-R03", 7, /target/],
    ["an item without words", RUBRIC.replace("        say: [shake it well]\n", ""), "SW-R03", 12, /elements|say/],
    ["an id in capitals", RUBRIC.replace("id: shake", "id: Shake"), "SW-R03", 12, /lower case/],
    ["a name that leads nowhere", `${RUBRIC}order: [{ first: shake, then: press, severity: minor, reason: so }]\n`, "SW-R05", 16, /press/],
    ["an item that stands twice", RUBRIC.replace("pass:", "      - { id: shake, label: Again, say: [shake it] }\npass:"), "SW-R06", 12, /twice/],
    ["a quantity that no phrase uses", RUBRIC.replace("say: [shake it well]", "say: [shake it well]\n        quantity: { value: 2, unit: second }"), "SW-R07", 12, /quantity/],
    ["a phrase whose quantity is missing", RUBRIC.replace("[shake it well]", '["shake it for {quantity}"]'), "SW-R07", 12, /quantity/],
    ["a block that cannot be read", RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/none.yaml\n"), "SW-R04", 9, /none\.yaml/],
    ["a dropped item that the block lacks", RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n    drop: [nobody]\n"), "SW-R05", 10, /nobody/],
  ])("%s", (_what, text, code, line, message) => {
    const [finding, ...others] = findings(text);
    expect([finding!.code, finding!.line]).toEqual([code, line]);
    expect(finding!.message).toMatch(message);
    expect(finding!.file).toBe("card.yaml");
    expect(others.length).toBeLessThan(3);
  });

  test("all faults of a file are told at once", () => {
    const codes = findings(RUBRIC.replace("version: 1", "version: one").replace("id: shake", "id: Shake")).map(({ line }) => line);
    expect(codes).toEqual([4, 12]);
  });
});
