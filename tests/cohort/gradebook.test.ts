import { expect, test } from "vitest";
import { gradebookColumns, itemColumns } from "../../src/cohort/gradebook.ts";
import { recordOf } from "../../src/cohort/record.ts";
import { SummaryTally } from "../../src/cohort/summary.ts";
import type { MarkedResult } from "../../src/cohort/result.ts";
import { summaryMarkdown, summaryText } from "../../src/report/cohort/summary.ts";
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

test("unsafe statements are named, those to be listened to apart, and what people overruled is counted", () => {
  const [found] = completeSheet().unsafe.found;
  const one = (id: string, over: Partial<typeof found>) => ({ ...found!, corrected: false, listen: false, id, ...over });
  const unsafe = { listed: 7, found: [one("share", {}), one("share", {}), one("more", { listen: true }), one("share", { listen: true }), one("wait", { corrected: true })] };
  const applied = [{ unsafe: "share", label: "Share it", content: "said" as const, at: { time: 9 }, corrected: false, by: "Kim", when: "2026-11-26", why: "heard", line: 5, tool: { found: 0, standing: 0 } }];
  const corrected = result({ unsafe, corrections: { file: "a.yaml", applied } });
  expect(cells(corrected)).toMatchObject({ unsafe: 1, unsafe_found: "share", unsafe_to_confirm: "more", overruled: 1 });
  expect(cells(result({ unsafe: { listed: 7, found: [] }, corrections: null }))).toMatchObject({ unsafe: 0, unsafe_found: "", unsafe_to_confirm: "", overruled: 0 });
  const tally = new SummaryTally();
  tally.add(corrected);
  tally.add(IN_DOUBT);
  expect(summaryText(tally.done("0"), { width: 100, colour: false, ascii: true })).toContain("overruled         1 mark by hand, in 1 rehearsal: the figures rest on it\n");
});

test("transcripts that the plan does not name stand in every form of the summary: a candidate forgotten there is missed", () => {
  const tally = new SummaryTally();
  tally.add(IN_DOUBT);
  const summary = tally.done("0", ["B_pen.txt", "sub/C_pen.vtt"]);
  expect(summary.unplanned).toEqual(["B_pen.txt", "sub/C_pen.vtt"]);
  const text = summaryText(summary, { width: 120, colour: false, ascii: true });
  expect(text).toContain("1 marked, 0 could not be marked, 2 transcripts not named by the plan.");
  expect(text).toMatch(/NOT NAMED BY THE PLAN [^\n]*\n {2}B_pen\.txt\n {2}sub\/C_pen\.vtt\n/);
  expect(summaryMarkdown(summary)).toContain("## Not named by the plan, passed over\n\n- B\\_pen.txt\n");
  expect(summaryText(tally.done("0"), { width: 120, colour: false, ascii: true })).not.toContain("plan");
});

test("a column of the plan has one name in both tables", () => {
  const planned = ["result", "item", "accent"];
  const own = (columns: { name: string }[]) => columns.map(({ name }) => name).filter((name) => planned.some((plan) => name.endsWith(plan)));
  expect(own(gradebookColumns(planned))).toEqual(expect.arrayContaining(["plan_result", "plan_item", "accent"]));
  expect(own(itemColumns(planned))).toEqual(expect.arrayContaining(["plan_result", "plan_item", "accent"]));
});

test("a fault of another file, as the corrections, is told with that file", () => {
  const tally = new SummaryTally();
  tally.add({ ...result(), sheet: null, errors: [{ code: "SW-M03", severity: "error", file: "a.yaml", line: 3, message: "the rubric has changed" }, { code: "SW-T04", severity: "error", file: "A_pen.txt", line: 1, message: "no text" }] });
  const summary = tally.done("0");
  expect(summaryText(summary, { width: 100, colour: false, ascii: true })).toMatch(/a\.yaml, line 3: the rubric has changed \[SW-M03\]\n {4}line 1: no text/);
  expect(summaryMarkdown(summary)).toContain("| a.yaml, line 3 | SW-M03 |");
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
