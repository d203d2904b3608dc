import type { Command, Option } from "commander";

/** What may follow: fixed words, a file, or anything else. */
export interface Expected {
  words: string[];
  files: boolean;
}

export interface OptionModel {
  /** `--format`, `-f`, ... */
  flags: string[];
  description: string;
  /** Null for a switch. */
  value: Expected | null;
}

export interface CommandModel {
  name: string;
  description: string;
  options: OptionModel[];
  /** What its first argument may be; null when it takes none. */
  argument: Expected | null;
}

export interface CompletionModel {
  program: string;
  commands: CommandModel[];
  options: OptionModel[];
}

/** Words that only the running program knows, by the long name of the option or the name of the argument. */
export type KnownWords = Readonly<Record<string, string[]>>;

/** Options and arguments whose value is a file, by name. */
const FILES = new Set(["out", "rubric", "transcript"]);

/** All that can be completed, read off the commands themselves. */
export function completionModel(program: Command, known: KnownWords): CompletionModel {
  const names = program.commands.map((command) => command.name());
  const commands = program.commands.map((command) => ({
    name: command.name(),
    description: command.description(),
    options: optionsOf(command, known),
    argument: argumentOf(command, known),
  }));
  const help: CommandModel = { name: "help", description: "print the help of a command", options: [], argument: { words: names, files: false } };
  return { program: program.name(), commands: [...commands, help], options: optionsOf(program, known) };
}

function optionsOf(command: Command, known: KnownWords): OptionModel[] {
  const help: OptionModel = { flags: ["--help", "-h"], description: "print this help", value: null };
  return [...command.options.filter(({ hidden }) => !hidden).map((option) => optionModel(option, known)), help];
}

function optionModel(option: Option, known: KnownWords): OptionModel {
  const takesValue = option.required || option.optional;
  const name = option.attributeName();
  return {
    flags: option.flags.split(/[ ,|]+/).filter((flag) => flag.startsWith("-")),
    description: option.description,
    value: takesValue ? { words: option.argChoices ?? known[name] ?? [], files: FILES.has(name) } : null,
  };
}

function argumentOf(command: Command, known: KnownWords): Expected | null {
  const [argument] = command.registeredArguments;
  if (argument === undefined) return null;
  return { words: argument.argChoices ?? known[argument.name()] ?? [], files: FILES.has(argument.name()) };
}
