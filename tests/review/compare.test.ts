import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { changesBetween } from "../../src/review/changes.ts";
import { RubricComparer } from "../../src/review/compare.ts";
import { withChange } from "../../src/review/one-change.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import type { Rubric } from "../../src/rubric/schema.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { renderComparison } from "../../src/report/rubric/compare.ts";
import { BLOCK, SOUND } from "./card.ts";

/* Behaviour tests on an invented rubric and an invented talk. */

const load = (text: string, blocks: Record<string, string> = {}): Rubric => loadRubric(text, { file: "card.yaml", readBlock: (include) => blocks[include]! });
const OLD = load(SOUND);

function edited(...edits: [from: string, to: string][]): Rubric {
  return load(
    edits.reduce((text, [from, to]) => {
      if (!text.includes(from)) throw new Error(`the rubric has no '${from}'`);
      return text.replace(from, to);
    }, SOUND),
  );
}

const TALK = readTranscript(
  [
    "[0:01] Candidate: Hello, I am Robin, the pharmacist, and we'll go through your inhaler.",
    "[0:06] Patient: All right.",
    "[0:08] Candidate: Shake the inhaler well. Then hold your breath for ten seconds.",
    "[0:16] Patient: Okay.",
    "[0:18] Candidate: And flush out your cheeks when you are done with it.",
    "[0:24] Patient: I will.",
    "[0:26] Candidate: Thank you, goodbye.",
  ].join("\n"),
  { file: "robin.txt" },
);

const compare = (after: Rubric, before = OLD) => {
  const comparer = new RubricComparer(before, after);
  const candidate = comparer.compare(TALK);
  return { changes: comparer.changes, candidate, report: comparer.report(1, candidate === null ? [] : [candidate], []) };
};
const told = (after: Rubric, before = OLD) => changesBetween(before, after).map(({ kind, id, text, marks }) => `${kind} ${id} ${text}${marks ? "" : " (words)"}`.replace("  ", " "));

test("the talk earns two of the three items by the old version", () => {
  expect(mark(TALK, OLD).items.map(({ id, content }) => [id, content])).toEqual([["shake", "complete"], ["hold", "complete"], ["rinse", "absent"]]);
});

