import { EXIT_MEANING } from "./exit-codes.ts";
import { REQUIREMENTS } from "./requirements.ts";

/* The parts of the help that commander does not write: examples, forms, exit codes. */

const list = (rows: readonly (readonly [string, string])[]) => {
  const columns = 2 + Math.max(...rows.map(([term]) => term.length));
  return rows.map(([term, text]) => `  ${term.padEnd(columns)}${text}`).join("\n");
};

const TIMES = "Times are seconds (420), clocks (7:00, 1:02:30) or words ('7 min', '90 s').";

const EXITS = `Exit codes:\n${list(Object.entries(EXIT_MEANING).map(([code, meaning]) => [code, meaning] as const))}`;

export const MAIN_HELP = `
Examples:
  saidwell rubrics                                          the stations that can be marked
  saidwell mark rehearsal.vtt --rubric eye-drops            mark one rehearsal
  saidwell label rehearsal.txt --out labelled.txt           see and correct who spoke

${EXITS}
`;

export const MARK_HELP = `
Transcripts may be plain text, WebVTT, SubRip, Praat TextGrid or JSON; the form is told from the content.
${TIMES}

Requirements, for --require:
${list(REQUIREMENTS.map(({ form, help }) => [form, help] as const))}
  What cannot be measured does not hold.

Examples:
  saidwell mark rehearsal.vtt --rubric eye-drops
  saidwell mark rehearsal.txt --rubric ./our-station.yaml --target '6 min'
  saidwell mark whole-morning.srt --rubric eye-drops --from 12:30 --to 20:00
  saidwell mark rehearsal.json --rubric eye-drops --format json --out sheet.json
  saidwell mark rehearsal.vtt --rubric eye-drops --require pass,within-limit --require coverage=70
  cat rehearsal.txt | saidwell mark - --rubric eye-drops | less

${EXITS}
`;

export const LABEL_HELP = `
The text form can be corrected in any editor and given to 'saidwell mark' again: nothing is lost on the way.
${TIMES}

Examples:
  saidwell label rehearsal.txt
  saidwell label rehearsal.txt --out labelled.txt
  saidwell label rehearsal.vtt --candidate 'Speaker 2' --format json
`;

export const RUBRICS_HELP = `
Examples:
  saidwell rubrics
  saidwell rubrics --format json

A rubric of your own may include the shipped blocks: 'include: shipped:opening'.
`;

export const CODES_HELP = `
Examples:
  saidwell codes
  saidwell codes SW-T03
`;

export const COMPLETION_HELP = `
To install, add one line to the shell's start-up file:
  bash, ~/.bashrc:                     source <(saidwell completion bash)
  zsh, ~/.zshrc (after compinit):      source <(saidwell completion zsh)
  fish, ~/.config/fish/config.fish:    saidwell completion fish | source
`;
