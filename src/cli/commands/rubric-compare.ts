import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { EXIT } from "../../problem/catalogue.ts";
import { ProblemError } from "../../problem/problem.ts";
import { plural } from "../../report/figures.ts";
import { renderComparison } from "../../report/rubric/compare.ts";
import { RubricComparer, type CandidateChange, type RubricComparison } from "../../review/compare.ts";
import type { Rubric } from "../../rubric/schema.ts";
import { MAX_BYTES } from "../../transcript/limits.ts";
import { readTranscript } from "../../transcript/read.ts";
import { listFolder } from "../cohort/folder.ts";
import { looksLikeRevision, rubricFromRevision } from "../git-rubric.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { problem, systemReason } from "../problems.ts";
import { findRubric } from "../rubric-source.ts";
import { shippedRubrics } from "../shipped.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import type { CompareFlags } from "./rubric-compare-flags.ts";

/** Marks every transcript of a folder with both versions and says what changes. */
export async function runRubricCompare(old: string, fresh: string, flags: CompareFlags): Promise<void> {
  if (flags.on === undefined) throw problem("SW-U01", "saidwell rubric compare", "no transcripts were named", "Add --on with a folder of transcripts, or one transcript.");
  const transcripts = transcriptsOf(flags.on);
  const output = { out: flags.out, force: flags.force, inputs: [old, fresh, ...transcripts.map(({ path }) => path)] };
  checkOutput(output);
  const comparer = new RubricComparer(await versionOf(old, output.inputs), await versionOf(fresh, output.inputs));
  // Blocks and responses files are known only now.
  checkOutput(output);
  const changed: CandidateChange[] = [];
  const failed: RubricComparison["failed"] = [];
  for (const { path, file } of transcripts) {
    try {
      const change = comparer.compare(readTranscript(bytesOf(path), { file }));
      if (change !== null) changed.push(change);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      for (const finding of error.findings.slice(0, 1)) {
        failed.push({ file, code: finding.code, message: finding.message });
        tell([{ ...finding, file }]);
      }
    }
  }
  const look = outputLook(flags);
  const report = comparer.report(transcripts.length, changed, failed);
  // What could not be marked cannot be vouched for: it goes before a change that was found.
  if (failed.length > 0) process.exitCode = EXIT.cohortFiles;
  else if (flags.failOnChange === true && changed.length > 0) process.exitCode = EXIT.requirementNotMet;
  await writeOutput(renderComparison(report, { format: flags.format, ...look }), output);
  if (flags.failOnChange === true && changed.length > 0) {
    tell([{ code: "SW-C18", severity: "error", file: "--fail-on-change", message: `marks of ${plural(changed.length, "transcript")} change`, mend: "Look at each change; where it is meant, say so in the rubric's history and raise its version." }]);
  }
}

/** A shipped name or a file goes before a revision that is written the same way. */
async function versionOf(text: string, reads: string[]): Promise<Rubric> {
  const known = existsSync(text) || shippedRubrics().some(({ name }) => name === text);
  return !known && looksLikeRevision(text) ? rubricFromRevision(text) : findRubric(text, reads, text);
}

/** The transcripts of a folder and below, or the one file. */
function transcriptsOf(on: string): { path: string; file: string }[] {
  let single: boolean;
  try {
    single = statSync(on).isFile();
  } catch (error) {
    throw problem("SW-B12", on, `the folder cannot be read: ${systemReason(error)}`, "Give the path of a folder with transcripts.");
  }
  if (single) return [{ path: on, file: basename(on) }];
  const { files } = listFolder(on, dirname(resolve(on)));
  if (files.length === 0) throw problem("SW-B12", on, "there is no transcript in the folder", "Transcripts end in .txt, .vtt, .srt, .TextGrid or .json.");
  return files.map((file) => ({ path: join(on, file), file }));
}

function bytesOf(path: string): Uint8Array {
  try {
    // The reader refuses what is too large; a file far beyond that is not even read.
    if (statSync(path).size > MAX_BYTES) throw problem("SW-T07", path, `the file is larger than ${MAX_BYTES / 1024 / 1024} MB`);
    return readFileSync(path);
  } catch (error) {
    if (error instanceof ProblemError) throw error;
    throw problem("SW-T01", path, `the transcript cannot be read: ${systemReason(error)}`);
  }
}