describe("the edit is told by item and element, not by line", () => {
  test.each<[string, [string, string][], string[]]>([
    ["a response more", [["          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n          - flush out your cheeks\n"]], ["element rinse/rinse say: now also 'flush out your cheeks'"]],
    ["a response less", [["          - keep holding your breath for {quantity}\n", ""]], ["element hold/hold say: no longer 'keep holding your breath for {quantity}'"]],
    ["a must", [["        quantity: { value: 10, unit: second }\n", "        quantity: { value: 10, unit: second }\n        must: [hold|holding]\n"]], ["element hold/hold must: now also 'hold|holding'"]],
    ["a number", [["{ value: 10, unit: second }", "{ value: [5, 10], unit: second }"]], ["element hold/hold quantity: 10 seconds -> 5 to 10 seconds"]],
    ["weight and critical", [["        critical: true\n", "        critical: false\n        weight: 2\n"]], ["item shake weight: 1 -> 2", "item shake critical: true -> false"]],
    ["needs", [["        critical: true\n", "        critical: true\n        needs: 1\n"]], ["item shake needs: 'all' -> 1"]],
    ["credit", [["        critical: true\n", "        critical: true\n        credit: { prompted: none }\n"]], ["item shake credit: prompted 'half' -> 'none'"]],
    ["the pass rule", [["pass: { minimum: 60 }", "pass: { minimum: 80, unsafe: { major: 1 } }"]], ["pass minimum: 60 -> 80", "pass unsafe: major 0 -> 1"]],
    ["the time", [["limit: 7 min", "limit: 8 min"]], ["time limit: 420 -> 480"]],
    ["an unsafe statement's severity", [["label: Swallow it, severity: major", "label: Swallow it, severity: minor"]], ["unsafe swallow severity: 'major' -> 'minor'"]],
    ["a pair of the order", [["  - { first: hold, then: rinse, severity: minor, reason: Last. }\n", ""]], ["order hold > rinse removed"]],
    ["the label", [["quantity: { value: 2, unit: puff }", "quantity: { value: 1, unit: puff }"]], ["label dose quantity: 2 puffs -> 1 puff"]],
    ["a label, which no mark depends on", [["label: Rinses the mouth", "label: Rinses and spits"]], ["item rinse label: 'Rinses the mouth' -> 'Rinses and spits' (words)", "element rinse/rinse label: 'Rinses the mouth' -> 'Rinses and spits' (words)"]],
    ["the version", [["version: 1", "version: 2"]], ["rubric version: 1 -> 2 (words)"]],
  ])("%s", (_what, edits, expected) => expect(told(edited(...edits))).toEqual(expected));

  test("an item that came, without its elements one by one", () => {
    const after = edited(["      - id: rinse\n", "      - id: spacer\n        label: Cleans the spacer\n        say: [wash the spacer, clean the spacer, rinse the spacer]\n      - id: rinse\n"]);
    expect(told(after)).toEqual(["item spacer added: Cleans the spacer"]);
    expect(told(OLD, after)).toEqual(["item spacer removed: Cleans the spacer"]);
  });

  test("responses in another order are the same responses", () => {
    expect(told(edited(["          - rinse your mouth with water afterwards\n          - gargle with water and spit it out\n", "          - gargle with water and spit it out\n          - rinse your mouth with water afterwards\n"]))).toEqual(["element rinse/rinse say: in another order"]);
  });

  test("an item that moves from the rubric to a block of the same section is no change", () => {
    const opening = BLOCK.split("items:\n")[1]!;
    const inside = load(SOUND.replace("sections:\n", `sections:\n  - id: opening\n    title: Opening\n    items:\n${opening.replace(/^/gm, "    ").trimEnd()}\n`));
    const included = load(SOUND.replace("sections:\n", "sections:\n  - include: opening.yaml\n"), { "opening.yaml": BLOCK });
    expect(changesBetween(inside, included)).toEqual([]);
    expect(inside.hash).toBe(included.hash);
  });

  test("nothing, for the same rubric", () => {
    expect(changesBetween(OLD, load(SOUND))).toEqual([]);
    expect(compare(load(SOUND)).candidate).toBeNull();
  });
});

