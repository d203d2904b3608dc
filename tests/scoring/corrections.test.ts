import { describe, expect, test } from "vitest";
import { ProblemError } from "../../src/problem/problem.ts";
import { readCorrections } from "../../src/scoring/corrections-file.ts";
import { cardWith, item, markTalk, OPENING } from "./station-card.ts";

// An invented card and invented talk: behaviour only.
const CARD = cardWith(`
      - id: ring
        label: Rings the fire brigade
        critical: true
        say: [ring the fire brigade]
      - id: leave
        label: Leaves the house
        weight: 4
        needs: 3
        minimum: 2
        elements:
          - { id: stairs, label: Takes the stairs, essential: true, say: [take the stairs down] }
          - { id: windows, label: Shuts the windows, say: [shut all the windows] }
          - { id: wake, label: Wakes the others, say: [wake everybody in the house] }
          - { id: meet, label: Meets outside, say: [meet at the big oak outside] }
`, "minimum: 50, critical: all");
const UNSAFE = { ...CARD, unsafe: [{ id: "lift", label: "Take the lift", severity: "major" as const, say: ["go down in the lift"] }] };

const HEAD = `saidwell: corrections@1\ntranscript: talk.txt\nrubric: { id: small-card, hash: "${CARD.hash}" }\ncorrections:\n`;
const SIGNED = "by: Kim, when: 2026-11-26, why: I heard it }";
const corrected = (entries: string[], head = HEAD) => readCorrections(head + entries.map((entry) => `  - { ${entry}, ${SIGNED}\n`).join(""), "mine.yaml");
const TALK = [...OPENING, "C: Shut all the windows. Then take the stairs down.", "P: Right."];
const marked = (entries: string[], rubric = CARD) => markTalk(TALK, entries.length === 0 ? {} : { corrections: corrected(entries) }, rubric);

function faults(run: () => unknown) {
  try {
    run();
  } catch (error) {
    if (error instanceof ProblemError) return error.findings.map(({ code, line, message, mend }) => ({ code, line, message, mend }));
    throw error;
  }
  throw new Error("it was taken without a word");
}

describe("an overruled mark", () => {
  test("counts in place of the tool's, which stands beside it with who, when and why", () => {
    const before = marked([]);
    expect([item(before, "ring").content, before.critical.missed, before.result.outcome, before.corrections]).toEqual(["absent", ["ring"], "fail", null]);
    const sheet = marked(["item: ring, content: complete"]);
    const { content, earned, met, confidence, listen, overruled } = item(sheet, "ring");
    const tool = { content: "absent", elicitation: null, earned: 0, met: false, confidence: item(before, "ring").confidence };
    expect({ content, earned, met, confidence, listen, overruled }).toEqual({ content: "complete", earned: 1, met: true, confidence: 1, listen: false, overruled: { by: "Kim", when: "2026-11-26", tool } });
    expect([sheet.critical.missed, sheet.result.outcome, sheet.total.earned]).toEqual([[], "pass", before.total.earned + 1]);
    expect(sheet.corrections).toEqual({ file: "mine.yaml", applied: [{ item: "ring", label: "Rings the fire brigade", content: "complete", earned: 1, met: true, weight: 1, by: "Kim", when: "2026-11-26", why: "I heard it", line: 5, tool }] });
    expect(sheet.changes.map(({ item: id }) => id)).not.toContain("ring");
  });

  test.each([
    ["content: complete", { content: "complete", earned: 4, met: true }],
    ["content: partial, said: [stairs, wake]", { content: "partial", earned: 2.67, met: true }],
    ["content: partial, said: [windows, wake]", { content: "partial", earned: 2.67, met: false }],
    ["content: partial, said: [windows, wake, meet]", { content: "partial", earned: 2.67, met: false }],
    ["content: partial, said: [stairs]", { content: "partial", earned: 1.33, met: false }],
    ["content: incorrect", { content: "incorrect", earned: 0, met: false }],
    ["content: incorrect, said: [stairs]", { content: "incorrect", earned: 1.33, met: false }],
    ["content: absent", { content: "absent", earned: 0, met: false }],
    ["content: complete, elicitation: prompted", { content: "complete", earned: 2, met: true }],
    ["content: n/a", { content: "not-applicable", earned: 0, met: false }],
  ])("%s earns as the rubric counts it", (entry, expected) => {
    const { content, earned, met } = item(marked([`item: leave, ${entry}`]), "leave");
    expect({ content, earned, met }).toEqual(expected);
  });

  test("what is left to a listener takes the item out of the denominator", () => {
    const sheet = marked(["item: leave, content: cannot tell"]);
    expect([sheet.total.available, sheet.total.provisional]).toEqual([1, true]);
  });

  test("an unsafe statement that was not said after all no longer decides", () => {
    const talk = [...TALK, "C: You go down in the lift. And ring the fire brigade.", "P: Right."];
    const before = markTalk(talk, {}, UNSAFE);
    expect([before.unsafe.found.map(({ id }) => id), before.result.outcome]).toEqual([["lift"], "fail"]);
    const sheet = markTalk(talk, { corrections: corrected(["unsafe: lift, content: absent"]) }, UNSAFE);
    expect([sheet.unsafe.found, sheet.result.outcome]).toEqual([[], "pass"]);
    expect(sheet.corrections!.applied).toEqual([expect.objectContaining({ unsafe: "lift", label: "Take the lift", tool: { found: 1 } })]);
  });
});

