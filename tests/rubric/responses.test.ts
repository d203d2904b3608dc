import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { loadPlacedRubric } from "../../src/rubric/load.ts";

const RUBRIC = `saidwell: rubric@1
id: card
title: Card
version: 1
jurisdiction: [any]
responses: responses/card.yaml
scenario: { task: Explain it., counselled: patient }
time: { limit: 7 min, target: "6:30" }
sections:
  - include: blocks/opening.yaml
  - id: steps
    title: Steps
    items:
      - id: shake
        label: Shakes it
        say: [shake it well]
unsafe:
  - { id: share, label: Shares it, severity: major, say: [share it with a friend] }
pass: { minimum: 60 }
`;

const BLOCK = `saidwell: block@1
id: opening
title: Opening
responses: ../responses/opening.yaml
items:
  - { id: greet, label: Greets, say: [hello there] }
`;

const CARD = `saidwell: responses@1
id: card
items:
  shake:
    shake:
      say: [give it a rattle, jiggle it about]
      incorrect: [hold it quite still]
unsafe:
  share: { say: [lend it to your mate] }
`;

const OPENING = `saidwell: responses@1
id: opening
items:
  greet: { greet: { say: [good afternoon] } }
`;

function load(changes: Record<string, string> = {}) {
  const files: Record<string, string> = { "card.yaml": RUBRIC, "blocks/opening.yaml": BLOCK, "responses/card.yaml": CARD, "responses/opening.yaml": OPENING, ...changes };
  return loadPlacedRubric(files["card.yaml"]!, {
    file: "card.yaml",
    readBlock: (path) => {
      if (files[path] === undefined) throw new Error("no such file");
      return files[path];
    },
  });
}

function findings(changes: Record<string, string>) {
  try {
    load(changes);
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
  throw new Error("the rubric was read without a complaint");
}

const elementOf = ({ rubric }: ReturnType<typeof load>, id: string) => rubric.sections.flatMap(({ items }) => items).find((item) => item.id === id)!.elements[0]!;

describe("responses in a file of their own count as those of the rubric do", () => {
  test("they follow the rubric's own phrases, right and wrong ones and unsafe statements", () => {
    const loaded = load();
    expect(elementOf(loaded, "shake")).toMatchObject({ say: ["shake it well", "give it a rattle", "jiggle it about"], incorrect: ["hold it quite still"] });
    expect(loaded.rubric.unsafe[0]!.say).toEqual(["share it with a friend", "lend it to your mate"]);
  });

  test("a block names its own, beside itself", () => {
    expect(elementOf(load(), "greet").say).toEqual(["hello there", "good afternoon"]);
  });

  test("an override that brings its own phrases leaves the block's responses out; any other keeps them", () => {
    const overridden = (changes: string) => load({ "card.yaml": RUBRIC.replace("opening.yaml\n", `opening.yaml\n    override: { greet: { ${changes} } }\n`) });
    expect(elementOf(overridden("say: [welcome]"), "greet").say).toEqual(["welcome"]);
    expect(elementOf(overridden("critical: true"), "greet").say).toEqual(["hello there", "good afternoon"]);
  });

  test("the hash follows them: a sheet is locked to what it was marked by", () => {
    expect(load({ "responses/card.yaml": CARD.replace("rattle", "swirl") }).rubric.hash).not.toBe(load().rubric.hash);
  });
});

describe("each phrase knows the file and line it is written on", () => {
  const { places } = load();
  test.each([
    ["the rubric's own", places.element("shake", 0, ["say", 0]), "card.yaml", 16],
    ["one of the responses file", places.element("shake", 0, ["say", 2]), "responses/card.yaml", 6],
    ["a wrong one", places.element("shake", 0, ["incorrect", 0]), "responses/card.yaml", 7],
    ["a block's", places.element("greet", 0, ["say", 1]), "responses/opening.yaml", 4],
    ["an unsafe statement's", places.unsafe(0, ["say", 1]), "responses/card.yaml", 9],
  ])("%s", (_, place, file, line) => {
    expect(place).toMatchObject({ file, line });
  });

  test("all files that the rubric is made of are named", () => {
    expect(places.files().sort()).toEqual(["blocks/opening.yaml", "card.yaml", "responses/card.yaml", "responses/opening.yaml"]);
  });
});

describe("a fault is told where it is written", () => {
  test.each<[string, Record<string, string>, string, string, number, RegExp]>([
    ["no such file", { "card.yaml": RUBRIC.replace("responses/card", "responses/none") }, "SW-R04", "card.yaml", 6, /responses\/none\.yaml.*no such file/],
    ["an unknown item", { "responses/card.yaml": CARD.replace("  shake:\n", "  shaek:\n") }, "SW-R05", "responses/card.yaml", 4, /no item 'shaek'/],
    ["an unknown element", { "responses/card.yaml": CARD.replace("    shake:\n", "    shaek:\n") }, "SW-R05", "responses/card.yaml", 5, /no element 'shaek'/],
    ["an unknown statement", { "responses/card.yaml": CARD.replace("share:", "lend:") }, "SW-R05", "responses/card.yaml", 9, /no unsafe statement 'lend'/],
    ["responses of another rubric", { "responses/card.yaml": CARD.replace("id: card", "id: other") }, "SW-R05", "responses/card.yaml", 2, /for 'other'/],
    ["an unknown field", { "responses/card.yaml": CARD.replace("incorrect:", "wrong:") }, "SW-R03", "responses/card.yaml", 7, /wrong/],
    ["a field of the rubric's alone", { "responses/card.yaml": CARD.replace("incorrect:", "not_with:") }, "SW-R03", "responses/card.yaml", 7, /no field 'not_with'/],
    ["a file of another form, and nothing else of it", { "responses/card.yaml": OPENING.replace("responses@1", "block@1").replace("items:", "title: Opening\nsources: {}\nitems:") }, "SW-R03", "responses/card.yaml", 1, /^saidwell: this is 'block@1', and 'responses@1' belongs here$/],
    ["a response without the name of its element", { "responses/card.yaml": CARD.replace(/  shake:\n    shake:\n/, "  shake:\n") }, "SW-R03", "responses/card.yaml", 5, /a list/],
    ["broken YAML", { "responses/opening.yaml": OPENING.replace("[good", "[[good") }, "SW-R02", "responses/opening.yaml", 3, /YAML/],
  ])("%s", (_, changes, code, file, line, message) => {
    expect(findings(changes)[0]).toMatchObject({ code, file, line });
    expect(findings(changes)[0]!.message).toMatch(message);
  });
});
