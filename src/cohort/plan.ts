import { ProblemError, type Finding } from "../problem/problem.ts";
import { csvFinding, parseCsv, plainCell, withoutApostrophe } from "./csv.ts";

/** A line of the plan. What a column leaves empty is absent and is taken from the file's name, if it says it. */
export interface PlanRow {
  /** Of the plan, 1-based. */
  line: number;
  /** Path below the cohort's folder, with forward slashes. */
  file: string;
  candidate?: string;
  station?: string;
  attempt?: string;
  /** A shipped rubric's name or a path, as written. */
  rubric?: string;
  /** Where the station lies in a longer recording; a time as on the command line. */
  from?: string;
  to?: string;
  /** The candidate's speaker label. */
  speaker?: string;
  /** All other columns, as written. */
  columns: Record<string, string>;
}

export interface Plan {
  file: string;
  rows: PlanRow[];
  /** Rubric by station, from lines that name no file. */
  stations: Map<string, string>;
  /** Line by station, for messages. */
  stationLines: Map<string, number>;
}

const KNOWN = ["file", "candidate", "station", "attempt", "rubric", "from", "to", "speaker"] as const;
type Known = (typeof KNOWN)[number];
const PATHS: ReadonlySet<string> = new Set<Known>(["file", "rubric"]);

/**
 * Reads a plan: CSV with a header line (RFC 4180; comma, semicolon or tab). A line with a `file` says what that file is;
 * a line without one, but with `station` and `rubric`, says which rubric marks the station.
 * @throws ProblemError SW-B01 with every fault, file and line.
 */
export function readPlan(text: string, file: string): Plan {
  const findings: Finding[] = [];
  const fault = (line: number, message: string, mend: string) => findings.push(csvFinding("SW-B01", file, line, message, mend));
  const records = parseCsv(text, file, "SW-B01", "the plan");
  const [header, ...lines] = records;
  if (header === undefined) throw new ProblemError([csvFinding("SW-B01", file, 1, "the plan is empty", "Give it a header line: file,candidate,station,attempt,rubric.")]);
  const names = header.cells.map(plainCell).map((name) => ((KNOWN as readonly string[]).includes(name.toLowerCase()) ? name.toLowerCase() : name));
  names.forEach((name, place) => {
    if (name === "") fault(header.line, `column ${place + 1} has no name`, "Give every column a name in the header line.");
    else if (names.indexOf(name) !== place) fault(header.line, `the column '${name}' stands twice`, "Keep one of the two.");
  });
  if (!names.includes("file") && !(names.includes("station") && names.includes("rubric"))) {
    fault(header.line, "there is neither a column 'file' nor the columns 'station' and 'rubric'", `The first line must name the columns, such as file,candidate,station,attempt,rubric; it has ${names.join(", ")}.`);
  }
  const plan: Plan = { file, rows: [], stations: new Map(), stationLines: new Map() };
  for (const { cells: record, line } of findings.length > 0 ? [] : lines) {
    if (record.length !== names.length) {
      fault(line, `the line has ${record.length} cells, the header ${names.length}`, "Put cells that hold a comma in double quotes.");
      continue;
    }
    const cells = new Map(names.map((name, place) => [name, PATHS.has(name) ? withoutApostrophe(record[place]!.trim()) : plainCell(record[place]!)]));
    addLine(plan, cells, line, fault);
  }
  if (findings.length > 0) throw new ProblemError(findings);
  return plan;
}

type Fault = (line: number, message: string, mend: string) => void;

function addLine(plan: Plan, cells: ReadonlyMap<string, string>, line: number, fault: Fault): void {
  const value = (name: Known) => cells.get(name) || undefined;
  const file = value("file")?.replaceAll("\\", "/").replace(/^(\.\/)+/, "");
  if (file === undefined) {
    const [station, rubric] = [value("station"), value("rubric")];
    if (station === undefined || rubric === undefined) return fault(line, "the line names no file", "Name the file, or a station and its rubric.");
    const before = plan.stations.get(station);
    if (before !== undefined && before !== rubric) return fault(line, `the station '${station}' has a rubric already, '${before}'`, "Keep one of the two lines.");
    plan.stations.set(station, rubric);
    if (before === undefined) plan.stationLines.set(station, line);
    return;
  }
  if (file.startsWith("/") || /^[a-z]:/i.test(file) || file.split("/").includes("..")) {
    return fault(line, `the file '${file}' lies outside the cohort's folder`, "Name files by their path below the folder.");
  }
  const row: PlanRow = { line, file, columns: {} };
  for (const name of KNOWN) {
    const cell = value(name);
    if (cell !== undefined && name !== "file") row[name] = cell;
  }
  // Every row has every column, so that the tables have them too.
  for (const [name, cell] of cells) if (!(KNOWN as readonly string[]).includes(name)) row.columns[name] = cell;
  plan.rows.push(row);
}
