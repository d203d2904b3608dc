import { expect, test } from "vitest";
import { joinMarks } from "../../../src/cohort/agreement/join.ts";
import { agreementReport } from "../../../src/cohort/agreement/report.ts";
import { readMarks } from "../../../src/cohort/marks.ts";
import { agreementText } from "../../../src/report/cohort/agreement.ts";
import { record } from "../records.ts";

/* Invented marks, small enough to count by hand. */
const RECORDS = [
  record({ candidate: "A", items: { wash: "complete", dose: "absent", needle: "cannot-tell" }, critical: ["dose"] }),
  record({ candidate: "B", items: { wash: "complete", dose: "complete", needle: "partial" }, critical: ["dose"] }),
];
const CSV = `candidate,marker,item,content
A,Kim,wash,complete
,,dose,complete
,,needle,complete
,,overall:global,4
B,Kim,wash,complete
,,dose,complete
,,needle,partial
,,overall:global,2
A,Lee,wash,absent
,,dose,complete
B,Lee,wash,complete
`;
const joined = joinMarks(RECORDS, readMarks(CSV, "marks.csv"));
const report = agreementReport(joined, "0", 0);

test("tool beside Kim: of six marks one is undecided by the tool, four of five agree", () => {
  const { measures } = report.overall.pairs.find(({ first, second }) => first === "saidwell" && second === "Kim")!;
  expect(measures.n).toBe(5);
  expect(measures.undecided).toEqual({ first: 1, second: 0 });
  expect(measures.percent.value).toBeCloseTo(0.8, 12);
  // Four categories: (4 x 0.8 - 1) / 3.
  expect(measures.pabak.value).toBeCloseTo(2.2 / 3, 12);
  // Rows complete 3, partial 1, absent 1; columns complete 4, partial 1: pe = (12 + 1) / 25.
  expect(measures.kappa.value).toBeCloseTo((0.8 - 13 / 25) / (1 - 13 / 25), 12);
});

test("with two rehearsals there is no interval over all items, because there is nothing to draw from", () => {
  for (const { measures } of report.overall.pairs) expect(measures.percent).toMatchObject({ interval: null });
});

test("disagreements come critical first, with every marker and where to listen", () => {
  expect(report.disagreements.map(({ key, item }) => [key.candidate, item])).toEqual([["A", "dose"], ["A", "wash"]]);
  expect(report.disagreements[1]).toMatchObject({ tool: "complete", people: [{ marker: "Kim", content: "complete" }, { marker: "Lee", content: "absent" }], at: [{ time: 65 }] });
});

test("wording: who differs is told apart", () => {
  const of = (item: string) => report.wording.find((need) => need.item === item)!;
  expect(of("dose")).toMatchObject({ whose: "tool", people: { differ: 0, of: 1 }, tool: { differ: 2, of: 3 } });
  expect(of("wash")).toMatchObject({ whose: "both", people: { differ: 1, of: 2 } });
  expect(report.wording.some(({ item }) => item === "needle")).toBe(false);
});

test("totals are worked out in one way from what all decided, or taken as given", () => {
  expect(report.totals.basis).toBe("from marks");
  const given = agreementReport(joinMarks(RECORDS, readMarks("candidate,marker,item,content\nA,Kim,overall:total,60\nB,Kim,overall:total,70\n", "m.csv")), "0", 0).totals;
  expect(given.basis).toBe("given");
  // Tool: A 1 of 2 counted = 50, B 2.5 of 3 = 83.33; differences -10 and 13.33.
  const { limits } = given.limits[0]!;
  expect("bias" in limits && limits.bias.value).toBeCloseTo((-10 + 13 + 1 / 3) / 2, 9);
});

test("marks of nobody, of no such item, or of an unclear attempt are left out and told with lines", () => {
  const twice = [...RECORDS, record({ candidate: "B", attempt: "2", items: { wash: "absent" } })];
  const { findings, records } = joinMarks(twice, readMarks("candidate,marker,item,content\nZ,Kim,wash,complete\nA,Kim,washing,complete\nB,Kim,wash,complete\nA,Kim,wash,complete\n", "m.csv"));
  expect(findings.map(({ line, message }) => `${line} ${message}`)).toEqual([
    expect.stringContaining("2 no result is of the candidate 'Z'"),
    expect.stringContaining("3 the rubric 'pen' (version 1) has no item 'washing'"),
    expect.stringContaining("4 the candidate 'B' has 2 results"),
  ]);
  expect(records.map(({ record: { key } }) => key.candidate)).toEqual(["A"]);
});

test("the text says what is not measurable, and never NaN", () => {
  const text = agreementText(report, { width: 80, colour: false, ascii: false });
  expect(text).toContain("80%");
  expect(text).toMatch(/~1:05/);
  expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});
