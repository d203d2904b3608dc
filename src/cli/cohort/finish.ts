import { closeSync, copyFileSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { stringify } from "csv-stringify/sync";
import writeFileAtomic from "write-file-atomic";
import { gradebookColumns, itemColumns, type Cell, type ItemRow } from "../../cohort/gradebook.ts";
import type { MarkingBasis } from "../../cohort/marking-basis.ts";
import { compareResults, isMarked, type CohortResult, type ResultKey } from "../../cohort/result.ts";
import { entryOf } from "../../cohort/sheet-names.ts";
import type { Shard } from "../../cohort/shard.ts";
import { SummaryTally, type CohortSummary } from "../../cohort/summary.ts";
import { toJsonLine } from "../../report/json.ts";
import { summaryJson, summaryMarkdown, summaryText } from "../../report/cohort/summary.ts";
import { writeAll } from "./lines.ts";
import { writeManifest } from "./manifest.ts";
import { ParquetTable } from "./parquet.ts";
import { JSON_ENDING, TEXT_ENDING, writeSheet } from "./sheet-file.ts";
import { JOURNAL, RESULTS, type Located, type ResultStore } from "./store.ts";

export const SHEETS = "sheets";
const LEFT_OVER = "sheets-left-over";

/** Summaries in files look the same whatever terminal the run was started from. */
const LOOK = { width: 80, colour: false, ascii: false };

export interface FinishOptions {
  folder: string;
  version: string;
  shard: Shard | null;
  json: boolean;
  marking?: MarkingBasis | undefined;
  /** The sheet's name, without an ending. */
  sheetName: (entry: { key: ResultKey; file: string }) => string;
  /** Transcripts that the plan does not name. */
  unplanned: readonly string[];
  /** What the columns of a kept result are now, as JSON. */
  columns: ReadonlyMap<string, string>;
}

export interface Finished {
  summary: CohortSummary;
  /** Sheets that no result has any more: moved aside. */
  leftOver: number;
}

/**
 * Writes every output from the results, sorted, with one sheet in memory at a time. Each file is made beside its place
 * and takes it when whole; the journal goes last, so that this can be ended at any moment and done again.
 */
export function finish(store: ResultStore, options: FinishOptions): Finished {
  const { folder, version } = options;
  const entries = sorted(store);
  const extra = extraColumns(entries, options);
  const columns = gradebookColumns(extra);
  const table = (name: string) => join(folder, name);
  const gradebook = new FreshFile(table("gradebook.csv"));
  const results = new FreshFile(table(RESULTS));
  const rows = new ParquetTable<CohortResult>(table("results.parquet"), columns);
  const items = new ParquetTable<ItemRow>(table("items.parquet"), itemColumns(extra));
  const tally = new SummaryTally();
  const sheets = new SheetFolder(options);
  gradebook.write(csvLine(columns.map(({ name }) => name)));
  for (const { identity, located } of entries) {
    const text = store.read(located);
    const result = JSON.parse(text) as CohortResult;
    const now = options.columns.get(identity);
    if (now === undefined || now === located.columns) results.write(`${text}\n`);
    else {
      result.columns = JSON.parse(now) as Record<string, string>;
      results.write(toJsonLine(result));
    }
    gradebook.write(csvLine(columns.map(({ value }) => value(result))));
    rows.add(result);
    if (isMarked(result)) result.sheet.items.forEach((_, place) => items.add({ result, place }));
    tally.add(result);
    sheets.keep(result, located);
  }
  const summary = tally.done(version, options.unplanned);
  rows.finish();
  items.finish();
  gradebook.finish();
  for (const [name, text] of [["summary.txt", summaryText(summary, LOOK)], ["summary.md", summaryMarkdown(summary)], ["summary.json", summaryJson(summary)]] as const) {
    writeFileAtomic.sync(table(name), text);
  }
  const leftOver = sheets.finish();
  results.finish();
  writeManifest(folder, { version, shard: options.shard, complete: true, results: summary.rehearsals, failed: summary.failed.length, ...(options.unplanned.length > 0 && { unplanned: [...options.unplanned] }), ...(options.marking !== undefined && { marking: options.marking }) });
  rmSync(table(JOURNAL), { force: true });
  return { summary, leftOver };
}

interface SortedEntry {
  identity: string;
  key: ResultKey;
  file: string;
  located: Located;
}

function sorted(store: ResultStore): SortedEntry[] {
  return [...store.index]
    .map(([identity, located]) => ({ identity, ...entryOf(identity), located }))
    .sort(compareResults);
}

/** The plan's other columns, in the order in which the results bring them. */
function extraColumns(entries: readonly SortedEntry[], { columns }: FinishOptions): string[] {
  const names = new Set<string>();
  const seen = new Set<string>();
  for (const { identity, located } of entries) {
    const json = columns.get(identity) ?? located.columns;
    if (seen.has(json)) continue;
    seen.add(json);
    for (const name of Object.keys(JSON.parse(json) as object)) names.add(name);
  }
  return [...names];
}

/** RFC 4180, with CRLF as it says; a text that a spreadsheet would run as a formula gets an apostrophe in front (OWASP, CSV Injection). */
function csvLine(cells: readonly Cell[]): string {
  return stringify([cells.map((cell) => (typeof cell === "string" ? withoutDrivers(cell) : cell))], { escape_formulas: true, record_delimiter: "windows", cast: { boolean: (value) => (value ? "yes" : "no") } });
}

/** Characters that drive a terminal or turn the order of what it shows: a table is looked at there too. The results keep them. */
const DRIVERS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

function withoutDrivers(text: string): string {
  return text.replace(DRIVERS, "\ufffd");
}

/** A file written piece by piece beside its place, which it takes when it is whole and on the disk. */
class FreshFile {
  readonly #path: string;
  readonly #fd: number;
  #held: string[] = [];
  #length = 0;

  constructor(path: string) {
    this.#path = path;
    this.#fd = openSync(`${path}.new`, "w");
  }

  write(text: string): void {
    this.#held.push(text);
    this.#length += text.length;
    if (this.#length > 1 << 20) this.#flush();
  }

  finish(): void {
    this.#flush();
    fsyncSync(this.#fd);
    closeSync(this.#fd);
    renameSync(`${this.#path}.new`, this.#path);
  }

  #flush(): void {
    writeAll(this.#fd, Buffer.from(this.#held.join("")));
    this.#held = [];
    this.#length = 0;
  }
}

/** Sees that every marked result has its sheet, and that no other sheet stands among them. */
class SheetFolder {
  readonly #options: FinishOptions;
  readonly #expected = new Set<string>();
  readonly #folder: string;

  constructor(options: FinishOptions) {
    this.#options = options;
    this.#folder = join(options.folder, SHEETS);
    mkdirSync(this.#folder, { recursive: true });
  }

  keep(result: CohortResult, located: Located): void {
    if (!isMarked(result)) return;
    const { json, sheetName, folder } = this.#options;
    const name = sheetName(result);
    const endings = json ? [TEXT_ENDING, JSON_ENDING] : [TEXT_ENDING];
    for (const ending of endings) this.#expected.add(name + ending);
    const here = join(this.#folder, name);
    if (located.folder !== folder) {
      const there = join(located.folder, SHEETS, name);
      if (endings.every((ending) => isWhole(there + ending))) {
        for (const ending of endings) copyFileSync(there + ending, here + ending);
        return;
      }
    } else if (endings.every((ending) => isWhole(here + ending))) return;
    writeSheet(here, result.sheet, json);
  }

  /** @returns how many were moved aside: what somebody may have written into a sheet is not thrown away. */
  finish(): number {
    clearUnfinished(this.#folder);
    clearUnfinished(this.#options.folder);
    const extra = readdirSync(this.#folder).filter((name) => !this.#expected.has(name));
    const aside = join(this.#options.folder, LEFT_OVER);
    if (extra.length > 0) mkdirSync(aside, { recursive: true });
    for (const name of extra) renameSync(join(this.#folder, name), freeName(join(aside, name)));
    return extra.length;
  }
}

/** A power failure may leave an empty file. */
function isWhole(path: string): boolean {
  return existsSync(path) && statSync(path).size > 0;
}

/** What an atomic write leaves beside its target when the program is killed in the middle of it. */
function clearUnfinished(folder: string): void {
  for (const name of readdirSync(folder)) if (/\.(txt|json|md)\.\d{6,}$/.test(name)) rmSync(join(folder, name), { force: true });
}

function freeName(path: string): string {
  for (let count = 1; ; count += 1) {
    const name = count === 1 ? path : `${path}.${count}`;
    if (!existsSync(name)) return name;
  }
}
