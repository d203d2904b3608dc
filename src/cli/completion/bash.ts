import { outermost, type CommandModel, type CompletionModel, type Expected, type OptionModel } from "./model.ts";

/** A completion script for bash 4 and later. Words hold no blanks or quotes (a test keeps it so). */
export function bashScript(model: CompletionModel): string {
  const name = model.program;
  return `# Completion of ${name} for bash. Install: source <(${name} completion bash)
_${name}() {
  local cur prev command i
  cur=\${COMP_WORDS[COMP_CWORD]}
  prev=\${COMP_WORDS[COMP_CWORD-1]}
  # bash cuts '--option=value' into three words
  if [[ $cur == "=" ]]; then cur=""; elif [[ $prev == "=" ]]; then prev=\${COMP_WORDS[COMP_CWORD-2]}; fi
  COMPREPLY=()
  command=""
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "\${command:+$command }\${COMP_WORDS[i]}" in
      ${model.commands.map((command) => quoted(command.name)).join("|")}) command="\${command:+$command }\${COMP_WORDS[i]}" ;;
    esac
  done
  case $command in
${model.commands.map(forCommand).join("\n")}
    *)
      COMPREPLY=($(compgen -W "${[...outermost(model).map((command) => command.name), ...model.options.flatMap(({ flags }) => flags)].join(" ")}" -- "$cur"))
      ;;
  esac
}
complete -o bashdefault -F _${name} ${name}
`;
}

function forCommand({ name, options, argument }: CommandModel): string {
  const valued = options.filter(({ value }) => value !== null);
  return `    ${quoted(name)})
      case $prev in
${valued.map(forOption).join("\n")}
      esac
      if [[ $cur == -* ]]; then
        COMPREPLY=($(compgen -W "${options.flatMap(({ flags }) => flags).join(" ")}" -- "$cur"))
      else
        ${argument === null ? ":" : reply(argument)}
      fi
      ;;`;
}

function forOption({ flags, value }: OptionModel): string {
  return `        ${flags.join("|")}) ${reply(value!)}; return ;;`;
}

/** A name of several words is one pattern. */
function quoted(name: string): string {
  return name.includes(" ") ? `"${name}"` : name;
}

function reply({ words, files }: Expected): string {
  const parts = [...(words.length > 0 ? [`compgen -W "${words.join(" ")}" -- "$cur"`] : []), ...(files ? ['compgen -f -- "$cur"'] : [])];
  if (parts.length === 0) return ":";
  const quiet = files ? "compopt -o filenames 2>/dev/null; " : "";
  const noBlank = words.some((word) => word.endsWith("=")) ? "compopt -o nospace 2>/dev/null; " : "";
  // Line by line, so that a file name with blanks stays one word.
  return `${quiet}${noBlank}mapfile -t COMPREPLY < <(${parts.join("; ")})`;
}