describe("whose marks change, and why", () => {
  const MORE: [string, string] = ["          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n          - flush out your cheeks\n"];

  test("a new response earns the item, and is the cause", () => {
    const { candidate, changes } = compare(edited(MORE));
    expect(candidate).toMatchObject({ file: "robin.txt", before: { earned: 2, available: 3 }, after: { earned: 3, available: 3 }, outcome: null });
    expect(candidate!.items).toEqual([expect.objectContaining({ id: "rinse", before: expect.objectContaining({ content: "absent" }), after: expect.objectContaining({ content: "complete" }), why: { how: "alone", changes: [0] } })]);
    expect(changes[0]).toMatchObject({ kind: "element", id: "rinse/rinse", field: "say" });
  });

  test("among several changes the ones that did it are named, by trying each alone", () => {
    const { candidate, changes } = compare(edited(MORE, ["label: Rinses the mouth", "label: Rinses and spits"], ["      - id: rinse\n", "      - id: rinse\n        advice: Rinse.\n"], ["limit: 7 min", "limit: 9 min"]));
    expect(changes.length).toBeGreaterThan(3);
    const why = candidate!.items[0]!.why;
    expect([why.how, why.changes.map((place) => changes[place]!.field)]).toEqual(["alone", ["say"]]);
  });

  test("changes that only work together are told together", () => {
    const { candidate, changes } = compare(edited([MORE[0], `${MORE[1]}        not_with: [nothing]\n`], ["      - id: rinse\n", "      - id: rinse\n        weight: 3\n"]));
    const why = candidate!.items[0]!.why;
    expect(candidate!.items[0]!.after).toMatchObject({ content: "complete", earned: 3, weight: 3 });
    expect([why.how, why.changes.map((place) => changes[place]!.field).sort()]).toEqual(["together", ["not_with", "say", "weight"]]);
  });

  test("a question whose answer is an item changes by what is done to the item: a change elsewhere", () => {
    const asking = (text: string) => load(text.replace("counselled: patient,", "counselled: patient, questions: [{ id: how-long, says: [how long do i hold my breath], answered_by: [hold] }],"));
    const talk = readTranscript("Candidate: Hello, I am Robin, the pharmacist.\nPatient: Hello.\nCandidate: Shake the inhaler well.\nPatient: How long do I hold my breath?\nCandidate: Hold your breath for ten seconds.\nPatient: Okay.\nCandidate: Thank you, goodbye.\n", { file: "asked.txt" });
    const comparer = new RubricComparer(asking(SOUND), asking(SOUND.replace("{ value: 10, unit: second }", "{ value: 30, unit: second }")));
    expect(comparer.compare(talk)!.found).toEqual([{ kind: "question", id: "how-long", before: "answered", after: "incorrect", why: { how: "elsewhere", changes: [0] } }]);
    expect(comparer.changes).toEqual([expect.objectContaining({ id: "hold/hold", field: "quantity" })]);
  });

  test("after an edit of more things than are tried one by one, causes are listed untried", () => {
    const many = (severity: string) => Array.from({ length: 41 }, (_, place) => `  - { id: s${place}, label: S, severity: ${severity}, say: [never heard statement] }\n`).join("");
    const before = load(SOUND.replace("unsafe:\n", `unsafe:\n${many("minor")}`));
    const after = load(SOUND.replace("unsafe:\n", `unsafe:\n${many("major")}`).replace("{ value: 10, unit: second }", "{ value: 30, unit: second }"));
    const { candidate, changes } = compare(after, before);
    const why = candidate!.items[0]!.why;
    expect([why.how, why.changes.map((place) => changes[place]!.id)]).toEqual(["untried", ["hold/hold"]]);
  });

  test("another number makes what was right wrong", () => {
    const { candidate } = compare(edited(["{ value: 10, unit: second }", "{ value: 30, unit: second }"]));
    expect(candidate!.items).toEqual([expect.objectContaining({ id: "hold", after: expect.objectContaining({ content: "incorrect", earned: 0 }), why: { how: "alone", changes: [0] } })]);
  });

  test("a higher pass mark changes the result and no item", () => {
    const { candidate } = compare(edited(["minimum: 60", "minimum: 80"]));
    expect(candidate).toMatchObject({ before: { outcome: "pass" }, after: { outcome: "fail" }, items: [], outcome: { how: "alone", changes: [0] } });
  });

  test("an item that becomes critical and was missed fails the station, and the item says so", () => {
    const { candidate, changes } = compare(edited(["      - id: rinse\n", "      - id: rinse\n        critical: true\n"]));
    expect(candidate).toMatchObject({ before: { outcome: "pass" }, after: { outcome: "fail" } });
    expect(candidate!.items[0]).toMatchObject({ id: "rinse", before: { critical: false }, after: { critical: true, met: false }, why: { how: "alone" } });
    expect(changes[candidate!.outcome!.changes[0]!]).toMatchObject({ id: "rinse", field: "critical" });
  });

  test("an unsafe statement that is listed anew is found", () => {
    const { candidate } = compare(edited(["unsafe:\n", "unsafe:\n  - { id: cheeks, label: Flush them, severity: major, say: [flush out your cheeks when you are done with it] }\n"]));
    expect(candidate!.found).toEqual([{ kind: "unsafe", id: "cheeks", before: "not found", after: "major", why: { how: "alone", changes: [0] } }]);
    expect(candidate).toMatchObject({ after: { outcome: "fail" } });
  });

  test("a removed item leaves the total", () => {
    const after = edited(["  - { first: hold, then: rinse, severity: minor, reason: Last. }\n", ""], ["      - id: rinse\n        label: Rinses the mouth\n        say:\n          - rinse your mouth with water afterwards\n          - gargle with water and spit it out\n          - rinse and spit afterwards\n", ""]);
    const { candidate } = compare(after);
    expect(candidate).toMatchObject({ before: { available: 3 }, after: { available: 2 } });
    expect(candidate!.items).toEqual([expect.objectContaining({ id: "rinse", after: null })]);
  });

  test("an element that nobody said and that one version lacks changes nobody's marks", () => {
    const rinse = "        say:\n          - rinse your mouth with water afterwards\n          - gargle with water and spit it out\n          - rinse and spit afterwards\n";
    const after = edited([rinse, `        elements:\n          - id: rinse\n            label: Rinses the mouth\n${rinse.replace(/^/gm, "    ").trimEnd()}\n          - { id: thrice, label: Three times, say: [do that three times over] }\n`]);
    expect(told(after).join()).toContain("element rinse/thrice added");
    expect(compare(after).candidate).toBeNull();
  });

  test("what is only words changes nobody's marks", () => {
    expect(compare(edited(["label: Rinses the mouth", "label: Rinses and spits"], ["version: 1", "version: 2"])).candidate).toBeNull();
  });

  test("the number of the version is asked to rise when marks can change", () => {
    expect(compare(edited(MORE)).report.versionKept).toBe(true);
    expect(compare(edited(MORE, ["version: 1", "version: 2"])).report.versionKept).toBe(false);
    expect(compare(edited(["title: Card", "title: Another"])).report.versionKept).toBe(false);
  });
});

