import { expect, test } from "vitest";
import { recordOf } from "../../src/cohort/record.ts";
import { completeSheet } from "../report/sheet.ts";
import { record } from "./records.ts";
import { readMarks } from "../../src/cohort/marks.ts";
import { ProblemError } from "../../src/problem/problem.ts";

const faults = (text: string) => {
  try {
    readMarks(text, "marks.csv");
  } catch (error) {
    if (error instanceof ProblemError) return error.findings.map(({ code, line, message }) => `${code} ${line} ${message}`);
    throw error;
  }
  return [];
};

test("a sheet filled in as people do: candidate and marker once, the rest below; blank lines are not marked", () => {
  const { rows, blank } = readMarks("candidate;station;attempt;marker;item;content\nA;pen;1;Kim;wash;complete\n;;;;needle;\n;;;;dose;Cannot tell\n;;;;overall:global;3,5\nB;;;;wash;n/a\n", "marks.csv");
  expect(blank).toBe(1);
  expect(rows.map(({ line, candidate, station, marker, mark }) => [line, candidate, station, marker, mark.kind === "whole" ? mark.value : mark.content])).toEqual([
    [2, "A", "pen", "Kim", "complete"],
    [4, "A", "pen", "Kim", "cannot-tell"],
    [5, "A", "pen", "Kim", 3.5],
    [6, "B", null, "Kim", "not-applicable"],
  ]);
});

test("every fault is told with its line", () => {
  expect(faults("candidate,marker,item,content\nA,Kim,wash,yes\n,,overall:totl,3\n,,overall:total,120\nA,Kim,,complete\n")).toEqual([
    "SW-A04 2 the content 'yes' is not one that an item can have",
    expect.stringContaining("SW-A04 3 'overall:totl' is not one of overall:total, overall:global, overall:communication"),
    expect.stringContaining("SW-A04 4 overall:total is '120'"),
    "SW-A04 5 the line names no item",
  ]);
});

test("a column that is missing and a cell too many are told", () => {
  expect(faults("candidate,item,content\nA,wash,complete\n")).toEqual([expect.stringContaining("no column 'marker'")]);
  expect(faults("candidate,marker,item,content\nA,Kim,wash,complete,x\n")).toEqual([expect.stringContaining("SW-A04 2 the line has 5 cells, the header 4")]);
  expect(faults("")).toEqual([expect.stringContaining("empty")]);
});

test("one marker cannot mark one thing twice", () => {
  expect(faults("candidate,marker,item,content\nA,Kim,wash,complete\nA,Kim,wash,absent\n")).toEqual([expect.stringMatching(/^SW-A05 3 .*in line 2 already/)]);
});

test("a candidate typed with accents in one piece is the one whose file has them apart", () => {
  const apart = record({ candidate: "Zoe\u0308", items: { a: "complete" } });
  const known = recordOf(apart.key, "z.vtt", {}, completeSheet());
  expect(known.key.candidate).toBe("Zo\u00eb");
  for (const typed of ["Zo\u00eb", "Zoe\u0308"]) expect(readMarks(`candidate,marker,item,content\n${typed},Kim,a,complete\n`, "m.csv").rows[0]!.candidate).toBe("Zo\u00eb");
});
