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

  test("an override that gives elements replaces all of the short form, its examples and what is right elsewhere too", () => {
    const block = BLOCK.replace("say: [hello there], weight: 2 }", "say: [hello there], weight: 2, must: [hello], examples: { earns: [hello there] }, elsewhere: [{ jurisdiction: [US], say: [howdy], note: So. }] }");
    const rubric = load(RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n    override: { greet: { elements: [{ id: high, label: High, say: [put it high up] }] } }\n"), { "blocks/opening.yaml": block });
    expect(rubric.sections[0]!.items[0]!.elements).toEqual([{ id: "high", label: "High", say: ["put it high up"] }]);
  });

  test("an override that gives 'say' makes one element of the block's several", () => {
    const block = BLOCK.replace("say: [hello there], weight: 2 }", "weight: 2, elements: [{ id: high, label: High, say: [put it high up] }, { id: low, label: Low, say: [put it low down] }] }");
    const rubric = load(RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n    override: { greet: { say: [good morning] } }\n"), { "blocks/opening.yaml": block });
    expect(rubric.sections[0]!.items[0]!.elements).toEqual([{ id: "greet", label: "Greets", say: ["good morning"] }]);
  });

  test("the hash follows the content and not the file's name", () => {
    const again = loadRubric(RUBRIC, { file: "other.yaml", readBlock: () => "" });
    expect(again.hash).toBe(load(RUBRIC).hash);
    expect(load(RUBRIC.replace("minimum: 60", "minimum: 61")).hash).not.toBe(again.hash);
  });
});

