import { mkdirSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { correctionsByEntry } from "../../cohort/corrected-entries.ts";
import { listCohort, type CohortList, type Entry } from "../../cohort/entries.ts";
import { DEFAULT_PATTERN, nameReader, type NameReader } from "../../cohort/names.ts";
import { RESULT_FORM, type FailedResult } from "../../cohort/result.ts";
import { inShard, type Shard } from "../../cohort/shard.ts";
import { identityOf, sheetNames } from "../../cohort/sheet-names.ts";
import { packedRubric } from "../../mark.ts";
import { EXIT } from "../../problem/catalogue.ts";
import type { Finding } from "../../problem/problem.ts";
import { number, plural } from "../../report/figures.ts";
import { toJsonLine } from "../../report/json.ts";
import { markingBasis, type MarkingBasis } from "../../cohort/marking-basis.ts";
import type { Rubric } from "../../rubric/schema.ts";
import type { Corrections } from "../../scoring/corrections.ts";
import { checkSameCohort, dropForeign } from "../cohort/earlier-results.ts";
import { finish, SHEETS, type Finished } from "../cohort/finish.ts";
import { listFolder, type CohortFolder } from "../cohort/folder.ts";
import { onInterrupt, SIGNAL_EXIT } from "../cohort/interrupt.ts";
import { jobOf, type Job } from "../cohort/jobs.ts";
import type { LineAppender } from "../cohort/lines.ts";
import { lockFolder } from "../cohort/lock.ts";
import { claimFolder, writeManifest, type Manifest } from "../cohort/manifest.ts";
import { inLanes, MarkingPool, programHash } from "../cohort/pool.ts";
import { showProgress } from "../cohort/progress.ts";
import { loadPlanRubrics, loadRubrics, parseRubricFlags, planFromFile } from "../cohort/rubrics.ts";
import { showSummary } from "../cohort/show-summary.ts";
import { basisOf, JOURNAL, openJournal, RESULTS, ResultStore } from "../cohort/store.ts";
import type { Task } from "../cohort/task.ts";
import { problem } from "../problems.ts";
import { shippedRubrics } from "../shipped.ts";
import { tell, warn } from "../tell.ts";
import { VERSION } from "../version.ts";
import { timeOptions } from "./mark.ts";
import type { OutputFlags } from "./options.ts";

export interface CohortFlags extends Pick<OutputFlags, "width" | "colour"> {
  out: string;
  rubric?: string[];
  plan?: string;
  names?: string;
  workers?: number;
  shard?: Shard;
  limit?: number;
  target?: number;
  corrections?: string;
  json?: boolean;
}

/** Marks every transcript of a folder. What is wrong with the command line, the plan or a rubric is said before anything is marked. */
export async function runCohort(folder: string, flags: CohortFlags): Promise<void> {
  const named = parseRubricFlags(flags.rubric ?? []);
  const names = readerOf(flags.names ?? DEFAULT_PATTERN);
  const plan = flags.plan === undefined ? null : planFromFile(flags.plan);
  if (named.single === null && named.stations.size === 0 && !(plan !== null && (plan.stations.size > 0 || plan.rows.some(({ rubric }) => rubric !== undefined)))) throw noRubric();
  const typed = await loadRubrics([...(named.single === null ? [] : [named.single]), ...named.stations.values()]);
  const { rubrics: planned, refused } = plan === null ? { rubrics: new Map<string, Rubric>(), refused: new Map<string, Finding>() } : await loadPlanRubrics(plan);
  const rubrics = new Map([...typed, ...planned]);
  for (const rubric of rubrics.values()) timeOptions(flags, rubric);
  const there = listFolder(folder, flags.out);
  const stations = new Set([...named.stations.keys(), ...(plan?.stations.keys() ?? [])]);
  const onlyStation = named.single !== null ? rubrics.get(named.single)!.id : stations.size === 1 ? [...stations][0]! : null;
  const list = listCohort({ rubricId: (name) => rubrics.get(name)?.id, files: there.files, onDisk: there.onDisk, refused, names, pattern: flags.names ?? DEFAULT_PATTERN, plan, rubric: named.single, stations: named.stations, onlyStation });
  if (list.entries.length === 0) throw problem("SW-B12", folder, "there is no transcript in this folder", "Transcripts end in .txt, .vtt, .srt, .TextGrid or .json.");
  const corrections = await correctionsFor(list.entries, flags.corrections, ({ rubric }) => (rubric === null ? undefined : rubrics.get(rubric)?.id));
  tellPassedOver(folder, there, list);

  const earlier = claimFolder(flags.out, { version: VERSION, shard: flags.shard ?? null });
  const unlock = lockFolder(flags.out);
  const store = new ResultStore();
  try {
    const marking = markingBasis(programHash(), flags, corrections.hash, [
      ...[...(named.single === null ? [] : [named.single]), ...(plan?.rows.flatMap(({ rubric }) => rubric ?? []) ?? [])].flatMap((name) => rubricOf("", rubrics.get(name))),
      ...[...named.stations, ...(plan?.stations ?? [])].flatMap(([station, name]) => rubricOf(station, rubrics.get(name))),
    ]);
    await markAll({ folder, flags, list, rubrics, corrections: corrections.byEntry, store, earlier, marking });
  } finally {
    store.close();
    unlock();
  }
}

/** None for one that a line of the plan names and that is not there. */
function rubricOf(station: string, rubric: Rubric | undefined) {
  return rubric === undefined ? [] : [{ station, rubric }];
}

interface Run {
  folder: string;
  flags: CohortFlags;
  list: CohortList;
  rubrics: ReadonlyMap<string, Rubric>;
  /** By identity of the entry. */
  corrections: ReadonlyMap<string, Corrections>;
  store: ResultStore;
  earlier: Manifest | null;
  marking: MarkingBasis;
}

async function markAll({ folder, flags, list, rubrics, corrections, store, earlier, marking }: Run): Promise<void> {
  const { out } = flags;
  const shard = flags.shard ?? null;
  const jobs = list.entries.filter(({ file }) => shard === null || inShard(file, shard)).map((entry) => jobOf(entry, flags, corrections.get(identityOf(entry))));
  store.load(out, RESULTS);
  store.load(out, JOURNAL);
  checkSameCohort(store, jobs, shard, earlier, out);
  dropForeign(store, jobs, out);
  for (const [path, count] of store.broken) warn("SW-B08", path, `${plural(count, "line")} cannot be read, as after a run that was killed while it wrote: done anew`);
  writeManifest(out, { version: VERSION, shard, complete: false, results: 0, failed: 0 });

  const setUp = { rubrics: [...rubrics.values()].map((rubric) => ({ rubric, packed: packedRubric(rubric) })), version: VERSION, program: programHash(), json: flags.json === true };
  const places = new Map([...rubrics.keys()].map((name, place) => [name, place]));
  const sheetName = sheetNames(list.entries);
  const columns = new Map<string, string>();
  mkdirSync(join(out, SHEETS), { recursive: true });
  const journal = openJournal(out);
  const workers = Math.min(flags.workers ?? availableParallelism(), Math.max(1, jobs.length));
  const pool = new MarkingPool(workers, setUp);
  const interrupted = onInterrupt();
  const progress = showProgress(jobs.length, process.stderr);
  const started = Date.now();
  const counts = { kept: 0, marked: 0, failed: 0 };
  const step = (outcome: { kept: boolean; failed: boolean }) => {
    counts.kept += Number(outcome.kept && !outcome.failed);
    counts.failed += Number(outcome.failed);
    counts.marked += Number(!outcome.kept && !outcome.failed);
    progress.step(outcome);
  };
  const work = async (job: Job) => {
    const { entry } = job;
    const rubric = entry.rubric === null ? null : rubrics.get(entry.rubric)!;
    const hashes = { rubric: rubric?.hash ?? null, options: job.optionsHash, program: setUp.program };
    const head = { form: RESULT_FORM, key: entry.key, file: entry.file, version: VERSION, columns: entry.columns } as const;
    const record = (line: string, transcript: string | null, outcome: { marked: boolean; again: boolean }) => {
      const place = journal.append(line);
      store.note({ ...head, hashes: { transcript, ...hashes } }, { fd: journal.fd, folder: out, ...place }, outcome);
      step({ kept: false, failed: !outcome.marked });
    };
    const refuse = (errors: Finding[]) =>
      record(toJsonLine({ form: head.form, key: head.key, file: head.file, hashes: { transcript: null, ...hashes }, version: head.version, columns: head.columns, sheet: null, errors } satisfies FailedResult), null, { marked: false, again: true });
    if (entry.rubric === null || entry.errors.length > 0) return refuse(entry.errors);
    const before = store.index.get(identityOf(entry));
    const holds = before !== undefined && !before.again && before.basis === basisOf(hashes);
    const task: Task = { path: join(folder, entry.file), file: entry.file, key: entry.key, columns: entry.columns, rubric: places.get(entry.rubric)!, options: job.options, optionsHash: job.optionsHash, sheet: join(out, SHEETS, sheetName(entry)), known: holds ? before.transcript : null };
    try {
      const done = await pool.run(task);
      if (!done.kept) return record(done.line, done.transcript, done);
      columns.set(identityOf(entry), JSON.stringify(entry.columns));
      step({ kept: true, failed: !before!.marked });
    } catch (error) {
      refuse([workerFailed(entry.file, error)]);
    }
  };
  try {
    // One a worker: a task never waits in the pool, so that its time limit is its own, and only so many are ever held.
    await inLanes(jobs, workers, work, () => interrupted.signal !== null);
  } finally {
    progress.stop();
    interrupted.forget();
    await pool.close();
    journal.sync();
  }
  if (interrupted.signal !== null) return stopEarly(interrupted.signal, counts, jobs.length, journal);
  const seconds = (Date.now() - started) / 1000;
  const finished = finish(store, { folder: out, version: VERSION, shard, json: setUp.json, marking, sheetName, unplanned: list.unplanned, columns });
  journal.close();
  await tellEnd(finished, counts, seconds, flags);
}

/** Corrections are read and brought to their rehearsals before anything is marked. @throws ProblemError SW-M01, SW-M04 */
async function correctionsFor(entries: readonly Entry[], folder: string | undefined, rubricOf: (entry: Entry) => string | undefined): Promise<{ byEntry: Map<string, Corrections>; hash: string | null }> {
  if (folder === undefined) return { byEntry: new Map(), hash: null };
  const { correctionsOfFolder, correctionsHash } = await import("../cohort/corrections.ts");
  const all = correctionsOfFolder(folder);
  return { byEntry: correctionsByEntry(all, entries, folder.replace(/[/\\]+$/, ""), rubricOf), hash: correctionsHash(all) };
}

function readerOf(pattern: string): NameReader {
  try {
    return nameReader(pattern);
  } catch (error) {
    throw problem("SW-U01", `--names ${pattern}`, `the pattern cannot be used: ${(error as Error).message}`, `Write it like '{candidate}_{station}_{attempt}'. Without --names it is '${DEFAULT_PATTERN}'.`);
  }
}

function noRubric() {
  const names = shippedRubrics().map(({ name }) => name);
  return problem("SW-U02", "saidwell cohort", "no rubric was named", `Add --rubric NAME, --rubric STATION=NAME, or a plan with a column 'rubric'. Shipped rubrics: ${names.join(", ")}.`);
}

function tellPassedOver(folder: string, { others, repeated }: CohortFolder, { unplanned, warnings }: CohortList): void {
  tell(warnings);
  if (unplanned.length > 0) warn("SW-B03", folder, `${plural(unplanned.length, "transcript")} not named by the plan ${unplanned.length === 1 ? "is" : "are"} passed over: ${unplanned.slice(0, 3).join(", ")}${unplanned.length > 3 ? ", ..." : ""}`);
  if (repeated.length > 0) warn("SW-B03", folder, `links to folders that are in the cohort already are passed over: ${repeated.slice(0, 3).join(", ")}${repeated.length > 3 ? ", ..." : ""}`);
  if (others.size === 0) return;
  const kinds = [...others].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ending, count]) => `${count} ${ending}`);
  warn("SW-B03", folder, `files that are no transcripts by their ending are passed over: ${kinds.join(", ")}`);
}

