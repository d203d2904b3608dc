import { membersWithin, outermost, type CommandModel, type CompletionModel, type Expected, type OptionModel } from "./model.ts";

/** A completion script for fish 3 and later. */
export function fishScript(model: CompletionModel): string {
  const { program, commands } = model;
  const lines = [
    `# Completion of ${program} for fish. Install: ${program} completion fish | source`,
    `complete -c ${program} -f`,
    ...outermost(model).map(({ name, description }) => `complete -c ${program} -n __fish_use_subcommand -a ${name} -d ${quoted(description)}`),
    ...model.options.map((option) => optionLine(program, "__fish_use_subcommand", option)),
  ];
  for (const command of commands) {
    const { options, argument } = command;
    const inside = quoted(condition(command, model));
    for (const option of options) lines.push(optionLine(program, inside, option));
    for (const { name, description } of membersWithin(model, command)) lines.push(`complete -c ${program} -n ${inside} -a ${lastWord(name)} -d ${quoted(description)}`);
    if (argument !== null && membersWithin(model, command).length === 0) lines.push(`complete -c ${program} -n ${inside}${argumentPart(argument)}`);
  }
  return `${lines.join("\n")}\n`;
}

/** Inside the command, and not yet inside one of its members. */
function condition(command: CommandModel, model: CompletionModel): string {
  const seen = command.name.split(" ").map((word) => `__fish_seen_subcommand_from ${word}`);
  const members = membersWithin(model, command).map(({ name }) => lastWord(name));
  return [...seen, ...(members.length > 0 ? [`not __fish_seen_subcommand_from ${members.join(" ")}`] : [])].join("; and ");
}

function lastWord(name: string): string {
  return name.slice(name.lastIndexOf(" ") + 1);
}

function optionLine(program: string, condition: string, { flags, description, value }: OptionModel): string {
  const names = flags.map((flag) => (flag.startsWith("--") ? `-l ${flag.slice(2)}` : `-s ${flag.slice(1)}`)).join(" ");
  return `complete -c ${program} -n ${condition} ${names}${value === null ? "" : ` -r${argumentPart(value)}`} -d ${quoted(description)}`;
}

function argumentPart({ words, files }: Expected): string {
  return `${files ? " -F" : " -f"}${words.length > 0 ? ` -a ${quoted(words.join(" "))}` : ""}`;
}

function quoted(text: string): string {
  return `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
}