describe("a fault is told with file, line and how to mend it", () => {
  test.each<[string, string, string, number, RegExp]>([
    ["broken YAML", RUBRIC.replace("title: Card", "title: [Card"), "SW-R02", 3, /YAML/],
    ["an unknown field", RUBRIC.replace("label: Shakes it", "label: Shakes it\n        wieght: 2"), "SW-R03", 14, /wieght|Unrecognized|unrecognized/],
    ["a missing field", RUBRIC.replace("title: Card\n", ""), "SW-R03", 1, /title/],
    ["a wrong kind of value", RUBRIC.replace("version: 1", "version: one"), "SW-R03", 4, /version/],
    ["a duration that is none", RUBRIC.replace("7 min", "a while"), "SW-R03", 7, /duration/],
    ["a target behind the limit", RUBRIC.replace('"6:30"', '"9:30"'), "SW-R03", 7, /target/],
    ["an item without words", RUBRIC.replace("        say: [shake it well]\n", ""), "SW-R03", 12, /elements|say/],
    ["an id in capitals", RUBRIC.replace("id: shake", "id: Shake"), "SW-R03", 12, /lower case/],
    ["an unsafe statement that takes the wrong ones of no element", `${RUBRIC}unsafe: [{ id: hard, label: Hard, severity: minor, say: [press it hard], wrong_of: [shake/press] }]\n`, "SW-R05", 16, /shake\/press/],
    ["an unsafe statement that contradicts no element", `${RUBRIC}unsafe: [{ id: hard, label: Hard, severity: minor, say: [press it hard], contradicts: [shake/press] }]\n`, "SW-R05", 16, /contradicts 'shake\/press'/],
    ["a name that leads nowhere", `${RUBRIC}order: [{ first: shake, then: press, severity: minor, reason: so }]\n`, "SW-R05", 16, /press/],
    ["an item that stands twice", RUBRIC.replace("pass:", "      - { id: shake, label: Again, say: [shake it] }\npass:"), "SW-R06", 15, /twice/],
    ["a quantity that no phrase uses", RUBRIC.replace("say: [shake it well]", "say: [shake it well]\n        quantity: { value: 2, unit: second }"), "SW-R07", 15, /quantity/],
    ["a phrase whose quantity is missing", RUBRIC.replace("[shake it well]", '["shake it for {quantity}"]'), "SW-R07", 14, /quantity/],
    ["a block that cannot be read", RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/none.yaml\n"), "SW-R04", 9, /none\.yaml/],
    ["a dropped item that the block lacks", RUBRIC.replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n    drop: [nobody]\n"), "SW-R05", 10, /nobody/],
  ])("%s", (_what, text, code, line, message) => {
    const [finding, ...others] = findings(text);
    expect([finding!.code, finding!.line]).toEqual([code, line]);
    expect(finding!.message).toMatch(message);
    expect(finding!.file).toBe("card.yaml");
    expect(others.length).toBeLessThan(3);
  });

  const WITH_UNSAFE = `${RUBRIC}unsafe:\n  - id: share\n    label: Share it\n    severity: major\n    say: [share it]\n`;
  const ITEM = "label: Shakes it";
  test.each<[string, string, string, number, RegExp]>([
    ["a section that stands twice", RUBRIC.replace("pass:", "  - id: steps\n    title: Again\n    items: [{ id: press, label: Press, say: [press it] }]\npass:"), "SW-R06", 15, /section 'steps'/],
    ["a section with the id of an included block", RUBRIC.replace("id: steps", "id: opening").replace("pass:", "  - include: blocks/opening.yaml\npass:"), "SW-R06", 15, /section 'opening'/],
    ["an element that stands twice", RUBRIC.replace("        say: [shake it well]\n", "        elements:\n          - { id: a, label: A, say: [shake it] }\n          - { id: a, label: B, say: [rattle it] }\n"), "SW-R06", 16, /element 'a'/],
    ["an unsafe statement that stands twice", `${WITH_UNSAFE}  - { id: share, label: B, severity: minor, say: [lend it] }\n`, "SW-R06", 21, /unsafe statement 'share'/],
    ["a patient's question that stands twice", RUBRIC.replace("counselled: patient }", "counselled: patient, questions: [{ id: q, says: [and why], answer: [because] },\n  { id: q, says: [and how], answer: [like this] }] }"), "SW-R06", 7, /question 'q'/],
    ["a source that leads nowhere", RUBRIC.replace(ITEM, `${ITEM}\n        fact:\n          source: nowhere\n          jurisdiction: [GB]\n          review_by: 2028-01-31`), "SW-R05", 15, /source 'nowhere'/],
    ["a label's number that leads nowhere", RUBRIC.replace("say: [shake it well]", "say: ['shake it for {quantity}']\n        quantity:\n          label: nowhere"), "SW-R05", 16, /quantity 'nowhere'/],
    ["the same in an unsafe statement", WITH_UNSAFE.replace("[share it]", "['share {quantity}']\n    quantity: { label: nowhere }"), "SW-R05", 21, /quantity 'nowhere'/],
    ["the same in what is right elsewhere", RUBRIC.replace("say: [shake it well]", "say: ['shake it {quantity}']\n        quantity: { value: 2, unit: second }\n        elsewhere:\n          - { jurisdiction: [US], note: Other., quantity: { label: nowhere } }"), "SW-R05", 17, /quantity 'nowhere'/],
    ["a label's number that is taken from the label", RUBRIC.replace("counselled: patient }", "counselled: patient, label: { dose: { text: Two, quantity: { label: dose } } } }"), "SW-R05", 6, /from the label/],
    ["what is right elsewhere and says nothing", RUBRIC.replace("say: [shake it well]", "say: [shake it well]\n        elsewhere:\n          - { jurisdiction: [US], note: Other. }"), "SW-R07", 16, /elsewhere/],
    ["an unsafe statement with a place for a number and no number", WITH_UNSAFE.replace("[share it]", "[share it, 'share {quantity}']"), "SW-R07", 20, /'share' says \{quantity\}/],
    ["an unsafe statement with a number and no place for it", `${WITH_UNSAFE}    quantity: { value: 2, unit: tablet }\n`, "SW-R07", 21, /'share' gives a quantity/],
    ["a place for a number in a must-word", RUBRIC.replace("say: [shake it well]", "say: [shake it well]\n        must: [shake, '{quantity}']"), "SW-R07", 15, /'must' of 'shake'/],
    ["a place for a number in a patient's question", RUBRIC.replace("counselled: patient }", "counselled: patient, questions: [{ id: q, says: ['why for {quantity}'], answer: [because] }] }"), "SW-R07", 6, /question 'q'/],
    ["more critical items than there are", RUBRIC.replace("minimum: 60", "minimum: 60, critical: 3"), "SW-R03", 15, /3 critical items must be met/],
    ["an unknown place in a phrase", RUBRIC.replace("[shake it well]", "[shake it well, 'shake it {quantitiy}']"), "SW-R03", 14, /'\{quantitiy\}' is no place/],
    ["a review date that is none", RUBRIC.replace(ITEM, `${ITEM}\n        fact: { source: 'common practice, no source', jurisdiction: [GB], review_by: soon }`), "SW-R03", 14, /review_by/],
    ["a range the wrong way round", RUBRIC.replace("say: [shake it well]", "say: ['shake it {quantity}']\n        quantity: { value: [3, 2], unit: second }"), "SW-R03", 15, /low end/],
    ["an endless limit", RUBRIC.replace("7 min", ".inf"), "SW-R03", 7, /not a duration/],
    ["a limit of more than a day", RUBRIC.replace("7 min", `${"9".repeat(400)} min`), "SW-R03", 7, /longer than a day/],
    ["a target of no time", RUBRIC.replace("6:30", "0:00"), "SW-R03", 7, /no time/],
    ["a pass mark above 100", RUBRIC.replace("minimum: 60", "minimum: 101"), "SW-R03", 15, /minimum/],
    ["a need of more elements than there are", RUBRIC.replace(ITEM, `${ITEM}\n        needs: 3`), "SW-R03", 14, /needs 3/],
    ["a minimum above the need", RUBRIC.replace(ITEM, `${ITEM}\n        minimum: 2`), "SW-R03", 14, /minimum/],
    ["a field of an element on an item with elements", RUBRIC.replace("        say: [shake it well]\n", "        red_flag: true\n        elements: [{ id: a, label: A, say: [shake it] }]\n"), "SW-R03", 14, /'red_flag' belongs/],
    ["an empty response", RUBRIC.replace("[shake it well]", "[shake it well, '']"), "SW-R03", 14, /one word/],
    ["no responses", RUBRIC.replace("[shake it well]", "[]"), "SW-R03", 14, /one phrase/],
    ["a weight beyond all numbers", RUBRIC.replace(ITEM, `${ITEM}\n        weight: 1e308`), "SW-R03", 14, /weight/],
    ["a weight of nothing", RUBRIC.replace(ITEM, `${ITEM}\n        weight: 0`), "SW-R03", 14, /weight/],
    ["a text where a list belongs", RUBRIC.replace("[any]", "any"), "SW-R03", 5, /a list was expected, not the text 'any'/],
    ["an empty file", "", "SW-R03", 1, /empty/],
    ["several documents", `${RUBRIC}---\na: b\n`, "SW-R02", 16, /several YAML documents/],
    ["an alias that leads nowhere", RUBRIC.replace("title: Card", "title: *card"), "SW-R02", 3, /card/],
    ["aliases that repeat without end", `saidwell: rubric@1\na: &a [x,x,x,x,x,x,x,x,x]\n${[..."bcdefghi"].map((name, at) => `${name}: &${name} [${Array(9).fill(`*${"abcdefgh"[at]!}`).join(",")}]\n`).join("")}`, "SW-R02", 3, /aliases/],
    ["parts nested without end", "[".repeat(20_000), "SW-R02", 1, /./],
  ])("%s, at its own line", (_what, text, code, line, message) => {
    const all = findings(text);
    expect([all[0]!.code, all[0]!.line]).toEqual([code, line]);
    expect(all[0]!.message).toMatch(message);
    for (const { mend, message: told } of all) {
      expect(mend).toMatch(/\.$/);
      expect(`${told} ${mend}`).not.toMatch(/invalid input|parseAllDocuments|\ba (object|array)|undefined/i);
    }
  });

  test("a unit that is none: the units are listed once", () => {
    const [finding] = findings(RUBRIC.replace("say: [shake it well]", "say: ['shake it {quantity}']\n        quantity: { value: 2, unit: fortnight }"));
    expect(finding!.message).toContain("'fortnight' is none of the values");
    expect(`${finding!.message} ${finding!.mend}`.match(/time-per-day/g)).toHaveLength(1);
  });

  test("all faults of a file are told at once", () => {
    const codes = findings(RUBRIC.replace("version: 1", "version: one").replace("id: shake", "id: Shake")).map(({ line }) => line);
    expect(codes).toEqual([4, 12]);
  });
});

test.each([
  ["a tab", RUBRIC.replace("    title: Steps", "\ttitle: Steps"), 10, /blanks/],
  ["a text with ': ' in it", RUBRIC.replace("label: Shakes it", "label: Shakes it: well"), 13, /whole text in quotes/],
  ["a text that begins with a brace", RUBRIC.replace("say: [shake it well]", "say:\n          - {quantity} each morning"), 15, /quotes/],
  ["a response with ': ' in it", RUBRIC.replace("say: [shake it well]", "say:\n          - remember: shake it"), 15, /quotes/],
  ["a share of the total as a fraction", RUBRIC.replace("minimum: 60", "minimum: 0.6"), 15, /write 60/],
  ["a field that stands twice", RUBRIC.replace("title: Card", "title: Card\ntitle: Card"), 4, /one of the two/],
])("%s is told once, at its line, with how to mend it", (_, text, line, mend) => {
  expect(findings(text)).toEqual([expect.objectContaining({ line, mend: expect.stringMatching(mend) })]);
});

describe("one key of a source for two publications", () => {
  const withSources = (text: string, source: string) => text.replace("pass: {", `sources: { leaflet: ${source} }\npass: {`).replace("sections:\n", "sections:\n  - include: blocks/opening.yaml\n");
  const blockWith = (source: string) => ({ "blocks/opening.yaml": BLOCK.replace("items:", `sources: { leaflet: ${source} }\nitems:`) });

  test("is refused: facts of the block would cite the rubric's", () => {
    const text = withSources(RUBRIC, "{ body: Some body, title: Some leaflet, year: 2024 }");
    expect(() => load(text, blockWith("{ body: Some body, title: Another leaflet, year: 2020 }"))).toThrow(/'leaflet' is 'Another leaflet' \(2020\) in the block and 'Some leaflet' \(2024\)/);
  });

  test("the same publication in both is one, whatever part of it each names", () => {
    const text = withSources(RUBRIC, "{ body: Some body, title: Some leaflet, year: 2024, detail: Page 2 }");
    expect(load(text, blockWith("{ body: Some body, title: Some leaflet, year: 2024 }")).sources["leaflet"]).toMatchObject({ detail: "Page 2" });
  });
});
