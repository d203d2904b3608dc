import { expect, test } from "vitest";
import { gradebookColumns, itemColumns } from "../../src/cohort/gradebook.ts";
import { recordOf } from "../../src/cohort/record.ts";
import { SummaryTally } from "../../src/cohort/summary.ts";
import type { MarkedResult } from "../../src/cohort/result.ts";
import { summaryText } from "../../src/report/cohort/summary.ts";
import type { MarkSheet } from "../../src/scoring/types.ts";
import { completeSheet } from "../report/sheet.ts";

/** An invented sheet with a critical item that listening may well find said. */
function result(over: Partial<MarkSheet> = {}): MarkedResult {
  const sheet = { ...completeSheet(), ...over };
  return { form: "saidwell/result@1", key: { candidate: "A", station: "pen", attempt: "1" }, file: "A_pen.txt", hashes: { transcript: "t", rubric: "r", options: "o", program: "p" }, version: "0", columns: {}, sheet };
}

const IN_DOUBT = result({
  result: { outcome: "provisional", reasons: [], rule: "" },
  total: { earned: 2, available: 4, percent: 50, provisional: false },
  critical: { total: 3, met: 1, missed: ["breath-hold"], doubted: ["breath-hold"], unsure: ["one-puff"] },
});
const cells = (one: MarkedResult) => Object.fromEntries(gradebookColumns([]).map(({ name, value }) => [name, value(one)]));

test("a result that is provisional is not denied by another column of its row", () => {
  expect(cells(IN_DOUBT)).toMatchObject({ result: "provisional", total_provisional: false, critical_missed: "breath-hold", critical_to_confirm: "breath-hold; one-puff" });
  expect(cells(IN_DOUBT)).not.toHaveProperty("provisional");
});

test("what waits for a listener waits in the analysis too: a cut score or a comparison must say so", () => {
  expect(recordOf(IN_DOUBT.key, IN_DOUBT.file, {}, IN_DOUBT.sheet)).toMatchObject({ provisional: true, criticalDoubted: ["breath-hold"] });
});

test("the summary says which misses are to be confirmed by listening", () => {
  const tally = new SummaryTally();
  tally.add(IN_DOUBT);
  tally.add(result({ critical: { total: 3, met: 2, missed: ["breath-hold"], doubted: [], unsure: [] } }));
  const summary = tally.done("0");
  expect(summary.stations[0]!.criticalMissed).toMatchObject([{ item: "breath-hold", missed: 2, toConfirm: 1 }]);
  expect(summaryText(summary, { width: 80, colour: false, ascii: true }).replace(/\s+/g, " ")).toContain("2 of 2 (100%), 1 of them to be confirmed by listening: ");
});

test("results of a version that told nothing of doubt are read as before", () => {
  const { total, met, missed, unsure } = IN_DOUBT.sheet.critical;
  const old = result({ critical: { total, met, missed, unsure } as MarkSheet["critical"] });
  expect(cells(old)).toMatchObject({ critical_to_confirm: "one-puff" });
  expect(recordOf(old.key, old.file, {}, old.sheet).criticalDoubted).toEqual([]);
});

test.each([["the gradebook", gradebookColumns], ["the table of items", itemColumns]] as const)("no two columns of %s have one name, whatever the plan calls its own", (_, columnsOf) => {
  const names = columnsOf(["item", "result", "plan_result", "plan_item", "plan_plan_result", "accent"]).map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  expect(names).toEqual(expect.arrayContaining(["accent", "plan_result", "plan_item"]));
});

test("the summary counts no station for a file that names none", () => {
  const tally = new SummaryTally();
  tally.add(IN_DOUBT);
  tally.add({ ...result(), key: { candidate: "", station: "", attempt: "1" }, file: "odd.txt", sheet: null, errors: [{ code: "SW-B02", severity: "error", file: "odd.txt", message: "no name" }] });
  expect(summaryText(tally.done("0"), { width: 80, colour: false, ascii: true })).toContain("at 1 station: 1 marked, 1 could not be");
});