test("all changes made one after another give the new rubric's marks", () => {
  const after = edited(
    ["          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n          - flush out your cheeks\n"],
    ["{ value: 10, unit: second }", "{ value: 30, unit: second }"],
    ["        critical: true\n", "        critical: false\n        weight: 2\n"],
    ["pass: { minimum: 60 }", "pass: { minimum: 20 }"],
    ["limit: 7 min", "limit: 8 min"],
    ["label: Swallow it, severity: major", "label: Swallow it, severity: minor"],
    ["      - id: rinse\n", "      - id: spacer\n        label: Cleans the spacer\n        say: [wash the spacer, clean the spacer, rinse the spacer]\n      - id: rinse\n"],
    ["  - { first: hold, then: rinse, severity: minor, reason: Last. }\n", "  - { first: spacer, then: rinse, severity: minor, reason: Last. }\n"],
  );
  const changes = changesBetween(OLD, after);
  const all = changes.reduce((rubric, change) => withChange(rubric, after, change), OLD);
  const [made, meant] = [mark(TALK, all), mark(TALK, after)];
  const byId = <T extends { id: string }>(list: readonly T[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  expect([byId(made.items), made.total, made.result]).toEqual([byId(meant.items), meant.total, meant.result]);
  // Each alone, both ways, can be marked with.
  for (const change of changes) expect(mark(TALK, withChange(OLD, after, change)).items.length).toBeGreaterThan(0);
  for (const change of changesBetween(after, OLD)) expect(mark(TALK, withChange(after, OLD, change)).items.length).toBeGreaterThan(0);
});

describe("the report", () => {
  const { report } = compare(edited(["          - rinse and spit afterwards\n", "          - rinse and spit afterwards\n          - flush out|away your cheeks\n"]));
  const look = { width: 80, colour: false, ascii: false };

  test("as text names the item, the marks and the change", () => {
    const text = renderComparison(report, { ...look, format: "text" });
    for (const part of ["1   rinse say: now also", "robin.txt: 66.7% (2 of 3) -> 100% (3 of 3); pass, as before", "(rinse): absent 0/1 -> complete 1/1", "because of change 1", "raise it"]) expect(text).toContain(part);
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test("as Markdown escapes what a table would take for a bar", () => {
    const text = renderComparison(report, { ...look, format: "markdown" });
    expect(text).toContain("flush out\\|away your cheeks");
    for (const row of text.split("\n").filter((line) => line.startsWith("| "))) expect(row.replaceAll("\\|", "").split("|")).toHaveLength(6);
  });

  test("of two rubrics that are no versions of one another says so", () => {
    const other = compare(load(SOUND.replace("id: card", "id: other-card"))).report;
    for (const format of ["text", "markdown"] as const) {
      expect(renderComparison(other, { ...look, format }).replace(/\s+/g, " ")).toContain("no two versions of one");
      expect(renderComparison(report, { ...look, format })).not.toContain("two rubrics");
    }
  });

  test("tells a source in words, not as a program would write it", () => {
    const changed = told(edited(["  guideline: {", "  leaflet: { body: A body, title: A leaflet, year: 2025 }\n  guideline: {"]));
    expect(changed).toEqual(["rubric sources: leaflet none -> (body 'A body', title 'A leaflet', year 2025) (words)"]);
  });

  test("as JSON is the comparison itself", () => {
    expect(JSON.parse(renderComparison(report, { ...look, format: "json" }))).toEqual(JSON.parse(JSON.stringify(report)));
  });
});
