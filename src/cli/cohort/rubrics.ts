import { existsSync, readFileSync } from "node:fs";
import { dirname, isAbsolute, join } from "node:path";
import { readPlan, type Plan } from "../../cohort/plan.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import type { Rubric } from "../../rubric/schema.ts";
import { problem, systemReason } from "../problems.ts";
import { findRubric } from "../rubric-source.ts";
import { shippedRubrics } from "../shipped.ts";

/** A plan of a million rehearsals is some 100 MB. */
const MAX_PLAN_BYTES = 512 * 1024 * 1024;

export interface NamedRubrics {
  /** `--rubric NAME`, for every station that nothing else names. */
  single: string | null;
  /** `--rubric STATION=NAME`. */
  stations: Map<string, string>;
}

/** @throws ProblemError SW-U03 when two say different things. */
export function parseRubricFlags(typed: readonly string[]): NamedRubrics {
  const named: NamedRubrics = { single: null, stations: new Map() };
  const shipped = new Set(shippedRubrics().map(({ name }) => name));
  for (const text of typed) {
    const equals = text.indexOf("=");
    const whole = equals <= 0 || shipped.has(text) || existsSync(text);
    const [station, rubric] = whole ? [null, text] : [text.slice(0, equals).trim().normalize("NFC"), text.slice(equals + 1).trim()];
    const before = station === null ? named.single : named.stations.get(station);
    if (before !== null && before !== undefined && before !== rubric) {
      throw problem("SW-U03", `--rubric ${text}`, `${station === null ? "two rubrics are named for all stations" : `the station '${station}' has a rubric already`}: ${before} and ${rubric}`, "Name the station of each: --rubric STATION=NAME.");
    }
    if (station === null) named.single = rubric;
    else named.stations.set(station, rubric);
  }
  return named;
}

/**
 * Reads a plan. Its rubrics are shipped ones by name, or files whose path starts from the plan's folder.
 * @throws ProblemError SW-B01
 */
export function planFromFile(path: string): Plan {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw problem("SW-B01", path, `the plan cannot be read: ${systemReason(error)}`, "Give the path of a CSV file.");
  }
  if (bytes.length > MAX_PLAN_BYTES) throw problem("SW-B01", path, "the plan is larger than 512 MB", "Divide it.");
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw problem("SW-B01", path, "the plan is not UTF-8 text", "Save it as 'CSV UTF-8'.");
  }
  const plan = readPlan(text, path);
  const from = (name: string) => fromPlan(name, path);
  for (const row of plan.rows) if (row.rubric !== undefined) row.rubric = from(row.rubric);
  for (const [station, name] of plan.stations) plan.stations.set(station, from(name));
  return plan;
}

function fromPlan(name: string, plan: string): string {
  if (isAbsolute(name) || shippedRubrics().some((shipped) => shipped.name === name)) return name;
  const beside = join(dirname(plan), name);
  // A leading './' keeps a file's name from being taken for a shipped rubric's.
  return existsSync(beside) && !isAbsolute(beside) ? `./${beside}` : beside;
}

/**
 * Rubrics of a plan. One that a line about a file names and that is not there is a fault of that line; one that a line
 * about a station names would leave the whole station unmarked, so it is told before anything is marked.
 * @throws ProblemError SW-R01 with the plan's line, and those of rubrics that are there and cannot be used
 */
export async function loadPlanRubrics(plan: Plan): Promise<{ rubrics: Map<string, Rubric>; refused: Map<string, Finding> }> {
  const [rubrics, refused] = [new Map<string, Rubric>(), new Map<string, Finding>()];
  const lines = new Map([...plan.stations].map(([station, name]) => [name, plan.stationLines.get(station)!]));
  for (const name of [...new Set([...lines.keys(), ...plan.rows.flatMap(({ rubric }) => rubric ?? [])])].sort()) {
    try {
      rubrics.set(name, await findRubric(name));
    } catch (error) {
      const finding = error instanceof ProblemError ? error.findings.find(({ code }) => code === "SW-R01") : undefined;
      if (finding === undefined) throw error;
      const line = lines.get(name);
      if (line !== undefined) throw new ProblemError([{ ...finding, file: plan.file, line, message: `the rubric '${name}' cannot be had: ${finding.message}` }]);
      refused.set(name, finding);
    }
  }
  return { rubrics, refused };
}

/** Every rubric once, checked before anything is marked. @throws ProblemError of the first that cannot be used. */
export async function loadRubrics(names: Iterable<string>): Promise<Map<string, Rubric>> {
  const rubrics = new Map<string, Rubric>();
  for (const name of [...new Set(names)].sort()) rubrics.set(name, await findRubric(name));
  return rubrics;
}
