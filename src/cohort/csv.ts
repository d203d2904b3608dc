import { CsvError, parse } from "csv-parse/sync";
import type { FindingCode } from "../problem/catalogue.ts";
import { ProblemError, type Finding } from "../problem/problem.ts";

export interface CsvLine {
  cells: string[];
  /** 1-based, of the record's last line in the file. */
  line: number;
}

/**
 * CSV as people's programs write it: RFC 4180 with comma, semicolon or tab, a byte-order mark, any number of cells.
 * @param what names the file in the message: "the plan"
 * @throws ProblemError with `code` when quotes do not match
 */
export function parseCsv(text: string, file: string, code: FindingCode, what: string): CsvLine[] {
  const firstLine = /^[^\r\n]*/.exec(text)![0];
  const delimiter = [",", ";", "\t"].reduce((best, mark) => (firstLine.split(mark).length > firstLine.split(best).length ? mark : best), ",");
  const found: CsvLine[] = [];
  try {
    parse(text, {
      bom: true,
      delimiter,
      relax_column_count: true,
      skip_empty_lines: true,
      on_record: (cells: string[], { lines: line }) => {
        found.push({ cells, line });
        return null;
      },
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = Number((error as { lines?: number }).lines ?? 1);
    throw new ProblemError([csvFinding(code, file, line, `${what} is not well-formed CSV: ${error.message}`, "A cell in double quotes ends with one; a quote inside is written twice.")]);
  }
  return found;
}

export function csvFinding(code: FindingCode, file: string, line: number, message: string, mend: string): Finding {
  return { code, severity: "error", file, line, message, mend };
}

export interface NamedRow {
  /** By the column's name in small letters; empty cells are "". */
  cells: ReadonlyMap<string, string>;
  line: number;
}

/**
 * Rows by the names of the header line, cells trimmed. Every fault is told, not only the first.
 * @param needed columns without which nothing can be done
 * @throws ProblemError with `code`
 */
export function readTable(text: string, file: string, code: FindingCode, what: string, needed: readonly string[]): NamedRow[] {
  const [header, ...lines] = parseCsv(text, file, code, what);
  if (header === undefined) throw new ProblemError([csvFinding(code, file, 1, `${what} is empty`, `Give it a header line: ${needed.join(",")}.`)]);
  const names = header.cells.map((name) => name.trim().toLowerCase());
  const faults: Finding[] = [];
  const twice = names.find((name, place) => name !== "" && names.indexOf(name) !== place);
  if (twice !== undefined) faults.push(csvFinding(code, file, header.line, `the column '${twice}' stands twice`, "Keep one of the two."));
  const missing = needed.filter((name) => !names.includes(name));
  if (missing.length > 0) {
    faults.push(csvFinding(code, file, header.line, `${what} has no column '${missing.join("', '")}'`, `The first line must name the columns ${needed.join(", ")}; it has ${names.join(", ")}.`));
  }
  if (faults.length > 0) throw new ProblemError(faults);
  const rows: NamedRow[] = [];
  for (const { cells, line } of lines) {
    if (cells.length !== names.length) faults.push(csvFinding(code, file, line, `the line has ${cells.length} cells, the header ${names.length}`, "Put cells that hold a comma in double quotes."));
    else rows.push({ line, cells: new Map(names.map((name, place) => [name, plainCell(cells[place]!)])) });
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return rows;
}

/** A number as people write it, with a comma or a per cent sign; null for an empty cell, NaN for what is none. */
export function figure(text: string): number | null {
  const plain = text.replace(",", ".").replace(/\s*%$/, "");
  return plain === "" ? null : Number.isFinite(Number(plain)) ? Number(plain) : NaN;
}

/**
 * What a cell says: without blanks around it, without the apostrophe that keeps a spreadsheet from running a text as a
 * formula (our own tables have it too), and composed (NFC), since some systems write the names of files decomposed.
 */
export function plainCell(cell: string): string {
  return withoutApostrophe(cell.trim()).normalize("NFC");
}

/** Only the apostrophe taken off: for paths, whose bytes must stay as the disk has them. */
export function withoutApostrophe(cell: string): string {
  return /^'[=+\-@\uff1d\uff0b\uff0d\uff20]/.test(cell) ? cell.slice(1) : cell;
}
