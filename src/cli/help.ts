import { Chalk } from "chalk";
import { Page, styled } from "../report/page.ts";
import { EXIT_MEANING } from "./exit-codes.ts";
import { REQUIREMENTS } from "./requirements.ts";

/* The parts of the help that commander does not write: examples, forms, exit codes. Commander takes the bold off where there is no colour. */

const { bold } = new Chalk({ level: 1 });

type Row = readonly [term: string, text: string];

/** A block of help: a title, and terms with their explanation or lines as they stand. */
interface Block {
  title?: string;
  rows?: readonly Row[];
  /** Wrapped. */
  text?: string;
  /** Commands, never wrapped: a broken line cannot be copied. */
  lines?: readonly string[];
}

const EXITS: Block = { title: "Exit codes:", rows: Object.entries(EXIT_MEANING) };
const TIMES = "Times are seconds (420), clocks (7:00, 1:02:30) or words ('7 min', '90 s').";

const BLOCKS: Record<string, readonly Block[]> = {
  saidwell: [
    {
      title: "Examples:",
      lines: ["saidwell rubrics", "saidwell mark rehearsal.vtt --rubric eye-drops", "saidwell label rehearsal.txt --out labelled.txt"],
    },
    EXITS,
  ],
  mark: [
    { text: `Transcripts may be plain text, WebVTT, SubRip, Praat TextGrid or JSON; the form is told from the content. ${TIMES}` },
    {
      title: "Requirements, for --require (what cannot be measured does not hold):",
      rows: REQUIREMENTS.map(({ form, help }) => [form, help]),
    },
    {
      title: "Examples:",
      lines: [
        "saidwell mark rehearsal.vtt --rubric eye-drops",
        "saidwell mark rehearsal.txt --rubric ./our-station.yaml --target '6 min'",
        "saidwell mark morning.srt --rubric eye-drops --from 12:30 --to 20:00",
        "saidwell mark a.json --rubric eye-drops --format json --out sheet.json",
        "saidwell mark a.vtt --rubric eye-drops --require pass,coverage=70",
        "saidwell mark a.vtt --rubric eye-drops --corrections a-corrections.yaml",
        "cat rehearsal.txt | saidwell mark - --rubric eye-drops | less",
      ],
    },
    EXITS,
  ],
  label: [
    { text: `The text form can be corrected in any editor and given to 'saidwell mark' again. Words, roles, the station's edges and the times that the file gives its stretches come back as they were; '[~0:14.200]' is an estimate, for the eye, inside the time of the line before. Times and confidences of single words need the JSON form. ${TIMES}` },
    {
      title: "Examples:",
      lines: [
        "saidwell label rehearsal.txt",
        "saidwell label rehearsal.txt --out labelled.txt",
        "saidwell label rehearsal.vtt --candidate 'Speaker 2' --format json",
      ],
    },
  ],
  explain: [
    { text: "For each element of the item: the passages that came nearest, which of their words stand for which words of an acceptable response, what was not found, and why a passage that looks right does not count." },
    { title: "Examples:", lines: ["saidwell explain rehearsal.vtt --rubric eye-drops --item wash-hands", "saidwell explain rehearsal.vtt --rubric eye-drops --item wash-hands --format json"] },
    EXITS,
  ],
  rubrics: [
    { text: "A rubric of your own may include the shipped blocks: 'include: shipped:opening'." },
    { title: "Examples:", lines: ["saidwell rubrics", "saidwell rubrics --format json"] },
  ],
  rubric: [{ title: "Examples:", lines: ["saidwell rubric check rubrics/", "saidwell rubric check --help"] }],
  "rubric list": [{ title: "Examples:", lines: ["saidwell rubric list", "saidwell rubric list --format json"] }],
  "rubric show": [
    { text: "Scenario, items by section with their elements, unsafe statements, the patient's questions, order and sources. JSON is the rubric itself, blocks read in." },
    { title: "Examples:", lines: ["saidwell rubric show eye-drops", "saidwell rubric show ./our-station.yaml --responses"] },
  ],
  "rubric new": [
    { text: "The starter can be checked and marked with as it is. A file that exists is never replaced." },
    { title: "Examples:", lines: ["saidwell rubric new our-station.yaml", "saidwell rubric new | less"] },
  ],
  "rubric compare": [
    {
      text:
        "REVISION:PATH is read with git, blocks included; the path counts from the top of the repository. Why a mark changes is found by marking with the old rubric and one change at a time.",
    },
    {
      title: "Examples:",
      lines: [
        "saidwell rubric compare HEAD:rubrics/pen.yaml rubrics/pen.yaml --on rehearsals",
        "saidwell rubric compare eye-drops ./our-eye-drops.yaml --on june --format markdown",
        "saidwell rubric compare main:rubrics/pen.yaml rubrics/pen.yaml --on june --fail-on-change",
      ],
    },
    EXITS,
  ],
  "rubric check": [
    {
      text:
        "What a rubric's responses do is kept for the next check, which is much shorter while neither the rubric, its blocks nor the program change: in $XDG_CACHE_HOME/saidwell, " +
        "~/.cache/saidwell or, on Windows, %LOCALAPPDATA%\\saidwell\\cache. SAIDWELL_CACHE=FOLDER keeps it elsewhere, SAIDWELL_CACHE=off nowhere.",
    },
    {
      title: "Examples:",
      lines: [
        "saidwell rubric check rubrics/",
        "saidwell rubric check our-station.yaml --confusion",
        "saidwell rubric check rubrics/ --max-warnings 0 --format sarif --out rubrics.sarif",
      ],
    },
    EXITS,
  ],
  "rubric sheet": [
    { text: "The global and communication ratings are people's: saidwell shows evidence for rapport and never marks it." },
    {
      title: "Examples:",
      lines: [
        "saidwell rubric sheet eye-drops",
        "saidwell rubric sheet eye-drops --format csv --candidate A017 --marker Kim --out A017-Kim.csv",
        "saidwell rubric sheet eye-drops --evidence sheet.json",
      ],
    },
    EXITS,
  ],
  cohort: [
    {
      text:
        "Every file of the folder and below that ends in .txt, .vtt, .srt, .TextGrid or .json is a transcript. Candidate, station and attempt come from " +
        "its name, by default '{candidate}[_{station}[_{attempt}]]' ([...] may be missing; any other {name} becomes a column), or from a plan: " +
        "CSV with the columns file, candidate, station, attempt, rubric, from, to, speaker; all other columns are kept for analysis. " +
        "A run that was stopped goes on when the same command is given again; what has not changed is not marked twice.",
    },
    {
      title: "Examples:",
      lines: [
        "saidwell cohort rehearsals --rubric eye-drops --out marked",
        "saidwell cohort june --rubric drops=eye-drops --rubric pen=./pen.yaml --out june-marked",
        "saidwell cohort june --names '{school}/{candidate}_{station}' --rubric eye-drops --out june-marked",
        "saidwell cohort june --plan plan.csv --out june-marked",
        "saidwell cohort june --plan plan.csv --corrections june-corrections --out june-marked",
        "saidwell cohort june --plan plan.csv --shard 1/8 --out part-1",
      ],
    },
    EXITS,
  ],
  merge: [
    { text: "Gives the same bytes as one run over the whole cohort." },
    { title: "Examples:", lines: ["saidwell merge part-1 part-2 --out june-marked", "saidwell merge part-* --out june-marked"] },
    EXITS,
  ],
  agree: [
    {
      text:
        "The marks are CSV with the columns candidate, marker, item, content and, where needed, station, attempt, element, elicitation; " +
        "'saidwell rubric sheet RUBRIC --format csv' prints a blank one. content is complete, partial, incorrect, absent, cannot tell, not offered or n/a. " +
        "The items overall:total (per cent), overall:global and overall:communication (numbers of your scale) are of the whole rehearsal. " +
        "A line without a candidate or marker belongs to the one above.",
    },
    {
      title: "Examples:",
      lines: ["saidwell agree marks.csv june-marked", "saidwell agree marks.csv sheet.json", "saidwell agree marks.csv june-marked --format json --out agreement.json"],
    },
    EXITS,
  ],
  items: [
    { title: "Examples:", lines: ["saidwell items june-marked", "saidwell items june-marked --by accent --by recogniser --marks marks.csv", "saidwell items june-marked --format json --out items.json"] },
    EXITS,
  ],
  cutscore: [
    { text: "A CSV of scores has the columns candidate and score (per cent) and, where needed, station and rating; its name ends in .csv. Of several attempts in results the first counts." },
    {
      title: "Examples:",
      lines: [
        "saidwell cutscore june-marked --ratings marks.csv --borderline 2",
        "saidwell cutscore scores.csv --borderline 2 --plot cut.svg",
        "saidwell cutscore --angoff judges.csv",
        "saidwell cutscore june-marked --ratings marks.csv --borderline 2 --angoff judges.csv --format json",
      ],
    },
    EXITS,
  ],
  progress: [
    { text: "Attempts come in the order of their names. Totals are compared only at the same scenario and by the same rubric; without --cohort or --sem the error of a total is had from its items." },
    { title: "Examples:", lines: ["saidwell progress my-sheets", "saidwell progress june-marked --candidate A017 --cohort june-marked"] },
    EXITS,
  ],
  codes: [{ title: "Examples:", lines: ["saidwell codes", "saidwell codes SW-T03"] }],
  completion: [
    {
      title: "To install, add one line to the shell's start-up file:",
      lines: [
        "source <(saidwell completion bash)      # bash: ~/.bashrc",
        "source <(saidwell completion zsh)       # zsh: ~/.zshrc, after compinit",
        "saidwell completion fish | source       # fish: ~/.config/fish/config.fish",
      ],
    },
  ],
};

/** What stands below commander's own help of a command. @param command its words: "mark", "rubric check" */
export function helpAfter(command: string, width: number): string {
  return (BLOCKS[command] ?? []).map((block) => `\n${layout(block, width)}`).join("");
}

function layout({ title, rows = [], text, lines = [] }: Block, width: number): string {
  const page = new Page({ width, ascii: true, paint: (part, style) => (style === "strong" ? bold(part) : part) });
  if (title !== undefined) page.entry({ body: styled(title, "strong") });
  if (text !== undefined) page.entry({ body: text });
  const hang = 2 + Math.max(0, ...rows.map(([term]) => term.length));
  for (const [term, meaning] of rows) page.entry({ indent: 2, lead: term, hang, body: meaning });
  const laid = title === undefined && text === undefined ? "" : page.toString();
  return laid + lines.map((line) => `  ${line}\n`).join("");
}
