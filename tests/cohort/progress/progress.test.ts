import { expect, test } from "vitest";
import { progressReport } from "../../../src/cohort/progress/report.ts";
import { binomialError } from "../../../src/cohort/statistics/binomial-error.ts";
import { progressText } from "../../../src/report/cohort/progress.ts";
import type { Content } from "../../../src/scoring/types.ts";
import { record } from "../records.ts";

/** Invented: `said` of `n` items complete. */
const attempt = (number: number, said: number, n = 20, over: Partial<Parameters<typeof record>[0]> = {}) =>
  record({ candidate: "P", attempt: String(number), items: Object.fromEntries(Array.from({ length: n }, (_, i): [string, Content] => [`i${i}`, i < said ? "complete" : "absent"])), ...over });
const text = (...records: Parameters<typeof progressReport>[0]) => progressText(progressReport(records, "0"), { width: 80, colour: false, ascii: true }).replace(/\s+/g, " ");

test("Lord 1955: 16 of 20 items have an error of sqrt(16 x 4 / 19) items, 9.18 points", () => {
  const items = Array.from({ length: 20 }, (_, i) => ({ earned: i < 16 ? 1 : 0, weight: 1 }));
  const error = binomialError(items);
  expect(error.value!.toFixed(2)).toBe(((100 * Math.sqrt((16 * 4) / 19)) / 20).toFixed(2));
  expect(error.value!.toFixed(2)).toBe("9.18");
  expect(binomialError(items.map(() => ({ earned: 1, weight: 1 }))).value).toBeGreaterThan(0);
  expect(binomialError([{ earned: 1, weight: 1 }]).value).toBeNull();
});

test("ten points between 16 and 18 of 20 are within measurement error, and nothing is said to have improved", () => {
  const { comparisons } = progressReport([attempt(1, 16), attempt(2, 18)], "0");
  expect(comparisons[0]).toMatchObject({ difference: expect.closeTo(10, 9), verdict: "not told apart" });
  expect(comparisons[0]!.smallest!).toBeCloseTo(1.959964 * Math.hypot(9.1766, 6.8825), 2);
  expect(text(attempt(1, 16), attempt(2, 18))).toContain("no change can be told");
  expect(text(attempt(1, 16), attempt(2, 18))).not.toContain("improved");
});

test("from 6 to 18 of 20 is more than measurement error", () => {
  expect(progressReport([attempt(1, 6), attempt(2, 18)], "0").comparisons[0]).toMatchObject({ verdict: "higher" });
  expect(text(attempt(1, 6), attempt(2, 18))).toContain("+60 points, improved by more than measurement error");
  expect(text(attempt(1, 18), attempt(2, 6))).toContain("-60 points, lower by more than measurement error");
});

test("the error given, or the cohort's, goes before the items'", () => {
  const two = [attempt(1, 16), attempt(2, 18)];
  expect(progressReport(two, "0", { error: 2 }).comparisons[0]).toMatchObject({ verdict: "higher", smallest: expect.closeTo(1.959964 * Math.hypot(2, 2), 4) });
  const cohort = progressReport(two, "0", { cohortErrors: new Map([["pen", { value: 3, n: 50, standardError: null, interval: null }]]) });
  expect(cohort.attempts.map(({ errorBy }) => errorBy)).toEqual(["cohort", "cohort"]);
});

test("a cohort below 30 candidates does not tell the error: the items do, and the report says why", () => {
  const two = [attempt(1, 14), attempt(2, 18)];
  const by = (n: number) => progressReport(two, "0", { cohortErrors: new Map([["pen", { value: 3, n, standardError: null, interval: null }]]) });
  expect([by(29).comparisons[0]!.verdict, by(30).comparisons[0]!.verdict]).toEqual(["not told apart", "higher"]);
  expect(by(29).attempts[0]).toMatchObject({ errorBy: "items", cohortUnused: "the cohort has 29 candidates at pen, and its error is not steady below 30" });
  const none = progressReport(two, "0", { cohortErrors: new Map([["pen", { value: null, n: 1, why: "fewer than two candidates" }]]) });
  expect(progressText(none, { width: 80, colour: false, ascii: true }).replace(/\s+/g, " ")).toContain("--cohort is not used: the cohort's error at pen is not measurable: fewer than two candidates.");
});

test("another scenario or another rubric is not compared", () => {
  const other = progressReport([attempt(1, 6), attempt(2, 18, 20, { station: "drops" })], "0");
  expect(other.comparisons).toEqual([]);
  expect(other.attempts.map(({ scenario }) => scenario)).toEqual(["new", "new"]);
  const changed = progressReport([attempt(1, 6), attempt(2, 18, 20, { rubric: { version: 2, hash: "x" } })], "0");
  expect(changed.attempts[1]).toMatchObject({ scenario: "same", rubricChanged: true });
  expect(changed.comparisons[0]).toMatchObject({ verdict: "not comparable", difference: null });
});

test("three attempts: each with the one before, and the last with the first; the tenth comes after the second", () => {
  const { comparisons } = progressReport([attempt(10, 18), attempt(1, 6), attempt(2, 10)], "0");
  expect(comparisons.map(({ from, to }) => `${from.attempt}-${to.attempt}`)).toEqual(["1-2", "2-10", "1-10"]);
});

test("keeps being missed: twice and still the last time, critical first; what is said now is listed apart", () => {
  const items = (wash: Content, dose: Content, hold: Content): Record<string, Content> => ({ wash, dose, hold });
  const three = [items("absent", "absent", "absent"), items("absent", "partial", "not-offered"), items("complete", "incorrect", "absent")].map((list, i) => record({ candidate: "P", attempt: String(i + 1), items: list, critical: ["dose"] }));
  const report = progressReport(three, "0");
  expect(report.keepsMissing.map(({ item, missed, of }) => [item, missed, of])).toEqual([["dose", 3, 3], ["hold", 2, 2]]);
  expect(report.nowSaid.map(({ item }) => item)).toEqual(["wash"]);
  expect(report.practise[0]).toMatchObject({ what: "Say this: Item dose.", why: "critical item missed in the last attempt" });
});