function workerFailed(file: string, error: unknown): Finding {
  const hung = (error as Error).name === "AbortError" || (error as Error).name === "TimeoutError";
  return {
    code: "SW-B06",
    severity: "error",
    file,
    message: hung ? "marking this file took longer than five minutes and was ended" : `the program failed on this file: ${error instanceof Error ? error.message : String(error)}`,
    mend: "The other files are marked. Run the command again to try once more; if it fails again, please report it.",
  };
}

function stopEarly(signal: NodeJS.Signals, counts: { kept: number; marked: number; failed: number }, total: number, journal: LineAppender): void {
  journal.close();
  process.stderr.write(`saidwell cohort: stopped with ${counts.kept + counts.marked + counts.failed} of ${total} done. The same command goes on from here.\n`);
  process.exitCode = SIGNAL_EXIT[signal] ?? EXIT.internal;
}

async function tellEnd({ summary, leftOver }: Finished, counts: { kept: number; marked: number; failed: number }, seconds: number, flags: CohortFlags): Promise<void> {
  const fresh = counts.marked + counts.failed;
  process.stderr.write(`saidwell cohort: marked ${counts.marked}, kept ${counts.kept}, failed ${counts.failed}${fresh > 0 && seconds > 0 ? `; ${number(fresh / seconds)} a second` : ""}\n`);
  if (leftOver > 0) warn("SW-B09", flags.out, `${plural(leftOver, "sheet")} of no present result moved to sheets-left-over`);
  await showSummary(summary, flags.out, flags);
}
