import { Option, type Command } from "commander";
import { withFormat, withLook, withOut } from "../shared-options.ts";
import { parseCount, parseDay } from "../values.ts";
import { COMPARE_FORMATS, type CompareFlags } from "./rubric-compare-flags.ts";
import type { ShowFlags } from "./rubric-show.ts";
import type { SheetFlags } from "./rubric-sheet.ts";
import { CHECK_FORMATS, type CheckFlags } from "./rubric-check-flags.ts";

/* The commands for people who write rubrics. Each command's own code is loaded only when it runs. */

export function addRubricCommands(program: Command): void {
  const rubric = program.command("rubric").description("work on rubrics").helpCommand("help [command]", "print the help of a command");

  withLook(withFormat(rubric.command("list").description("list the shipped rubrics")))
    .action(async (flags: ShowFlags) => (await import("./rubric-work.ts")).runRubricList(flags));

  withLook(withOut(withFormat(rubric.command("show").description("print what a rubric asks").argument("<rubric>", "a shipped rubric's name, or a rubric file"))))
    .option("--responses", "print the acceptable responses too (JSON always has them)")
    .action(async (name: string, flags: ShowFlags) => (await import("./rubric-work.ts")).runRubricShow(name, flags));

  rubric
    .command("new")
    .description("write a commented rubric to start from")
    .argument("[file]", "file that is not there yet; else the terminal")
    .action(async (file: string | undefined) => (await import("./rubric-work.ts")).runRubricNew(file));

  withLook(withOut(rubric.command("compare").description("mark transcripts with two versions of a rubric and say whose marks change, and why").argument("<old>", "shipped name, file, or REVISION:PATH of git").argument("<new>", "the same")))
    .option("--on <folder>", "transcripts to mark: a folder with all below it, or one file (needed)")
    .addOption(new Option("-f, --format <form>", "form of the output").choices(COMPARE_FORMATS).default("text"))
    .option("--fail-on-change", "exit code 1 when anybody's marks change")
    .action(async (old: string, fresh: string, flags: CompareFlags) => (await import("./rubric-compare.ts")).runRubricCompare(old, fresh, flags));

  withLook(
    withOut(
      rubric
        .command("check")
        .description("check rubrics for faults, and their phrases against the matcher")
        .argument("<path...>", "rubric or block files, folders, or patterns such as 'rubrics/**/*.yaml'")
        .addOption(new Option("-f, --format <form>", "form of the output").choices(CHECK_FORMATS).default("text")),
    )
      .option("--max-warnings <number>", "more warnings than this give exit code 1", parseCount)
      .option("--confusion", "print which responses earn another item, as a table")
      .option("--today <date>", "the day by which facts must be reviewed, as 2027-06-30; else the clock's", parseDay)
      .option("--fresh", "say every response to the matcher anew, whatever an earlier check kept"),
  ).action(async (paths: string[], flags: CheckFlags) => (await import("./rubric-check.ts")).runRubricCheck(paths, flags));

  withLook(
    withOut(
      rubric
        .command("sheet")
        .description("print a blank marking sheet for people")
        .argument("<rubric>", "a shipped rubric's name, or a rubric file")
        .addOption(new Option("-f, --format <form>", "form of the output; csv is read back by 'saidwell agree'").choices(["text", "csv"]).default("text")),
    )
      .option("--candidate <name>", "written into the CSV; so are the next three")
      .option("--station <name>", "as the results call it")
      .option("--attempt <name>", "as the results call it")
      .option("--marker <name>", "who marks")
      .option("--evidence <sheet>", "mark sheet as JSON: print what it has for rapport, words and times without marks"),
  ).action(async (name: string, flags: SheetFlags) => (await import("./analysis.ts")).runRubricSheet(name, flags));
}
