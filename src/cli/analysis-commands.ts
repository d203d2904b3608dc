import { Option, type Command } from "commander";
import type { OutputFlags } from "./commands/options.ts";
import { parseWidth } from "./terminal.ts";

/** The commands that say how far marks can be trusted, and what a cohort tells. */
export function addAnalysisCommands(program: Command): void {
  withOutput(program.command("agree").description("compare the tool's marks with people's").argument("<marks>", "CSV of people's marks (see below)").argument("<results>", RESULTS))
    .action(async (marks: string, results: string, flags: OutputFlags) => (await import("./commands/analysis.ts")).runAgree(marks, results, flags));
}

const RESULTS = "folder that 'saidwell cohort' wrote, its results.jsonl, a mark sheet as JSON, or a folder of these";

function withOutput(command: Command): Command {
  return command
    .addOption(new Option("-f, --format <form>", "form of the output").choices(["text", "json"]).default("text"))
    .option("-o, --out <file>", "write to a file instead of the terminal")
    .option("--force", "let --out replace a file that exists")
    .option("--width <columns>", "width of the text, 60 to 200", parseWidth)
    .addOption(new Option("--color, --colour <when>", "colour in the text").choices(["auto", "always", "never"]).default("auto"));
}
