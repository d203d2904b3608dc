import { expect, test } from "vitest";
import { gradebookColumns } from "../../src/cohort/gradebook.ts";
import { itemsReport } from "../../src/cohort/items/report.ts";
import { progressReport } from "../../src/cohort/progress/report.ts";
import type { MarkedResult } from "../../src/cohort/result.ts";
import { SummaryTally } from "../../src/cohort/summary.ts";
import type { StatementResult } from "../../src/scoring/types.ts";
import { completeSheet } from "../report/sheet.ts";
import { record } from "./records.ts";

// Invented. Only what stands at the end is held against anybody: not what was put right, not what may be mis-heard.
const SAID = completeSheet().unsafe.found[0]!;
const said = (id: string, more: Partial<StatementResult> = {}): StatementResult => ({ ...SAID, id, label: `Statement ${id}`, corrected: false, listen: false, ...more });
const PUT_RIGHT = said("lift", { corrected: true });
const MIS_HEARD = said("stairs", { listen: true });

function counted(found: StatementResult[]): { gradebook: unknown; summary: number } {
  const sheet = completeSheet();
  const result: MarkedResult = { form: "saidwell/result@1", key: { candidate: "A", station: "pen", attempt: "1" }, file: "A_pen.txt", hashes: { transcript: "t", rubric: "r", options: "o", program: "p" }, version: "0", columns: {}, sheet: { ...sheet, unsafe: { ...sheet.unsafe, found } } };
  const tally = new SummaryTally();
  tally.add(result);
  return { gradebook: gradebookColumns([]).find(({ name }) => name === "unsafe")!.value(result), summary: tally.done("0").stations[0]!.unsafe };
}

test("the gradebook counts the statements that stand, each once; the summary the rehearsals that have one", () => {
  expect(counted([PUT_RIGHT, MIS_HEARD])).toEqual({ gradebook: 0, summary: 0 });
  expect(counted([PUT_RIGHT, MIS_HEARD, said("share"), said("share"), said("double")])).toEqual({ gradebook: 2, summary: 1 });
});

const rehearsal = (candidate: string, unsafe: StatementResult[], attempt = "1") => record({ candidate, attempt, items: { a: "complete" }, more: { unsafe } });

test("the item analysis tells those that stand, those put right and those to listen to apart; what may be mis-heard is not put right", () => {
  const { unsafe } = itemsReport([rehearsal("A", [said("share")]), rehearsal("B", [said("share", { corrected: true })]), rehearsal("C", [said("share", { listen: true })]), rehearsal("D", [said("share", { corrected: true, listen: true })])], "0").stations[0]!;
  expect(unsafe).toEqual([{ id: "share", label: "Statement share", standing: 1, corrected: 1, toListen: 2 }]);
});

test("progress names, and has people practise, only what stands", () => {
  const { attempts, practise } = progressReport([rehearsal("A", [PUT_RIGHT, MIS_HEARD, said("share")])], "0");
  expect(attempts[0]!.unsafe).toEqual(["Statement share"]);
  expect(practise.map(({ what }) => what)).toEqual(["Never say this: Statement share."]);
});
