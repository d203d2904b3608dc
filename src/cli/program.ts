import { existsSync } from "node:fs";
import { Argument, Command } from "commander";
import { Chalk } from "chalk";
import { addAnalysisCommands } from "./analysis-commands.ts";
import { addCohortCommands } from "./cohort-commands.ts";
import { clean } from "../report/clean.ts";
import { commandPath, commandsWithin } from "./command-path.ts";
import { parseLength, parseTime } from "./duration.ts";
import { helpAfter } from "./help.ts";
import { gather, withFormat, withLook, withOut } from "./shared-options.ts";
import { appearance } from "./terminal.ts";
import { VERSION } from "./version.ts";
import type { ExplainFlags } from "./commands/explain.ts";
import type { LabelFlags } from "./commands/label.ts";
import type { MarkFlags } from "./commands/mark.ts";
import { addRubricCommands } from "./commands/rubric.ts";

/** Long lines of help are tiring; commander would use the whole terminal. */
const WIDEST_HELP = 100;
/** Commander would not wrap a column narrower than 40, and run over the edge of a terminal of 60. */
const NARROWEST_HELP = 20;

export const SHELLS = ["bash", "zsh", "fish"] as const;
export type Shell = (typeof SHELLS)[number];

/**
 * The commands and their options: read by commander, printed as help, and walked by the completion scripts.
 * Each command's own code is loaded only when it runs.
 */
export function buildProgram(): Command {
  const program = new Command("saidwell");
  const bold = new Chalk({ level: 1 }).bold;
  program
    .description("Marks the transcript of a medicine-counselling rehearsal against a rubric.")
    .version(VERSION, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand("help [command]", "print the help of a command")
    .configureHelp({ styleTitle: (title) => bold(title), minWidthToWrap: NARROWEST_HELP })
    .configureOutput({ getOutHelpWidth: () => helpWidth(process.stdout), getErrHelpWidth: () => helpWidth(process.stderr) })
    .exitOverride();

  withLook(withOutput(withStation(program.command("mark").description("mark one transcript and print the mark sheet").argument("<transcript>", "file of the transcript, or - for standard input")
    .option("-r, --rubric <name-or-file>", "what to mark against: a shipped rubric's name, or a rubric file (needed)")))
    .option("--limit <time>", "time limit, in place of the rubric's", parseLength)
    .option("--target <time>", "target time, in place of the rubric's", parseLength)
    .option("--corrections <file>", "marks that a person overruled, see the README; totals and result follow them")
    .option("--require <list>", "what must hold for exit code 0; a comma list, may be repeated (see below)", gather))
    .action(async (file: string, flags: MarkFlags) => (await import("./commands/station.ts")).runMark(file, flags));

  withOutput(withStation(program.command("label").description("write the transcript with roles and times, to be corrected and marked again").argument("<transcript>", "file of the transcript, or - for standard input")))
    .action(async (file: string, flags: LabelFlags) => (await import("./commands/station.ts")).runLabel(file, flags));

  withLook(withOutput(withStation(program.command("explain").description("show how one item of the rubric was decided").argument("<transcript>", "file of the transcript, or - for standard input")
    .option("-r, --rubric <name-or-file>", "the rubric that the transcript is marked against (needed)")
    .option("-i, --item <id>", "id of the item (needed)"))))
    .action(async (file: string, flags: ExplainFlags) => (await import("./commands/station.ts")).runExplain(file, flags));

  withLook(withFormat(program.command("rubrics").description("list the shipped rubrics")))
    .action(async (flags: MarkFlags) => (await import("./commands/lists.ts")).runRubrics(flags));

  addRubricCommands(program);
  addCohortCommands(program);
  addAnalysisCommands(program);

  withLook(withFormat(program.command("codes").description("list the codes of messages and the exit codes").argument("[code]", "one code, such as SW-T03")))
    .action(async (code: string | undefined, flags: MarkFlags) => (await import("./commands/lists.ts")).runCodes(code, flags));

  program.command("completion").description("print a completion script for a shell").addArgument(new Argument("<shell>", "the shell").choices(SHELLS))
    .action(async (shell: Shell) => (await import("./commands/lists.ts")).runCompletion(program, shell));

  for (const command of [program, ...commandsWithin(program)]) {
    command.addHelpText("after", ({ error }) => helpAfter(commandPath(command), helpWidth(error ? process.stderr : process.stdout)));
    explainErrors(command);
  }
  return program;
}

function withOutput(command: Command): Command {
  return withOut(withFormat(command));
}

function withStation(command: Command): Command {
  return command
    .option("--from <time>", "where the station starts in the recording, if it is not found rightly", parseTime)
    .option("--to <time>", "where it ends", parseTime)
    .option("--candidate <label>", "the candidate's speaker label in the transcript");
}

function helpWidth(stream: NodeJS.WriteStream): number {
  return Math.min(WIDEST_HELP, appearance({}, stream, process.env).width);
}

/** Commander's own messages in the form of all others: who, what is wrong, the code, how to mend it. */
function explainErrors(command: Command): void {
  const path = commandPath(command);
  const name = command.parent === null ? path : `saidwell ${path}`;
  command.configureOutput({
    outputError: (message, write) => {
      const [first = "", ...rest] = message.replace(/^error: /, "").trimEnd().split("\n");
      const hints = [...rest.map((line) => line.replace(/^\((.*)\)$/, "$1")), ...forgottenMark(first), `'${name} --help' says what it takes.`];
      write(`${name}: ${clean(first)} [SW-U01]\n${hints.map((hint) => `  ${clean(hint)}\n`).join("")}`);
    },
  });
}

/** Whoever names a file where a command should stand wants it marked. */
function forgottenMark(message: string): string[] {
  const word = /^unknown command '(.+)'$/.exec(message)?.[1];
  return word !== undefined && existsSync(word) ? [`Did you mean 'saidwell mark ${word}'?`] : [];
}
