import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { ProblemError } from "../../src/problem/problem.ts";
import { render } from "../../src/report/render.ts";
import { readCorrections } from "../../src/scoring/corrections-file.ts";
import { readTranscript } from "../../src/transcript/read.ts";
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
    expect(sheet.corrections!.applied).toEqual([expect.objectContaining({ unsafe: "lift", label: "Take the lift", content: "absent", tool: { found: 1, standing: 1 } })]);
  });
});

describe("an unsafe statement that a person heard", () => {
  // 0:00 and 0:04 the opening, 0:05 the windows, 0:09 'Right.', 0:10 what the recogniser made of 'go down in the lift'.
  const MISHEARD = [...TALK, "C: You can go down in the gift. And ring the fire brigade.", "P: Fine."];
  const heard = (entry: string, talk = MISHEARD) => markTalk(talk, { corrections: corrected([`unsafe: lift, content: said, ${entry}`]) }, UNSAFE);

  test("counts, with what the transcript has there, though the tool did not find it", () => {
    const before = markTalk(MISHEARD, {}, UNSAFE);
    expect([before.unsafe.found, before.result.outcome]).toEqual([[], "pass"]);
    const sheet = heard('at: "0:11"');
    expect(sheet.unsafe.found).toEqual([expect.objectContaining({ id: "lift", severity: "major", confidence: 1, corrected: false, listen: false, overruled: { by: "Kim", when: "2026-11-26", at: { time: 11 } } })]);
    expect(sheet.unsafe.found[0]!.evidence).toMatchObject({ role: "candidate", quote: "You can go down in the gift." });
    expect([sheet.result.outcome, sheet.result.reasons]).toEqual(["fail", ["major unsafe statement: Take the lift"]]);
    expect(sheet.changes[0]!.advice).toContain("Take the lift");
    expect(sheet.corrections!.applied).toEqual([{ unsafe: "lift", label: "Take the lift", content: "said", at: { time: 11 }, corrected: false, by: "Kim", when: "2026-11-26", why: "I heard it", line: 5, tool: { found: 0, standing: 0 } }]);
    // The words found stay the tool's.
    expect([sheet.total, sheet.items]).toEqual([before.total, before.items]);
  });

  test.each([
    ["seconds", "at: 11"],
    ["an estimated time, as reports write it", 'at: "~0:11"'],
    ["the line", "at: line 5"],
    ["while the patient speaks, a moment late", 'at: "0:15"'],
  ])("may be placed by %s", (_what, at) => {
    expect(heard(at).unsafe.found[0]!.evidence).toMatchObject({ role: "candidate", line: 5 });
  });

  test("and put right before the end is listed, not counted", () => {
    const sheet = heard('at: "0:11", corrected: true');
    expect([sheet.unsafe.found[0]!.corrected, sheet.result.outcome]).toEqual([true, "pass"]);
  });

  test("where the tool found it too, stands once, with the tool's own words", () => {
    const talk = [...TALK, "C: You go down in the lift. And ring the fire brigade.", "P: Right."];
    const [found] = markTalk(talk, {}, UNSAFE).unsafe.found;
    const sheet = heard("at: line 5", talk);
    expect(sheet.unsafe.found.map(({ evidence }) => evidence)).toEqual([found!.evidence]);
    expect(sheet.corrections!.applied).toEqual([expect.objectContaining({ tool: { found: 1, standing: 1 } })]);
  });

  test("is refused where nobody speaks", () => {
    const refused = (entry: string) => faults(() => heard(entry));
    expect(refused('at: "5:00"')).toEqual([{ code: "SW-M02", line: 5, message: expect.stringMatching(/'lift': nobody speaks at 5:00 in the station, which runs from 0:00 to 0:\d\d/), mend: expect.any(String) }]);
    expect(refused("at: line 99")).toEqual([{ code: "SW-M02", line: 5, message: expect.stringContaining("line 99 of the transcript has no words"), mend: expect.any(String) }]);
  });

  test("of a transcript without times is placed by its line alone", () => {
    const untimed = (at: string) => mark(readTranscript(`Candidate: Hello, my name is Robin.\nPatient: Hello.\nCandidate: You can go down in the gift.\nPatient: Fine.\n`, { file: "talk.txt" }), UNSAFE, { corrections: corrected([`unsafe: lift, content: said, at: ${at}`]) });
    expect(untimed("line 3").unsafe.found[0]!.evidence.quote).toBe("You can go down in the gift.");
    expect(faults(() => untimed('"0:11"'))).toEqual([expect.objectContaining({ message: "'lift': the transcript has no times", mend: "Write 'at: line 12', with the line of the transcript." })]);
  });

  test("on the sheet stands beside who heard it and what the tool had", () => {
    const page = render(heard('at: "0:11"'), { format: "text", width: 100 });
    expect(page).toMatch(/major {8}Take the lift .* hand\n {15}heard by Kim at 0:11, 2026-11-26; there the transcript has:\n {15}~?0:1\d candidate "You can go down in the gift\."/);
    expect(page).toContain("Take the lift: said, unsafe, at 0:11; the tool did not find it");
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
    ["an unsafe statement called complete", `${HEAD}  - { unsafe: lift, content: complete, ${SIGNED}\n`, 5, /only 'said' or 'absent'/],
    ["an unsafe statement said nowhere", `${HEAD}  - { unsafe: lift, content: said, ${SIGNED}\n`, 5, /where it was heard/],
    ["an unsafe statement said at no place", `${HEAD}  - { unsafe: lift, content: said, at: soon, ${SIGNED}\n`, 5, /'soon' is no place/],
    ["an unsafe statement said at second 75 of a minute", `${HEAD}  - { unsafe: lift, content: said, at: "0:75", ${SIGNED}\n`, 5, /no place/],
    ["an item called said", `${HEAD}  - { item: ring, content: said, at: "0:20", ${SIGNED}\n`, 5, /unsafe statements only/],
    ["a place of an item", `${HEAD}  - { item: ring, content: complete, at: "0:20", ${SIGNED}\n`, 5, /unsafe statements that were said/],
    ["a place of what was not said", `${HEAD}  - { unsafe: lift, content: absent, at: "0:20", ${SIGNED}\n`, 5, /unsafe statements that were said/],
    ["a field that there is not", `${HEAD}  - { item: ring, content: complete, marks: 3, ${SIGNED}\n`, 5, /marks/],
  ])("a file that is %s cannot be read", (_what, text, line, message) => {
    const [first] = faults(() => readCorrections(text, "mine.yaml"));
    expect(first).toEqual({ code: "SW-M01", line, message: expect.stringMatching(message), mend: expect.stringMatching(/\.$/) });
  });
});

test("what the tool remarked is left out where a person found something else, and stays where the mark is only confirmed", () => {
  const rubric = { ...CARD, sections: CARD.sections.map((section) => ({ ...section, items: section.items.map((one) => (one.id === "leave" ? { ...one, needs: 2 } : one)) })) };
  const talk = [...OPENING, "C: Shut all the windows. Wake everybody in the house.", "P: Right."];
  const remarks = (entries: string[]) => item(markTalk(talk, entries.length === 0 ? {} : { corrections: corrected(entries) }, rubric), "leave").remarks;
  expect(remarks([])).toEqual(["not without: Takes the stairs"]);
  expect(remarks(["item: leave, content: complete"])).toEqual([]);
  expect(remarks(["item: leave, content: partial, said: [windows]"])).toEqual(["not without: Takes the stairs"]);
});
