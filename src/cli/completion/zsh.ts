import { membersWithin, outermost, type CommandModel, type CompletionModel, type Expected, type OptionModel } from "./model.ts";

/** A completion script for zsh, by its own _arguments. */
export function zshScript(model: CompletionModel): string {
  const { program } = model;
  return `#compdef ${program}
# Completion of ${program} for zsh. Install, after compinit: source <(${program} completion zsh)
_${program}() {
  local curcontext="$curcontext" state line
  typeset -A opt_args
${level(model, model.options, outermost(model), "  ")}
}
compdef _${program} ${program}
`;
}

/** The options of a group (or of the program), then the name of a member, then what that member takes. */
function level(model: CompletionModel, options: readonly OptionModel[], members: readonly CommandModel[], pad: string): string {
  const lines = [
    "_arguments -C \\",
    ...options.map((option) => `  ${optionSpec(option)} \\`),
    "  '1:command:->command' \\",
    "  '*::argument:->argument'",
    "case $state in",
    "  command)",
    "    local -a commands",
    "    commands=(",
    ...members.map(({ name, description }) => `      ${quoted(`${lastWord(name)}:${description.replaceAll(":", "\\:")}`)}`),
    "    )",
    "    _describe command commands",
    "    ;;",
    "  argument)",
    "    case $words[1] in",
  ];
  const cases = members.map((member) => {
    const inner = membersWithin(model, member);
    const body = inner.length > 0 ? level(model, member.options, inner, `${pad}        `) : leaf(member, `${pad}        `);
    return `${pad}      ${lastWord(member.name)})\n${body}\n${pad}        ;;`;
  });
  return [...lines.map((line) => pad + line), ...cases, `${pad}    esac`, `${pad}    ;;`, `${pad}esac`].join("\n");
}

function leaf({ options, argument, repeats }: CommandModel, pad: string): string {
  const last = argument === null ? "'*: :'" : quoted(`${repeats ? "*" : "1"}:argument:${action(argument)}`);
  return ["_arguments \\", ...options.map((option) => `  ${optionSpec(option)} \\`), `  ${last}`].map((line) => pad + line).join("\n");
}

function lastWord(name: string): string {
  return name.slice(name.lastIndexOf(" ") + 1);
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
