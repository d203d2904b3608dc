import type { Command } from "commander";

/** The words that name a command, the program's own aside: "mark", "rubric check"; the program itself is called by its name. */
export function commandPath(command: Command): string {
  if (command.parent === null) return command.name();
  return command.parent.parent === null ? command.name() : `${commandPath(command.parent)} ${command.name()}`;
}

/** Commands inside a command, at any depth, each group before its members. */
export function commandsWithin(command: Command): Command[] {
  return command.commands.flatMap((inner) => [inner, ...commandsWithin(inner)]);
}
