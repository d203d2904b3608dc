import { expect, test } from "vitest";
import { demoTable } from "../../src/build/demo-table.mjs";
import { completeSheet } from "../report/sheet.ts";

/** Invented: three rehearsals, one with a long title, one without times, one on the way to be listened to. */
function rehearsals() {
  const [strong, untimed, doubtful] = [completeSheet(), completeSheet(), completeSheet()];
  Object.assign(strong, { result: { ...strong.result, outcome: "pass" }, total: { ...strong.total, percent: 90.5, provisional: false } });
  strong.unsafe.found = [];
  strong.time.overLimit = { value: -3, estimated: false };
  untimed.time.used = { value: null, why: "no times" };
  doubtful.result.outcome = "provisional";
  for (const sheet of [untimed, doubtful]) sheet.total.percent = 54.5;
  return [
    { title: "Strong and short", sheet: strong },
    { title: "A rehearsal with a title so long that no terminal of sixty columns could hold it on a line", sheet: untimed },
    { title: "In doubt", sheet: doubtful },
  ];
}

test("a line a rehearsal: number, title, result in words, coverage, critical items, unsafe statements, time", () => {
  const table = demoTable(rehearsals(), 200);
  expect(table).toMatch(/^1 +Strong and short +PASS +90.5% +1 of 3 +none +7:13$/m);
  expect(table).toMatch(/^2 +A rehearsal with .* line +FAIL +54.5%\? +1 of 3 +1, 1\? +-$/m);
  expect(table).toMatch(/^3 +In doubt +PROVISIONAL .*7:13 over$/m);
});

test.each([60, 80, 120, 200])("no line is wider than %i columns, and no word of a title is lost", (width) => {
  const table = demoTable(rehearsals(), width);
  for (const line of table.split("\n")) expect(line.length, line).toBeLessThanOrEqual(width);
  for (const { title } of rehearsals()) for (const word of title.split(" ")) expect(table).toContain(word);
});
