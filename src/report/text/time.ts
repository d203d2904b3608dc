import type { MarkSheet, TimePlan, TimeResult } from "../../scoring/types.ts";
import type { Seconds } from "../../transcript/types.ts";
import { clock, measured, number, percent, plural } from "../figures.ts";
import { faint, styled, type Page, type Text } from "../page.ts";
import { place, spoken } from "./evidence.ts";
import { NAME_COLUMNS, row } from "./row.ts";
import { timeUsed } from "./summary.ts";

const COSTS: Record<TimePlan["costs"][number]["what"], string> = {
  repeats: "repeats",
  fillers: "fillers",
  asides: "asides",
  pauses: "long pauses",
};

/** `4 s` below a minute, else `1:05`. */
export function lasting(seconds: Seconds): string {
  return Math.round(seconds) < 60 ? `${number(seconds, seconds < 10 ? 1 : 0)} s` : clock(seconds);
}

/** Fewer bars make no curve. */
const FEWEST_BARS = 3;

export function timeAndPace(page: Page, sheet: MarkSheet): void {
  const { time } = sheet;
  page.heading("Time and pace");
  page.entry({ body: faint("For practice: pace, fillers and reading level never decide the result.") });
  row(page, "Time", timeUsed(sheet));
  const wordsAMinute = (value: number) => `${number(value, 0)} words a minute`;
  row(page, "Pace", measured(time.wordsPerMinute, (value) => `${wordsAMinute(value)} over the whole time`));
  row(page, "While talking", measured(time.articulation, wordsAMinute));
  curve(page, time);
  row(page, "Words", `candidate ${number(time.candidateWords)}, ${sheet.scenario.counselled} ${number(time.patientWords)}`);
  const share = time.patientShare;
  row(page, `${sheet.scenario.counselled === "carer" ? "Carer" : "Patient"}'s share`, share === null ? "not measurable: no words of either" : `${percent(share * 100)} of the words`);
  row(page, "Pauses", pauses(time));
  row(page, "Fillers", fillers(time));
  row(page, "Reading level", measured(time.readingGrade, (grade) => `Flesch-Kincaid grade ${number(grade)}`));
  row(page, "Technical words", time.technicalWords.length === 0 ? "no unexplained technical word found" : plural(time.technicalWords.length, "unexplained technical word"));
  for (const { word, evidence, plain } of time.technicalWords) {
    page.entry({ indent: NAME_COLUMNS, lead: page.symbols.bullet, hang: 2, body: [`${word}: say "${plain}" `, faint(`(${place(evidence)})`)] });
  }
  afterLimit(page, sheet);
}

function curve(page: Page, { curve: windows }: TimeResult): void {
  const spoke = windows.filter(({ wordsPerMinute }) => wordsPerMinute > 0);
  const first = windows[0];
  if (first === undefined || spoke.length < FEWEST_BARS) return;
  const rates = spoke.map(({ wordsPerMinute }) => wordsPerMinute);
  const [low, high] = [Math.min(...rates), Math.max(...rates)];
  const { bars, noBar } = page.symbols;
  const line = windows.map(({ wordsPerMinute }) => {
    if (wordsPerMinute <= 0) return noBar;
    const height = high === low ? bars.length - 1 : Math.round(((wordsPerMinute - low) / (high - low)) * (bars.length - 1));
    return bars[height]!;
  });
  row(page, "Pace curve", styled(line.join(""), "strong"));
  const at = (rate: number) => clock(spoke.find(({ wordsPerMinute }) => wordsPerMinute === rate)!.from);
  const silent = spoke.length < windows.length ? "; a gap: the candidate said nothing" : "";
  row(page, "", faint(`${lasting(first.to - first.from)} a bar from ${clock(first.from)}; lowest ${number(low, 0)} at ${at(low)}, highest ${number(high, 0)} at ${at(high)}${silent}`));
}

function pauses({ pauses: figure }: TimeResult): Text {
  return measured(figure, ({ count, seconds, longest }) => {
    if (count === 0) return "none found";
    const named = longest.map((pause) => `${lasting(pause.seconds)} at ${clock(pause.at)}`).join(", ");
    return `${number(count)}, together ${lasting(seconds)}${named === "" ? "" : `; longest ${named}`}`;
  });
}

function fillers({ fillers: { count, perHundredWords, commonest } }: TimeResult): string {
  if (count === 0) return "none found (speech-to-text often leaves them out)";
  const rate = perHundredWords === null ? "" : `, ${number(perHundredWords)} in a hundred words`;
  const named = commonest.map(({ word, count: times }) => `${word} ${times}`).join(", ");
  return `${number(count)}${rate}${named === "" ? "" : `: ${named}`}`;
}

function afterLimit(page: Page, { time: { afterLimit: after }, items }: MarkSheet): void {
  if (after === null) return;
  const labels = after.items.map((id) => items.find((item) => item.id === id)?.label ?? id);
  const earned = labels.length === 0 ? "" : `; earns nothing: ${labels.join("; ")}`;
  row(page, "After the limit", styled(`${plural(after.words, "word")} of the candidate${earned}`, "fair"));
  for (const evidence of after.evidence) page.entry({ indent: NAME_COLUMNS, body: spoken(evidence, page.symbols) });
}

export function timePlan(page: Page, { plan, time }: MarkSheet): void {
  page.heading("Time plan");
  const costs = plan.costs.filter(({ words, seconds }) => words > 0 || (seconds ?? 0) > 0);
  if (costs.length === 0) row(page, "Costs", time.pauses.value === null ? "no repeat, filler or aside found; pauses not measurable" : "no repeat, filler, aside or long pause found");
  costs.forEach(({ what, words, seconds }, index) => {
    const amounts = [seconds === null ? null : lasting(seconds), words > 0 ? plural(words, "word") : null].filter((part) => part !== null);
    row(page, index === 0 ? "Costs" : "", `${COSTS[what]}: ${amounts.join(", ")}`);
  });
  row(page, "Without them", measured(plan.projected, (seconds) => `${clock(seconds)} against a target of ${clock(time.target)}`));
  const met = plan.wordsToCut.value !== null && plan.wordsToCut.value <= 0;
  row(page, "Words to cut", met ? "none: the target is met" : measured(plan.wordsToCut, (words) => `${number(Math.ceil(words))} at the present pace to meet the target`));
  if (plan.paceNeeded.value !== null || plan.wordsToCut.value !== 0) {
    row(page, "Or speak at", measured(plan.paceNeeded, (pace) => `${number(pace, 0)} words a minute, keeping every word`));
  }
  if (plan.caution !== null) row(page, "Caution", styled(plan.caution, "fair"));
}
