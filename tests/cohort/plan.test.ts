import { expect, test } from "vitest";
import { readPlan } from "../../src/cohort/plan.ts";
import { ProblemError } from "../../src/problem/problem.ts";

test("a plan says what each file is; its other columns are kept", () => {
  const { rows } = readPlan('file,candidate,station,attempt,rubric,accent\n"a, b.vtt",A1,pen,2,insulin-pen,Scots\nc.txt,,,,,\n', "plan.csv");
  expect(rows).toEqual([
    { line: 2, file: "a, b.vtt", candidate: "A1", station: "pen", attempt: "2", rubric: "insulin-pen", columns: { accent: "Scots" } },
    { line: 3, file: "c.txt", columns: { accent: "" } },
  ]);
});

test("a spreadsheet's byte-order mark, semicolons, CRLF, blanks and backslashes are taken", () => {
  const { rows } = readPlan("\ufeffFile;Candidate;School\r\nday 1\\a.txt; A1 ;North, upper\r\n\r\n", "plan.csv");
  expect(rows).toEqual([{ line: 2, file: "day 1/a.txt", candidate: "A1", columns: { School: "North, upper" } }]);
});

test("lines without a file map stations to rubrics", () => {
  const { rows, stations } = readPlan("station,rubric\npen,insulin-pen\ndrops,./own.yaml\n", "plan.csv");
  expect(rows).toEqual([]);
  expect([...stations]).toEqual([["pen", "insulin-pen"], ["drops", "./own.yaml"]]);
});

function faults(text: string): string[] {
  try {
    readPlan(text, "plan.csv");
  } catch (error) {
    return (error as ProblemError).findings.map(({ code, line, message }) => `${code} ${line} ${message}`);
  }
  return [];
}

test.each([
  ["", "1 the plan is empty"],
  ["name,who\na,b\n", "1 there is neither a column 'file'"],
  ["file,file\na,b\n", "1 the column 'file' stands twice"],
  ["file,\na,b\n", "1 column 2 has no name"],
  ["file,candidate\na.txt,A1,x\n", "2 the line has 3 cells, the header 2"],
  ["file,candidate\n,A1\n", "2 the line names no file"],
  ["file,candidate\n../secret.txt,A1\n", "2 the file '../secret.txt' lies outside"],
  ["file,candidate\n/etc/x.txt,A1\n", "2 the file '/etc/x.txt' lies outside"],
  ["station,rubric\npen,a\npen,b\n", "3 the station 'pen' has a rubric already"],
  ['file,candidate\n"a.txt,A1\n', "the plan is not well-formed CSV"],
])("the plan %j is refused with the line", (text, reason) => {
  expect(faults(text).join("\n")).toContain(reason);
  expect(faults(text).every((fault) => fault.startsWith("SW-B01"))).toBe(true);
});

test("every fault of a plan is told, not only the first", () => {
  expect(faults("file,candidate\n,A1\n../x.txt,A2\n")).toHaveLength(2);
});

test("the apostrophe that the gradebook puts before a formula is no part of a name, here as in marks", () => {
  const { rows } = readPlan("file,candidate,note\na.txt,'=1+1,'\uff1dx\n", "plan.csv");
  expect(rows).toMatchObject([{ candidate: "=1+1", columns: { note: "\uff1dx" } }]);
});
