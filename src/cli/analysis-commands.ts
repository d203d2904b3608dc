import { InvalidArgumentError, type Command } from "commander";
import type { CutScoreFlags } from "./commands/cutscore.ts";
import type { ItemsFlags } from "./commands/items.ts";
import type { OutputFlags } from "./commands/options.ts";
import type { ProgressFlags } from "./commands/progress.ts";
import { gather, withFormat, withLook, withOut } from "./shared-options.ts";

/** The commands that say how far marks can be trusted, and what a cohort tells. */
export function addAnalysisCommands(program: Command): void {
  withOutput(program.command("agree").description("compare the tool's marks with people's").argument("<marks>", "CSV of people's marks (see below)").argument("<results>", RESULTS))
    .action(async (marks: string, results: string, flags: OutputFlags) => (await import("./commands/analysis.ts")).runAgree(marks, results, flags));

  withOutput(program.command("items").description("item analysis of a cohort, and its reliability").argument("<results>", RESULTS)
    .option("--by <column>", "rates by a column of the plan, side by side; may be repeated", gather)
    .option("--marks <file>", "CSV of people's marks, for error rates (see 'saidwell agree --help')"))
    .action(async (results: string, flags: ItemsFlags) => (await import("./commands/analysis.ts")).runItems(results, flags));

  withOutput(program.command("cutscore").description("cut scores by borderline regression, borderline group and modified Angoff").argument("[scores]", `${RESULTS}; or a CSV of scores (see below)`)
    .option("--ratings <file>", "CSV of people's marks with their overall:global ratings, beside results")
    .option("--borderline <rating>", "the rating that means borderline", parseRating)
    .option("--angoff <file>", "CSV of judgements: judge, item, percent; station where there are several, weight in place of the rubric's")
    .option("--plot <file>", "write scores by rating, line and cut as a picture (SVG)"))
    .action(async (scores: string | undefined, flags: CutScoreFlags) => (await import("./commands/analysis.ts")).runCutScore(scores, flags));

  withOutput(program.command("progress").description("one candidate's attempts: what changed, what keeps being missed, what to practise").argument("<folder>", RESULTS)
    .option("--candidate <name>", "whose attempts, where the results hold several candidates'")
    .option("--cohort <results>", "results of a cohort, for the error of measurement")
    .option("--sem <points>", "standard error of measurement in points of the per cent total", parsePoints))
    .action(async (folder: string, flags: ProgressFlags) => (await import("./commands/analysis.ts")).runProgress(folder, flags));
}

const RESULTS = "folder that 'saidwell cohort' wrote, its results.jsonl, a mark sheet as JSON, or a folder of these";

function withOutput(command: Command): Command {
  return withLook(withOut(withFormat(command)));
}

function parseRating(typed: string): number {
  const rating = Number(typed);
  if (typed.trim() === "" || !Number.isFinite(rating)) throw new InvalidArgumentError("Write a number of the rating scale.");
  return rating;
}

function parsePoints(typed: string): number {
  const points = Number(typed);
  if (typed.trim() === "" || !(points > 0) || points > 100) throw new InvalidArgumentError("Write a number above 0 and up to 100.");
  return points;
}
