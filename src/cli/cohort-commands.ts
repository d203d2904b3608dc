import { InvalidArgumentError, type Command } from "commander";
import { parseShard, type Shard } from "../cohort/shard.ts";
import type { CohortFlags } from "./commands/cohort.ts";
import type { MergeFlags } from "./commands/merge.ts";
import { parseLength } from "./duration.ts";
import { gather, withLook } from "./shared-options.ts";

/** More threads than any machine has processors. */
const MOST_WORKERS = 1024;

/** The commands for whole cohorts. */
export function addCohortCommands(program: Command): void {
  withLook(program.command("cohort").description("mark every transcript of a folder: mark sheets, gradebook, tables, summary").argument("<folder>", "folder with the transcripts"))
    .requiredOption("-o, --out <folder>", "folder for the results: new, empty, or of an earlier run, which then goes on")
    .option("-r, --rubric <name-or-file>", "rubric for all stations, or STATION=NAME_OR_FILE; may be repeated", gather)
    .option("--plan <file>", "CSV that says what each file is (see below)")
    .option("--names <pattern>", "how file names are made, such as '{candidate}_{station}_{attempt}'")
    .option("--workers <count>", "files marked at the same time; without it, one a processor", parseWorkers)
    .option("--shard <part>", "mark only part I of N, written I/N; 'saidwell merge' puts the parts together", parsePart)
    .option("--limit <time>", "time limit, in place of the rubrics'", parseLength)
    .option("--target <time>", "target time, in place of the rubrics'", parseLength)
    .option("--corrections <folder>", "folder with the corrections files of single rehearsals: marks that a person overruled")
    .option("--json", "write each sheet as JSON as well")
    .action(async (folder: string, flags: CohortFlags) => (await import("./commands/batch.ts")).runCohort(folder, flags));

  withLook(program.command("merge").description("put the parts of a cohort together").argument("<folders...>", "the folders that 'saidwell cohort --shard' wrote"))
    .requiredOption("-o, --out <folder>", "folder for the whole: new, empty, or of an earlier run")
    .option("--json", "write each sheet as JSON as well")
    .action(async (folders: string[], flags: MergeFlags) => (await import("./commands/batch.ts")).runMerge(folders, flags));
}

function parseWorkers(typed: string): number {
  const count = Number(typed);
  if (!/^\d+$/.test(typed) || count < 1 || count > MOST_WORKERS) throw new InvalidArgumentError(`Write a whole number from 1 to ${MOST_WORKERS}.`);
  return count;
}

function parsePart(typed: string): Shard {
  try {
    return parseShard(typed);
  } catch (error) {
    throw new InvalidArgumentError((error as Error).message);
  }
}
