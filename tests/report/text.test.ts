import { expect, test } from "vitest";
import { render } from "../../src/report/render.ts";
import { displayWidth } from "../../src/report/width.ts";
import type { MarkSheet } from "../../src/scoring/types.ts";
import { completeSheet, item, element, untimedSheet } from "./sheet.ts";

const SHOWN = new Set(["label", "quote", "reason", "message", "mend", "advice", "worth", "plain", "word", "caution", "title", "task", "rule"]);
const text = (sheet: MarkSheet, width = 80, rest: { colour?: boolean; ascii?: boolean } = {}) =>
  render(sheet, { format: "text", width, ...rest });
const flat = (sheet: MarkSheet) => text(sheet, 200).replace(/\s+/g, " ");
 
const withoutColour = (page: string) => page.replace(/\u001b\[[0-9;]*m/g, "");

test.each([60, 61, 76, 80, 99, 120, 200])("no line is wider than %i columns", (width) => {
  for (const sheet of [completeSheet(), untimedSheet()]) {
    for (const ascii of [false, true]) {
      for (const line of text(sheet, width, { ascii }).split("\n")) expect(displayWidth(line), line).toBeLessThanOrEqual(width);
    }
  }
});

test("words in wide scripts and words longer than a line stay inside the width", () => {
  const sheet = completeSheet();
  sheet.candidate = "候補者".repeat(40);
  sheet.items[0]!.label = "x".repeat(200);
  for (const line of text(sheet, 60).split("\n")) expect(displayWidth(line), line).toBeLessThanOrEqual(60);
});

test("the first lines say who, what, the result with its reasons, time and coverage", () => {
  const head = text(completeSheet()).split("\n").slice(0, 22).join("\n");
  for (const part of ["Candidate 7", "seven.vtt", "Pressurised metered-dose inhaler", "FAIL", "1 critical item is not met", "7:13 used", "over the limit of 7:00", "54.5%", "1 of 3 met", "1 of the 6 listed statements found", "2 marks are unsure", "at 4:50: unsafe, or mis-heard: Stop the preventer", "at 2:00: Presses once while breathing in slowly"]) {
    expect(head).toContain(part);
  }
});

test("the parts come in the order in which a reader needs them", () => {
  const heads = text(completeSheet(), 100, { ascii: true }).split("\n").filter((line) => / -{2,}$/.test(line)).map((line) => line.replace(/ -+$/, ""));
  expect(heads).toEqual([
    "THE THREE CHANGES WORTH MOST",
    "CRITICAL ITEMS MISSED",
    "UNSAFE STATEMENTS",
    "STATED WRONGLY",
    "DIFFERS FROM THIS STATION'S GUIDANCE",
    "ITEMS",
    "THE PATIENT'S QUESTIONS",
    "TEACH-BACK",
    "ORDER",
    "NEEDLESS REPEATS",
    "TIME AND PACE",
    "TIME PLAN",
    "OTHER STATEMENTS WITH NUMBERS",
    "WHAT THIS SHEET RESTS ON",
    "REPAIRS AND GUESSES",
  ]);
});

test("nothing of the sheet is lost: every label, quote, reason and finding can be read", () => {
  const sheet = completeSheet();
  const page = flat(sheet);
  // A technical word stands with its place; the words around it would only lengthen the page.
  for (const technical of sheet.time.technicalWords) technical.evidence.quote = technical.word;
  const strings = (data: unknown): string[] => {
    if (data === null || typeof data !== "object") return [];
    return Object.entries(data).flatMap(([key, value]) => (typeof value !== "string" ? strings(value) : SHOWN.has(key) ? [value] : []));
  };
  const outside = new Set(["not-applicable", "not-offered"]);
  const wanted = strings({ ...sheet, items: sheet.items.filter(({ content }) => !outside.has(content)) });
  expect(wanted.length).toBeGreaterThan(80);
  for (const part of wanted) expect(page).toContain(part);
});

test("colour only repeats what the words say: without it the page is the same", () => {
  const plain = text(completeSheet());
  const coloured = text(completeSheet(), 80, { colour: true });
  expect(coloured).not.toBe(plain);
  expect(withoutColour(coloured)).toBe(plain);
});

test("every mark stands as a word beside its symbol", () => {
  const page = text(completeSheet());
  for (const mark of ["✓ complete", "◐ partial", "✗ incorrect", "○ absent", "? cannot tell", "– not offered", "– n/a"]) expect(page).toContain(mark);
});

test("an ASCII page holds ASCII only, whatever the transcript holds", () => {
  const sheet = completeSheet();
  sheet.candidate = "Zoë “Z” – №7";
  const page = text(sheet, 80, { ascii: true });
  expect(page).toMatch(/^[\n -~]*$/);
  expect(page).toContain('Zoe "Z" - No7');
});

test("a page without unsafe statements says that none of the listed ones was found, and never calls anything safe", () => {
  const sheet = completeSheet();
  sheet.unsafe.found = [];
  const page = flat(sheet);
  expect(page).toContain("none of the 6 listed statements found");
  expect(page).not.toMatch(/(?<!un)safe\b/i);
});

test("an unsafe statement that was put right or rests on a sound-alike is listed and not counted", () => {
  const sheet = completeSheet();
  sheet.unsafe.found = sheet.unsafe.found.slice(1);
  const page = flat(sheet);
  expect(page).toContain("none of the 6 listed statements found standing at the end; 1 put right by the candidate; 1 to listen to");
  expect(page).toContain("Stop the preventer: perhaps a sound-alike: listen; not counted");
});

test("a statement said in two places is one of the listed statements, with two places", () => {
  const sheet = completeSheet();
  const [said] = sheet.unsafe.found;
  sheet.unsafe.found = [said!, { ...said!, evidence: { ...said!.evidence, first: 400, end: 404, quote: "as many as you want" } }];
  const page = flat(sheet);
  expect(page).toContain("1 of the 6 listed statements found");
  expect(page.split(said!.label)).toHaveLength(flat({ ...sheet, unsafe: { ...sheet.unsafe, found: [said!] } }).split(said!.label).length);
  expect(page).toContain("as many as you want");
});

test("a statement that stands in one place and was put right in another stands, and is counted once", () => {
  const sheet = completeSheet();
  const [said] = sheet.unsafe.found;
  sheet.unsafe.found = [{ ...said!, corrected: true }, said!];
  expect(flat(sheet)).toMatch(/Unsafe +1 of the 6 listed statements found(?!;)/);
});

test("where pauses are not measurable, the time plan does not say that none was found", () => {
  const sheet = completeSheet();
  sheet.plan.costs = sheet.plan.costs.map((cost) => ({ ...cost, words: 0, seconds: cost.what === "pauses" ? null : 0 }));
  expect(flat(sheet)).toContain("no repeat, filler, aside or long pause found");
  sheet.time.pauses = { value: null, why: "the file gives starts of paragraphs, but not their ends" };
  expect(flat(sheet)).toContain("no repeat, filler or aside found; pauses not measurable");
  expect(flat(sheet)).not.toContain("long pause found");
});

test("without times every figure of time says that it is not measurable and why, and places are lines", () => {
  const page = flat(untimedSheet());
  for (const name of ["Time", "Pace", "While talking", "Pauses", "Without them", "Words to cut"]) {
    expect(page).toContain(`${name} not measurable: the transcript has no times`);
  }
  expect(page).toMatch(/line \d+ candidate "/);
  expect(page).not.toMatch(/\d+ words a minute/);
});

test("a figure that is not a number is a fault of the program, never printed", () => {
  const sheet = completeSheet();
  sheet.total.percent = Number.NaN;
  expect(() => text(sheet)).toThrow(/NaN/);
});

test("a coverage of nothing is not measurable rather than nought", () => {
  const sheet = completeSheet();
  sheet.total = { earned: 0, available: 0, percent: null, provisional: true };
  expect(flat(sheet)).toContain("Coverage not measurable: no item counts");
});

test("an estimated time is marked, and the mark explained", () => {
  const sheet = completeSheet();
  sheet.items[0]!.elements[0]!.evidence[0]!.estimated = true;
  const page = text(sheet);
  expect(page).toContain('~0:12 candidate "hello my name is Ana"');
  expect(page).toContain("~ before a time: estimated");
  expect(text(completeSheet())).not.toContain("~");
});

test("an item whose section is not listed is printed all the same", () => {
  const sheet = completeSheet();
  sheet.items.push(item("lost", "lost", "An item of no section", [element("An item of no section", [])]));
  expect(text(sheet)).toContain("An item of no section");
});

test("a very long quote is shortened in its middle", () => {
  const sheet = completeSheet();
  const words = Array.from({ length: 90 }, (_, index) => `w${index}`).join(" ");
  sheet.claims = [{ evidence: { ...sheet.claims[0]!.evidence, quote: words } }];
  expect(flat(sheet)).toContain("w14 w15 … w80 w81");
});

test("the pace curve names its lowest and highest, so that no bar has to be read by eye", () => {
  expect(flat(completeSheet())).toContain("30 s a bar from 0:10; lowest 88 at 0:10, highest 170 at 5:10; a gap: the candidate said nothing");
});

test("elements that were not found stand together, and nobody claims that they were not said; those that the item does not need are told apart", () => {
  const sheet = completeSheet();
  sheet.items = [
    item("opening", "one", "First item", [element("Element A", []), element("Element B", [])]),
    item("opening", "two", "Second item", [element("Element C", [sheet.claims[0]!.evidence]), element("Element D", [])], { content: "complete", earned: 2, met: true }),
  ];
  const page = flat(sheet);
  expect(page).toContain("○ not found: Element A; Element B");
  expect(page).toContain("○ not needed, not found: Element D");
});

test("an unsure item without a passage is to be listened for", () => {
  const sheet = completeSheet();
  sheet.unsafe.found = [];
  sheet.items = [item("opening", "one", "First item", [element("First item", [])], { listen: true, confidence: 0.55 })];
  const page = flat(sheet);
  expect(page).toContain("Listen 1 mark is unsure: • not found, perhaps said: First item");
  expect(page).toContain("LISTEN for it: not found, but only 55% sure");
});

test("a quote of a word or two stands among the same speaker's words, marked without colour, and the sign is explained", () => {
  const sheet = completeSheet();
  sheet.claims = [{ evidence: { ...sheet.claims[0]!.evidence, quote: "birth?", before: "what's your date of", after: "And where" } }];
  const page = flat(sheet);
  expect(page).toContain(`"what's your date of *birth?* And where"`);
  expect(page).toContain("* around words of a quote: what was found");
  expect(text(completeSheet())).not.toContain("* around words");
  const alone = completeSheet();
  alone.claims = [{ evidence: { ...sheet.claims[0]!.evidence, quote: "birth?", before: "date of" } }];
  delete alone.claims[0]!.evidence.after;
  expect(flat(alone)).toContain('"date of *birth?*"');
});

test("a start that the file gives is not called estimated, though the words behind it are", () => {
  const sheet = completeSheet();
  sheet.claims = [{ evidence: { ...sheet.claims[0]!.evidence, estimated: true, startGiven: true } }];
  expect(text(sheet)).not.toContain("~");
});

test("fewer marks than the word for the mark promises are explained beside it", () => {
  const sheet = completeSheet();
  const quote = sheet.claims[0]!.evidence;
  sheet.items = [
    item("opening", "one", "First item", [element("A", [quote], { elicitation: "after-question" }), element("B", [quote])], { earned: 1.33, elicitation: "after-question", reduced: ["after-question"] }),
    item("opening", "two", "Second item", [element("C", [quote]), element("D", [quote], { content: "incorrect", reason: "said 'two'" })], { content: "incorrect", earned: 0.67, weight: 1, met: false }),
    item("opening", "three", "Third item", [element("E", [quote], { elicitation: "prompted" })], { earned: 0, elicitation: "prompted", reduced: ["prompted"] }),
    item("opening", "four", "Fourth item", [element("F", [quote])]),
  ];
  const page = flat(sheet);
  expect(page).toContain("1.33 of 2: what came only after the patient asked earns less");
  expect(page).toContain("0.67 of 1: for what was said rightly beside what was said wrongly");
  expect(page).toContain("0 of 2: what came only after a prompt earns nothing");
  expect(page).not.toContain("2 of 2:");
});

test("what came after a question is no reason for fewer marks where the rubric gives it full credit", () => {
  const sheet = completeSheet();
  const quote = sheet.claims[0]!.evidence;
  sheet.items = [item("opening", "one", "First item", [element("A", [quote], { elicitation: "after-question" }), element("B", [], { content: "absent", elicitation: null })], { content: "partial", earned: 1, elicitation: "after-question" })];
  expect(flat(sheet)).not.toContain("earns less");
});

test("time left or over is told in whole seconds, and under one in words", () => {
  const sheet = completeSheet();
  Object.assign(sheet.time, { overTarget: { value: -0.2, estimated: false }, overLimit: { value: 0.3, estimated: false } });
  expect(flat(sheet)).toContain("7:13 used: less than 1 s over the limit of 7:00, less than 1 s left of the target of 6:30");
});

test("unsure marks are named, critical ones first; a long list is cut and says so", () => {
  const sheet = completeSheet();
  sheet.unsafe.found = [];
  sheet.items = Array.from({ length: 9 }, (_, index) => item("opening", `i${index}`, `Item ${index}`, [element(`Item ${index}`, [])], { listen: true, critical: index === 8 }));
  const page = flat(sheet);
  expect(page).toMatch(/Listen 9 marks are unsure: • not found, perhaps said: Item 8 • not found, perhaps said: Item 0 /);
  expect(page).toContain("and 3 more, marked LISTEN below");
});

test("an unsure item sends the listener to the part that is in doubt, not to what is clear", () => {
  const sheet = completeSheet();
  const [clear, doubtful] = [sheet.claims[0]!.evidence, { ...sheet.claims[0]!.evidence, start: 61 }];
  sheet.items = [item("opening", "one", "First item", [element("A", [clear]), element("B", [doubtful], { content: "cannot-tell", confidence: 0.5 })], { content: "cannot-tell", listen: true, confidence: 0.5 })];
  expect(flat(sheet)).toContain("LISTEN at 1:01: only 50% sure");
});

test("a shipped rubric, whose file is its name, is named once", () => {
  expect(flat(completeSheet())).toContain("Rubric pressurised-inhaler, version 3, content cccccccccccc");
  const own = completeSheet();
  own.rubric.file = "mine.yaml";
  expect(flat(own)).toContain("Rubric pressurised-inhaler, version 3, mine.yaml, content");
});

test("a statement that stands in one place and may be mis-heard in another stands, and is not counted among those to listen to", () => {
  const sheet = completeSheet();
  const [said] = sheet.unsafe.found;
  sheet.unsafe.found = [said!, { ...said!, listen: true }];
  expect(flat(sheet)).toMatch(/Unsafe +1 of the 6 listed statements found(?!; 1 to listen)/);
});

test("what takes less than ten seconds is told to a tenth", () => {
  const sheet = completeSheet();
  sheet.plan.costs = [{ what: "repeats", words: 12, seconds: 4.24 }, { what: "asides", words: 40, seconds: 12.4 }, { what: "pauses", words: 0, seconds: 65 }];
  const page = flat(sheet);
  for (const cost of ["repeats: 4.2 s, 12 words", "asides: 12 s, 40 words", "long pauses: 1:05"]) expect(page).toContain(cost);
});

test("of several parts that were said the listener is sent to those that are no surer than the item", () => {
  const sheet = completeSheet();
  const at = (start: number) => ({ ...sheet.claims[0]!.evidence, start });
  sheet.items = [item("opening", "one", "First item", [element("A", [at(30)], { confidence: 0.95 }), element("B", [at(61)], { confidence: 0.6 })], { listen: true, confidence: 0.6 })];
  expect(flat(sheet)).toContain("LISTEN at 1:01: only 60% sure");
});
