import { joinMarks } from "../../cohort/agreement/join.ts";
import { cutScoreReport, type CutScoreInput } from "../../cohort/cutscore/report.ts";
import { placeJudgements, readJudgements, type KnownItems } from "../../cohort/cutscore/judgements.ts";
import { readScores, scoresOf } from "../../cohort/cutscore/scores.ts";
import { itemsReport } from "../../cohort/items/report.ts";
import { readMarks } from "../../cohort/marks.ts";
import type { SheetRecord } from "../../cohort/record.ts";
import { notMeasurable, type Estimate } from "../../cohort/statistics/estimate.ts";
import { cutScoreSvg } from "../../report/cohort/cut-score-svg.ts";
import { cutScoreText } from "../../report/cohort/cut-score.ts";
import { toJson } from "../../report/json.ts";
import { readRecords } from "../analysis/results.ts";
import { readTextFile } from "../analysis/text-file.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem } from "../problems.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import { VERSION } from "../version.ts";
import type { OutputFlags } from "./options.ts";

export interface CutScoreFlags extends OutputFlags {
  ratings?: string;
  borderline?: number;
  angoff?: string;
  plot?: string;
}

/** Cut scores by borderline regression, borderline group and modified Angoff, as far as the data go. */
export async function runCutScore(path: string | undefined, flags: CutScoreFlags): Promise<void> {
  if (path === undefined && flags.angoff === undefined) throw problem("SW-U07", "saidwell cutscore", "there are neither scores nor judgements", "Name results or a CSV of scores, or give --angoff.");
  const given = [path, flags.ratings, flags.angoff].filter((file) => file !== undefined);
  const output = { out: flags.out, force: flags.force, inputs: given };
  checkOutput(output);
  checkOutput({ ...output, out: flags.plot });
  if (flags.plot !== undefined && flags.plot === flags.out) throw problem("SW-U03", "--plot, --out", "both name the same file", "Name two files.");
  const input = path === undefined ? NOTHING : /\.csv$/i.test(path) ? fromTable(path) : fromResults(path, flags, given);
  const judgements = flags.angoff === undefined ? [] : judgementsOf(flags.angoff, input.known);
  const rated = input.scores.some(({ rating }) => rating !== null);
  if (rated && flags.borderline === undefined) throw problem("SW-U07", "saidwell cutscore", "it is not said which rating means borderline", "Add --borderline with the number of your scale, such as --borderline 2.");
  if (!rated && judgements.length === 0) throw problem("SW-A07", path ?? flags.angoff!, "no candidate has a global rating, and there are no judgements that fit", "Give --ratings with people's overall:global marks, a column 'rating' in the table, or --angoff.");
  const report = cutScoreReport({ ...input, borderline: rated ? (flags.borderline ?? null) : null, judgements }, VERSION);
  const look = outputLook(flags);
  if (flags.plot !== undefined) await writeOutput(cutScoreSvg(report), { ...output, out: flags.plot });
  await writeOutput(flags.format === "json" ? toJson(report) : cutScoreText(report, look), output);
}

interface Basis extends Pick<CutScoreInput, "scores" | "weightOf" | "itemsOf" | "errorOfMeasurement"> {
  known: KnownItems;
}

const NOTHING: Basis = { scores: [], weightOf: () => 1, errorOfMeasurement: new Map<string, Estimate>(), known: new Map() };

function judgementsOf(path: string, known: KnownItems) {
  const { judgements, findings } = placeJudgements(readJudgements(readTextFile(path, "the judgements"), path), known, path);
  tell(findings);
  return judgements;
}

function fromTable(path: string): Basis {
  const scores = readScores(readTextFile(path, "the scores"), path);
  return { ...NOTHING, scores, known: new Map(scores.map(({ station }) => [station, null])) };
}

/** @param reads takes the paths of the results' files. */
function fromResults(path: string, { ratings }: CutScoreFlags, reads: string[]): Basis {
  const { records, findings, inputs } = readRecords(path);
  reads.push(...inputs);
  const joined = ratings === undefined ? null : joinMarks(records, readMarks(readTextFile(ratings, "the ratings"), ratings));
  tell([...findings, ...(joined?.findings ?? [])]);
  const known = itemsByStation(records);
  return { scores: scoresOf(records, joined?.records ?? []), weightOf: (station, item) => weightIn(records, station, item), itemsOf: (station) => known.get(station)?.size ?? null, errorOfMeasurement: errors(records), known };
}

function itemsByStation(records: readonly SheetRecord[]): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const { key, items } of records) {
    const own = found.get(key.station) ?? new Set<string>();
    found.set(key.station, own);
    for (const { id } of items) own.add(id);
  }
  return found;
}

function weightIn(records: readonly SheetRecord[], station: string, item: string): number {
  for (const record of records) {
    if (record.key.station !== station) continue;
    const found = record.items.find(({ id }) => id === item);
    if (found !== undefined) return found.weight;
  }
  return 1;
}

/** By station; none where two versions of a rubric were used. */
function errors(records: readonly SheetRecord[]): Map<string, Estimate> {
  const found = new Map<string, Estimate>();
  for (const { station, reliability } of itemsReport(records, VERSION).stations) {
    found.set(station, found.has(station) ? notMeasurable(0, "the station was marked by more than one version of its rubric") : reliability.errorOfMeasurement);
  }
  return found;
}
