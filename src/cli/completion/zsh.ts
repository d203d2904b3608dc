import type { CompletionModel, Expected, OptionModel } from "./model.ts";

/** A completion script for zsh, by its own _arguments. */
export function zshScript(model: CompletionModel): string {
  const { program, commands } = model;
  return `#compdef ${program}
# Completion of ${program} for zsh. Install, after compinit: source <(${program} completion zsh)
_${program}() {
  local curcontext="$curcontext" state line
  typeset -A opt_args
  _arguments -C \\
${model.options.map((option) => `    ${optionSpec(option)} \\`).join("\n")}
    '1:command:->command' \\
    '*::argument:->argument'
  case $state in
    command)
      local -a commands
      commands=(
${commands.map(({ name, description }) => `        ${quoted(`${name}:${description.replaceAll(":", "\\:")}`)}`).join("\n")}
      )
      _describe command commands
      ;;
    argument)
      case $words[1] in
${commands
  .map(
    ({ name, options, argument }) => `        ${name})
          _arguments \\
${options.map((option) => `            ${optionSpec(option)} \\`).join("\n")}${options.length > 0 ? "\n" : ""}            ${argument === null ? "'*: :'" : quoted(`1:argument:${action(argument)}`)}
          ;;`,
  )
  .join("\n")}
      esac
      ;;
  esac
}
compdef _${program} ${program}
`;
}

function optionSpec({ flags, description, value }: OptionModel): string {
  const text = `[${description.replaceAll(/[[\]:]/g, " ")}]`;
  const argument = value === null ? "" : `:value:${action(value)}`;
  const long = flags.length > 1 ? `{${flags.map((flag) => (value !== null && flag.startsWith("--") ? `${flag}=` : flag)).join(",")}}` : (value !== null ? `${flags[0]}=` : flags[0]!);
  return `${long}${quoted(text + argument)}`;
}

function action({ words, files }: Expected): string {
  const list = words.length > 0 ? `(${words.join(" ")})` : "";
  if (!files) return list === "" ? " " : list;
  return list === "" ? "_files" : `{_alternative 'words:word:${list}' 'files:file:_files'}`;
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
