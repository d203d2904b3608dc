import { expect, test } from "vitest";
import { joinMarks } from "../../../src/cohort/agreement/join.ts";
import { agreementReport } from "../../../src/cohort/agreement/report.ts";
import { readMarks } from "../../../src/cohort/marks.ts";
import { recordOf } from "../../../src/cohort/record.ts";
import { agreementText } from "../../../src/report/cohort/agreement.ts";
import type { CorrectionResult, MarkSheet } from "../../../src/scoring/types.ts";
import { completeSheet } from "../../report/sheet.ts";
import { record } from "../records.ts";

/* Invented marks, small enough to count by hand. */
const LISTED = [{ id: "share", label: "Says that others may use it" }, { id: "stop", label: "Says that it may be stopped" }];
const found = (id: string, over: { corrected?: boolean; listen?: boolean } = {}) => ({ id, label: LISTED.find((one) => one.id === id)!.label, corrected: false, listen: false, at: { time: 65, line: 7, estimated: true }, ...over });
const rehearsal = (candidate: string, unsafeByTool: ReturnType<typeof found>[]) => record({ candidate, items: { wash: "complete" }, more: { unsafeByTool, unsafeListed: LISTED } });

/** The tool: A share, B nothing, C share put right, D share to be listened to, E stop. */
const RECORDS = [rehearsal("A", [found("share")]), rehearsal("B", []), rehearsal("C", [found("share", { corrected: true })]), rehearsal("D", [found("share", { listen: true })]), rehearsal("E", [found("stop")])];
const CSV = `candidate,marker,item,content
A,Kim,unsafe:share,said
,,unsafe:stop,absent
B,Kim,unsafe:share,said
,,unsafe:stop,
C,Kim,unsafe:share,put right
D,Kim,unsafe:share,said
E,Kim,unsafe:stop,absent
B,Lee,unsafe:share,said
E,Lee,unsafe:stop,said
`;
const report = (csv = CSV) => agreementReport(joinMarks(RECORDS, readMarks(csv, "m.csv")), "0", 0);

test("what stands by a person and what the tool found are held against one another, and what neither decides is left out", () => {
  const { pairs } = report().unsafe!;
  // Both A; Kim alone B; the tool alone E; neither A's stop and C, put right by both. D is left to a listener.
  expect(pairs[0]).toMatchObject({ first: "saidwell", second: "Kim", n: 5, rehearsals: 4, both: 1, firstOnly: 1, secondOnly: 1, neither: 2, secondByFirst: { value: 0.5 }, firstBySecond: { value: 0.5 } });
  // Observed 3/5, by chance 2/5 x 2/5 + 3/5 x 3/5.
  expect(pairs[0]!.kappa.value).toBeCloseTo((0.6 - 13 / 25) / (1 - 13 / 25), 12);
});

test("what people heard and the tool did not find comes first, then what it found alone", () => {
  expect(report().unsafe!.disagreements.map(({ key, statement, tool, people, at }) => [key.candidate, statement, tool, people.map(({ mark }) => mark).join(" "), at.length])).toEqual([
    ["B", "share", "absent", "said said", 0],
    ["D", "share", "cannot-tell", "said", 1],
    ["E", "stop", "said", "absent said", 1],
  ]);
});

test("the text says how many were heard and found, and where to listen", () => {
  const text = agreementText(report(), { width: 100, colour: false, ascii: true });
  expect(text).toContain("UNSAFE STATEMENTS");
  expect(text).toMatch(/stand by Kim {4,}2; 1 of them by saidwell, 50% \(/);
  expect(text).toMatch(/B, pen, attempt 1: Says that others may use it\n {4}saidwell absent, Kim said, Lee said\. Not found by the tool: listen for it\./);
  expect(text).toMatch(/saidwell said, Kim absent, Lee said\. Listen at ~1:05\./);
});

test("without such marks there is nothing of it; a statement that the rubric has not is told and left out", () => {
  expect(report("candidate,marker,item,content\nA,Kim,wash,complete\n").unsafe).toBeNull();
  const { findings } = joinMarks(RECORDS, readMarks("candidate,marker,item,content\nA,Kim,unsafe:shares,said\n", "m.csv"));
  expect(findings.map(({ line, message }) => `${line} ${message}`)).toEqual([expect.stringContaining("2 the rubric 'pen' (version 1) has no unsafe statement 'shares'")]);
});

test.each([["complete"], ["yes"]])("'%s' is no mark of an unsafe statement", (content) => {
  expect(() => readMarks(`candidate,marker,item,content\nA,Kim,unsafe:share,${content}\n`, "m.csv")).toThrow(/is not one that an unsafe statement can have/);
});

test("of a corrected sheet the tool's own finds count, as those of items do", () => {
  const signed = { label: "", by: "Kim", when: "2026-11-26", why: "heard", line: 5 };
  const [one] = completeSheet().unsafe.found;
  const sheet: MarkSheet = {
    ...completeSheet(),
    unsafe: { listed: 6, found: [{ ...one!, id: "heard", overruled: { by: "Kim", when: "2026-11-26", at: { time: 9 } } }, { ...one!, id: "own", corrected: false, listen: false }] },
    corrections: { file: "a.yaml", applied: [
      { ...signed, unsafe: "heard", content: "said", at: { time: 9 }, corrected: false, tool: { found: 0, standing: 0 } },
      { ...signed, unsafe: "not-said", content: "absent", tool: { found: 2, standing: 1 } },
    ] satisfies CorrectionResult[] },
  };
  const { unsafe, unsafeByTool } = recordOf({ candidate: "A", station: "pen", attempt: "1" }, "a.txt", {}, sheet);
  expect(unsafe.map(({ id }) => id)).toEqual(["heard", "own"]);
  expect(unsafeByTool.map(({ id, listen }) => [id, listen])).toEqual([["own", false], ["not-said", false]]);
});
