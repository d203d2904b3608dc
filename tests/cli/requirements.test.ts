import { expect, test } from "vitest";
import { parseRequirements, REQUIREMENTS, unmet } from "../../src/cli/requirements.ts";
import type { MarkSheet } from "../../src/scoring/types.ts";
import { ProblemError } from "../../src/problem/problem.ts";
import { completeSheet, untimedSheet } from "../report/sheet.ts";

const why = (sheet: MarkSheet, requirement: string) => unmet(sheet, parseRequirements([requirement]))[0]?.why ?? null;

function sheetWith(change: (sheet: MarkSheet) => void): MarkSheet {
  const sheet = completeSheet();
  change(sheet);
  return sheet;
}

/** An invented sheet on which everything that can be asked for holds. */
function flawless(): MarkSheet {
  return sheetWith((sheet) => {
    for (const item of sheet.items) Object.assign(item, { content: "complete", met: true, earned: item.weight });
    sheet.total = { earned: 11, available: 11, percent: 100, provisional: false };
    sheet.critical = { total: 3, met: 3, missed: [], doubted: [], unsure: [] };
    sheet.unsafe.found = [];
    sheet.incorrect = [];
    sheet.order.broken = [];
    sheet.questions = [];
    sheet.time.overLimit = { value: 0, estimated: false };
    sheet.time.overTarget = { value: -3, estimated: false };
    sheet.result = { outcome: "pass", reasons: [], rule: "" };
  });
}

const ALL = ["pass", "decided", "critical", "no-unsafe", "no-unsafe=major", "no-incorrect", "coverage=100", "item=shake", "order", "questions", "within-limit", "within-target"];

test("every requirement holds on a flawless sheet, and no requirement is left out of this test", () => {
  expect(unmet(flawless(), parseRequirements([ALL.join(", ")]))).toEqual([]);
  expect(new Set(ALL.map((part) => part.split("=")[0]))).toEqual(new Set(REQUIREMENTS.map(({ name }) => name)));
});

test.each([
  ["pass", "the result is fail: 1 critical item is not met"],
  ["critical", "1 of 3 are met; missed: Holds the breath"],
  ["no-unsafe", "found: Take extra puffs without limit"],
  ["no-incorrect", "stated wrongly: Holds the breath for 10 seconds"],
  ["coverage=70", "the coverage is 54.5%"],
  ["item=breath-hold", "Holds the breath after breathing in: incorrect"],
  ["order", "1 broken: prime before one-puff"],
  ["questions", "'can I use it before sport' deferred; 'can I take it on the bus' ignored"],
  ["within-limit", "0:13 over the limit of 7:00"],
  ["within-target", "0:43 over the target of 6:30"],
])("'%s' does not hold on a flawed sheet and says why", (requirement, reason) => {
  expect(why(completeSheet(), requirement)).toContain(reason);
});

test("a result that is provisional is neither a pass nor decided", () => {
  const sheet = sheetWith((changed) => (changed.result = { outcome: "provisional", reasons: ["one item cannot be told"], rule: "" }));
  expect(why(sheet, "pass")).toBe("the result is provisional: one item cannot be told");
  expect(why(sheet, "decided")).toBe("the result is provisional: one item cannot be told");
});

test("what cannot be measured does not hold", () => {
  expect(why(untimedSheet(), "within-limit")).toBe("not measurable: the transcript has no times");
  expect(why(untimedSheet(), "within-target")).toBe("not measurable: the transcript has no times");
  const nothing = sheetWith((sheet) => (sheet.total = { earned: 0, available: 0, percent: null, provisional: true }));
  expect(why(nothing, "coverage=0")).toBe("not measurable: no item counts");
});

test("coverage holds only if it would hold with every unsure item missed", () => {
  // 6 of 11 marks, and one item of weight 2 that cannot be told: 6 of 13 at the worst.
  expect(why(completeSheet(), "coverage=46")).toBeNull();
  expect(why(completeSheet(), "coverage=50")).toContain("46.2% if the items that cannot be told were missed");
});

test("an unsafe statement that rests on a sound-alike leaves 'no-unsafe' open; one put right does not count", () => {
  const sheet = sheetWith((changed) => (changed.unsafe.found = changed.unsafe.found.slice(1)));
  expect(why(sheet, "no-unsafe")).toBe("somebody must listen first: Stop the preventer");
  sheet.unsafe.found = sheet.unsafe.found.slice(0, 1);
  expect(why(sheet, "no-unsafe")).toBeNull();
});

test("no-unsafe=major lets lesser statements pass", () => {
  const sheet = sheetWith((changed) => {
    changed.unsafe.found = changed.unsafe.found.slice(0, 1);
    changed.unsafe.found[0]!.severity = "moderate";
  });
  expect(why(sheet, "no-unsafe=major")).toBeNull();
  expect(why(sheet, "no-unsafe=moderate")).toContain("found");
  expect(why(sheet, "no-unsafe")).toContain("found");
});

test("a critical item that cannot be told leaves 'critical' open", () => {
  const sheet = sheetWith((changed) => (changed.critical.missed = []));
  expect(why(sheet, "critical")).toBe("it cannot be told of: Presses once while breathing in slowly");
});

test.each([
  ["pas", "there is no requirement 'pas'", "Did you mean 'pass'?"],
  ["pass=1", "'pass' takes no value", "Write pass."],
  ["coverage", "'coverage' needs a number from 0 to 100", "coverage=PERCENT"],
  ["coverage=101", "'coverage' needs a number", "coverage=PERCENT"],
  ["coverage=most", "'coverage' needs a number", "coverage=PERCENT"],
  ["no-unsafe=bad", "one of minor, moderate, major", "no-unsafe[=SEVERITY]"],
  ["no-unsafe=", "one of minor, moderate, major", "no-unsafe[=SEVERITY]"],
  ["pass,,order", "a requirement is empty", "There are:"],
  ["constructor", "there is no requirement 'constructor'", "There are:"],
])("'%s' is refused when the command line is read", (typed, message, mend) => {
  const attempt = () => parseRequirements([typed]);
  expect(attempt).toThrow(ProblemError);
  expect(attempt).toThrow(message);
  expect(attempt).toThrow(mend);
  expect(attempt).toThrow("SW-U04");
});

test("an item that the rubric has not is an error, with the nearest id", () => {
  expect(() => why(completeSheet(), "item=shaek")).toThrow("Did you mean 'shake'?");
});