describe("corrections that do not fit are told with their line, never applied", () => {
  test.each<[string, string[], string, number, RegExp]>([
    ["an item that there is not", ["item: ring, content: complete", "item: rings, content: complete"], "SW-M02", 6, /no item 'rings'/],
    ["an unsafe statement that there is not", ["unsafe: lift, content: absent"], "SW-M02", 5, /no unsafe statement 'lift'/],
    ["an element that there is not", ["item: leave, content: partial, said: [door]"], "SW-M02", 5, /no element 'door'/],
    ["half of one element", ["item: ring, content: partial, said: [ring]"], "SW-M02", 5, /cannot be partial/],
    ["a part that is the whole", ["item: leave, content: partial, said: [stairs, wake, meet]"], "SW-M02", 5, /make 'leave' complete/],
    ["one item twice", ["item: ring, content: complete", "item: ring, content: absent"], "SW-M02", 6, /twice/],
  ])("%s", (_what, entries, code, line, message) => {
    expect(faults(() => marked(entries))).toEqual([{ code, line, message: expect.stringMatching(message), mend: expect.stringMatching(/\.$/) }]);
  });

  test.each<[string, string, string, number, RegExp]>([
    ["another content of the rubric", CARD.hash, "0".repeat(12), 3, /hash is/],
    ["another rubric", "id: small-card", "id: large-card", 3, /'large-card', not of 'small-card'/],
    ["another transcript", "talk.txt", "other.txt", 2, /'other.txt', not of 'talk.txt'/],
  ])("%s", (_what, from, to, line, message) => {
    const corrections = corrected(["item: ring, content: complete"], HEAD.replace(from, to));
    expect(faults(() => markTalk(TALK, { corrections }, CARD))).toEqual([{ code: "SW-M03", line, message: expect.stringMatching(message), mend: expect.any(String) }]);
  });

  test("twelve characters of the hash will do, and folders of the transcript's name do not matter", () => {
    const head = HEAD.replace(CARD.hash, CARD.hash.slice(0, 12)).replace("talk.txt", "june/talk.txt");
    expect(item(markTalk(TALK, { corrections: corrected(["item: ring, content: complete"], head) }, CARD), "ring").met).toBe(true);
  });

  test.each<[string, string, number, RegExp]>([
    ["no YAML", "saidwell: [", 1, /YAML/],
    ["an empty file", "", 1, /empty/],
    ["another form", `${HEAD.replace("corrections@1", "corrections@2")}  - { item: ring, content: complete, ${SIGNED}\n`, 1, /corrections@2/],
    ["a hash of digits without quotes", `${HEAD.replace(/"[0-9a-f]+"/, "123456789012")}  - { item: ring, content: complete, ${SIGNED}\n`, 3, /a text was expected/],
    ["nobody's", `${HEAD}  - { item: ring, content: complete, when: 2026-11-26, why: so }\n`, 5, /by: it is missing/],
    ["no reason", `${HEAD}  - { item: ring, content: complete, by: Kim, when: 2026-11-26, why: "" }\n`, 5, /why/],
    ["no day", `${HEAD}  - { item: ring, content: complete, by: Kim, when: today, why: so }\n`, 5, /when/],
    ["no mark", `${HEAD}  - { item: ring, content: fine, ${SIGNED}\n`, 5, /'fine' is none/],
    ["of nothing", `${HEAD}  - { content: complete, ${SIGNED}\n`, 5, /of one thing/],
    ["partial, of what is not said", `${HEAD}  - { item: leave, content: partial, ${SIGNED}\n`, 5, /which elements/],
    ["an unsafe statement called complete", `${HEAD}  - { unsafe: lift, content: complete, ${SIGNED}\n`, 5, /only 'absent'/],
    ["a field that there is not", `${HEAD}  - { item: ring, content: complete, marks: 3, ${SIGNED}\n`, 5, /marks/],
  ])("a file that is %s cannot be read", (_what, text, line, message) => {
    const [first] = faults(() => readCorrections(text, "mine.yaml"));
    expect(first).toEqual({ code: "SW-M01", line, message: expect.stringMatching(message), mend: expect.stringMatching(/\.$/) });
  });
});
