import type { Command, Option } from "commander";
import { commandPath, commandsWithin } from "../command-path.ts";

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
  /** Its words behind the program's name: "mark", "rubric check". */
  name: string;
  description: string;
  options: OptionModel[];
  /** What its first argument may be; null when it takes none. */
  argument: Expected | null;
  /** Takes any number of arguments of that kind. */
  repeats: boolean;
}

export interface CompletionModel {
  program: string;
  /** Groups and their members alike; a group's argument is the last word of a member. */
  commands: CommandModel[];
  options: OptionModel[];
}

/** Words that only the running program knows, by the long name of the option or the name of the argument. */
export type KnownWords = Readonly<Record<string, string[]>>;

/** Options and arguments whose value is a file, by name. */
const FILES = new Set(["out", "rubric", "transcript", "path", "folder", "folders", "plan"]);

/** All that can be completed, read off the commands themselves. */
export function completionModel(program: Command, known: KnownWords): CompletionModel {
  const commands = commandsWithin(program).map((command) => ({
    name: commandPath(command),
    description: command.description(),
    options: optionsOf(command, known),
    argument: command.commands.length > 0 ? { words: membersOf(command), files: false } : argumentOf(command, known),
    repeats: command.registeredArguments[0]?.variadic ?? false,
  }));
  const help: CommandModel = { name: "help", description: "print the help of a command", options: [], argument: { words: membersOf(program), files: false }, repeats: false };
  return { program: program.name(), commands: [...commands, help], options: optionsOf(program, known) };
}

function membersOf(command: Command): string[] {
  return command.commands.map((member) => member.name());
}

/** The commands that may stand first. */
export function outermost({ commands }: CompletionModel): CommandModel[] {
  return commands.filter(({ name }) => !name.includes(" "));
}

/** The commands of a group; none for any other command. */
export function membersWithin({ commands }: CompletionModel, { name: group }: CommandModel): CommandModel[] {
  return commands.filter(({ name }) => name.startsWith(`${group} `) && !name.slice(group.length + 1).includes(" "));
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
