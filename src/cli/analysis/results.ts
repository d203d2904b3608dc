import { closeSync, openSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { globSync } from "tinyglobby";
import { recordOf, recordOfResult, type SheetRecord } from "../../cohort/record.ts";
import { compareNatural, compareResults, RESULT_FORM, type CohortResult } from "../../cohort/result.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import type { MarkSheet } from "../../scoring/types.ts";
import { readLines } from "../cohort/lines.ts";
import { RESULTS } from "../cohort/store.ts";
import { problem, systemReason } from "../problems.ts";

const SHEET_FORM = "saidwell/mark-sheet@1";
/** A sheet is some 100 kB; a single file a hundred times that is none. */
const MAX_SHEET_BYTES = 16 * 1024 * 1024;
const MEND = "Give a folder that 'saidwell cohort' wrote, its results.jsonl, or mark sheets written with --format json.";

export interface Records {
  /** By candidate, station, attempt, file. */
  records: SheetRecord[];
  /** What was left out, and why. */
  findings: Finding[];
  /** The files that were read, which no output may overwrite. */
  inputs: string[];
}

/**
 * Reads results: a cohort's folder, its results.jsonl, one mark sheet as JSON, or a folder of such sheets. Sheets by
 * themselves do not say whose they are: the candidate is the sheet's label, or the file's name without an ending; the
 * station is the rubric's id.
 * @throws ProblemError SW-A01, and SW-A07 when nothing in it is marked
 */
export function readRecords(path: string): Records {
  const found: Records = { records: [], findings: [], inputs: [] };
  try {
    if (!statSync(path).isDirectory()) readFile(path, found);
    else if (readdirSync(path).includes(RESULTS)) readResults(join(path, RESULTS), found);
    else readSheets(path, found);
  } catch (error) {
    if (error instanceof ProblemError) throw error;
    throw problem("SW-A01", path, `the results cannot be read: ${systemReason(error)}`, MEND);
  }
  if (found.records.length === 0) {
    throw new ProblemError([{ code: "SW-A07", severity: "error", file: path, message: "there is no marked rehearsal in it", mend: MEND }, ...found.findings]);
  }
  found.records.sort(compareResults);
  return found;
}

function readFile(path: string, found: Records): void {
  if (/\.jsonl$/i.test(path)) return readResults(path, found);
  const sheet = sheetOf(path);
  if (sheet === null) throw problem("SW-A01", path, "this is neither results of a cohort nor a mark sheet as JSON", MEND);
  addSheet(path, sheet, found, [path]);
}

function readResults(path: string, found: Records): void {
  found.inputs.push(path);
  const fd = openSync(path, "r");
  let line = 0;
  let unmarked = 0;
  try {
    for (const { text } of readLines(fd)) {
      line += 1;
      const result = parsed(text) as CohortResult | null;
      if (result?.form !== RESULT_FORM) {
        found.findings.push({ code: "SW-A02", severity: "warning", file: path, line, message: "the line is not a result and was left out", mend: "Run the command that made the results again: it mends them." });
        continue;
      }
      const record = recordOfResult(result);
      if (record === null) unmarked += 1;
      else found.records.push(record);
    }
  } finally {
    closeSync(fd);
  }
  if (unmarked > 0) {
    found.findings.push({ code: "SW-A02", severity: "warning", file: path, message: `${unmarked} rehearsal${unmarked === 1 ? "" : "s"} could not be marked and ${unmarked === 1 ? "is" : "are"} not in the figures`, mend: "The summary.txt beside it says why." });
  }
}

function readSheets(folder: string, found: Records): void {
  const paths = globSync("**/*.json", { cwd: folder, onlyFiles: true, expandDirectories: false }).sort(compareNatural).map((path) => join(folder, path));
  for (const path of paths) {
    const sheet = sheetOf(path);
    if (sheet === null) found.findings.push({ code: "SW-A02", severity: "warning", file: path, message: "this is not a mark sheet and was left out", mend: "Keep other JSON files elsewhere." });
    else addSheet(path, sheet, found, paths);
  }
}

function addSheet(path: string, sheet: MarkSheet, found: Records, all: readonly string[]): void {
  found.inputs.push(path);
  const candidate = sheet.candidate ?? (all.length === 1 ? basename(path).replace(/\.json$/i, "") : basename(sheet.transcript.file).replace(/\.[^.]*$/, ""));
  const before = found.records.filter(({ key }) => key.candidate === candidate && key.station === sheet.rubric.id).length;
  found.records.push(recordOf({ candidate, station: sheet.rubric.id, attempt: String(before + 1) }, path, {}, sheet));
}

/** One mark sheet written with --format json. @throws ProblemError SW-A01 */
export function oneSheet(path: string): MarkSheet {
  let sheet: MarkSheet | null;
  try {
    sheet = sheetOf(path);
  } catch (error) {
    throw problem("SW-A01", path, `the mark sheet cannot be read: ${systemReason(error)}`, "Give a mark sheet written with 'saidwell mark --format json'.");
  }
  if (sheet === null) throw problem("SW-A01", path, "this is not a mark sheet as JSON", "Give a mark sheet written with 'saidwell mark --format json'.");
  return sheet;
}

function sheetOf(path: string): MarkSheet | null {
  if (statSync(path).size > MAX_SHEET_BYTES) return null;
  const sheet = parsed(readFileSync(path, "utf8")) as MarkSheet | null;
  return sheet?.form === SHEET_FORM && Array.isArray(sheet.items) ? sheet : null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    return null;
  }
}
