import type { FindingCode } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import type { NameReader } from "./names.ts";
import type { Plan, PlanRow } from "./plan.ts";
import { compareResults, type ResultKey } from "./result.ts";
import { identityOf } from "./sheet-names.ts";

/** One rehearsal to be marked, or the reasons why it cannot be. */
export interface Entry {
  key: ResultKey;
  /** Path below the cohort's folder, with forward slashes. */
  file: string;
  columns: Record<string, string>;
  /** As the command line or the plan names it. Null when there are errors. */
  rubric: string | null;
  /** Of the plan: where the station lies, and whose the candidate's label is. */
  from?: string;
  to?: string;
  speaker?: string;
  /** Line of the plan, for messages. */
  line?: number;
  errors: Finding[];
}

export interface CohortSources {
  /** Every transcript in the folder. */
  files: readonly string[];
  /** A file that the plan names as the folder spells it, whatever its ending; null when it is not there. */
  onDisk: (file: string) => string | null;
  names: NameReader;
  /** As typed, for messages. */
  pattern: string;
  plan: Plan | null;
  /** `--rubric NAME`; null when only a map is given. */
  rubric: string | null;
  /** `--rubric STATION=NAME`. */
  stations: ReadonlyMap<string, string>;
  /** The station's name where neither name nor plan gives one: the only station, or the id of the rubric for all. */
  onlyStation: string | null;
  /** Rubrics that lines of the plan name and that cannot be had, with the reason. */
  refused: ReadonlyMap<string, Finding>;
  /** Id of a rubric by the name under which it was asked for. */
  rubricId: (name: string) => string | undefined;
}

export interface CohortList {
  /** Sorted by `compareResults`. */
  entries: Entry[];
  /** Files of the folder that the plan does not name. */
  unplanned: string[];
  /** What is worth a look and stops nothing. */
  warnings: Finding[];
}

/** Puts the folder, the names and the plan together. What is wrong with one file is said of that file and stops no other. */
export function listCohort(sources: CohortSources): CohortList {
  const { plan, files } = sources;
  const rows: (PlanRow | { file: string })[] = plan !== null && plan.rows.length > 0 ? plan.rows.map((row) => ({ ...row, file: sources.onDisk(row.file) ?? row.file })) : files.map((file) => ({ file }));
  const entries = rows.map((row) => entryOf(row, sources));
  refuseTwins(entries);
  // A line that stands twice in the plan is one entry, with its error.
  const unique = [...new Map(entries.map((entry) => [identityOf(entry), entry])).values()].sort(compareResults);
  const planned = new Set(rows.map(({ file }) => file));
  return { entries: unique, unplanned: files.filter((file) => !planned.has(file)), warnings: sharedStretches(unique) };
}

