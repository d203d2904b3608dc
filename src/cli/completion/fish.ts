import type { CompletionModel, Expected, OptionModel } from "./model.ts";

/** A completion script for fish 3 and later. */
export function fishScript(model: CompletionModel): string {
  const { program, commands } = model;
  const lines = [
    `# Completion of ${program} for fish. Install: ${program} completion fish | source`,
    `complete -c ${program} -f`,
    ...commands.map(({ name, description }) => `complete -c ${program} -n __fish_use_subcommand -a ${name} -d ${quoted(description)}`),
    ...model.options.map((option) => optionLine(program, "__fish_use_subcommand", option)),
  ];
  for (const { name, options, argument } of commands) {
    const inside = quoted(`__fish_seen_subcommand_from ${name}`);
    for (const option of options) lines.push(optionLine(program, inside, option));
    if (argument !== null) lines.push(`complete -c ${program} -n ${inside}${argumentPart(argument)}`);
  }
  return `${lines.join("\n")}\n`;
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
