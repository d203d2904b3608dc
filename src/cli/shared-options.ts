import { Option, type Command } from "commander";
import { parseWidth } from "./terminal.ts";

/* Options that several commands have, each in one place. */

/** How the text looks. */
export function withLook(command: Command): Command {
  return command
    .option("--width <columns>", "width of the text, 60 to 200", parseWidth)
    .addOption(new Option("--color, --colour <when>", "colour in the text").choices(["auto", "always", "never"]).default("auto"));
}

/** Where the output goes. */
export function withOut(command: Command): Command {
  return command.option("-o, --out <file>", "write to a file instead of the terminal").option("--force", "let --out replace a file that exists");
}

/** The form of the output. */
export function withFormat(command: Command): Command {
  return command.addOption(new Option("-f, --format <form>", "form of the output").choices(["text", "json"]).default("text"));
}

/** An option that may be repeated. */
export function gather(value: string, before: string[] = []): string[] {
  return [...before, value];
}