function entryOf(row: PlanRow | { file: string }, sources: CohortSources): Entry {
  const planned = "line" in row ? row : null;
  const named = sources.names(row.file);
  const errors: Finding[] = [];
  const add = (code: FindingCode, message: string, mend: string) => errors.push(error(code, row.file, message, mend));
  const candidate = planned?.candidate ?? named?.key.candidate;
  // A file whose candidate nobody names is of no station either, unless one is named: else it would make one that nobody sat.
  const only = candidate === undefined ? undefined : ((planned?.rubric !== undefined ? sources.rubricId(planned.rubric) : undefined) ?? sources.onlyStation ?? undefined);
  const station = planned?.station ?? named?.key.station ?? only;
  const attempt = planned?.attempt ?? named?.key.attempt ?? "1";
  if (planned !== null && sources.onDisk(row.file) === null) {
    add("SW-T01", `line ${planned.line} of the plan names this file, but it is not in the folder`, "Put the file there, or mend its path in the plan.");
  } else if (candidate === undefined) {
    add("SW-B02", `the file's name does not follow the pattern ${sources.pattern}`, "Rename the file, give another pattern with --names, or name its candidate in a plan.");
  }
  const refused = planned?.rubric === undefined ? undefined : sources.refused.get(planned.rubric);
  if (refused !== undefined) add("SW-R01", `line ${planned!.line} of the plan names the rubric '${planned!.rubric!}': ${refused.message}`, refused.mend ?? "Mend the plan.");
  const rubric = planned?.rubric ?? (station === undefined ? undefined : (sources.plan?.stations.get(station) ?? sources.stations.get(station))) ?? sources.rubric ?? undefined;
  if (errors.length === 0 && (rubric === undefined || station === undefined)) {
    const known = [...new Set([...(sources.plan?.stations.keys() ?? []), ...sources.stations.keys()])];
    add(
      "SW-B04",
      station === undefined ? "neither the file's name nor the plan says which station it is" : `no rubric is named for the station '${station}'`,
      `${known.length > 0 ? `Stations with a rubric: ${known.join(", ")}. ` : ""}Add --rubric ${station ?? "STATION"}=NAME, or the columns station and rubric to the plan.`,
    );
  }
  return {
    key: { candidate: candidate ?? "", station: station ?? "", attempt },
    file: row.file,
    columns: { ...named?.columns, ...planned?.columns },
    rubric: errors.length > 0 ? null : rubric!,
    ...(planned?.from !== undefined && { from: planned.from }),
    ...(planned?.to !== undefined && { to: planned.to }),
    ...(planned?.speaker !== undefined && { speaker: planned.speaker }),
    ...(planned !== null && { line: planned.line }),
    errors,
  };
}

/** Two transcripts of one attempt: nobody but a person can say which one counts, so neither is marked. */
function refuseTwins(entries: Entry[]): void {
  const byKey = new Map<string, Entry[]>();
  for (const entry of entries) {
    if (entry.key.candidate === "") continue;
    const name = JSON.stringify([entry.key.candidate, entry.key.station, entry.key.attempt]);
    byKey.set(name, [...(byKey.get(name) ?? []), entry]);
  }
  for (const twins of byKey.values()) {
    if (twins.length < 2) continue;
    for (const entry of twins) {
      const { candidate, station, attempt } = entry.key;
      const others = [...new Set(twins.filter((other) => other !== entry).map(({ file }) => file))];
      const same = twins.filter(({ file }) => file === entry.file).map(({ line }) => line);
      if (same.length > 1) others.splice(0, others.length, `on lines ${same.join(", ")} of the plan`);
      const more = others.length > 3 ? ` and ${others.length - 3} more` : "";
      entry.rubric = null;
      entry.errors.push(
        error("SW-B05", entry.file, `candidate '${candidate}', station '${station}', attempt '${attempt}' is also ${others.slice(0, 3).join(", ")}${more}`, "Number the attempts in the names or in the plan, or take out the transcripts that do not count."),
      );
    }
  }
}

/** The same stretch of one transcript under two candidates: one of the lines is most likely a slip, and both would count in every figure. */
function sharedStretches(entries: readonly Entry[]): Finding[] {
  const found = new Map<string, Entry[]>();
  for (const entry of entries) {
    if (entry.errors.length > 0) continue;
    const stretch = JSON.stringify([entry.file, entry.from, entry.to, entry.speaker]);
    found.set(stretch, [...(found.get(stretch) ?? []), entry]);
  }
  return [...found.values()].filter((own) => new Set(own.map(({ key }) => key.candidate)).size > 1).map((own): Finding => ({
    code: "SW-B14",
    severity: "warning",
    file: own[0]!.file,
    message: `the plan has this transcript marked for ${own.map(({ key, line }) => `'${key.candidate}' (line ${line ?? "?"})`).join(" and ")}, and all of them count`,
    mend: "Mend the line that is wrong, or say with from, to or speaker which part is whose.",
  }));
}

function error(code: FindingCode, file: string, message: string, mend: string): Finding {
  return { code, severity: "error", file, message, mend };
}
