import type { MarkSheet } from "../../scoring/types.ts";
import { clock, number, percent, plural, sentence } from "../figures.ts";
import { faint, strong, styled, type Page } from "../page.ts";
import { spoken } from "./evidence.ts";
import { row } from "./row.ts";

const TIMING: Record<MarkSheet["transcript"]["timing"], string> = {
  word: "a time for every word",
  segment: "a time for every segment; times of single words are estimated",
  none: "no times",
};

const ROLE_SOURCE: Record<MarkSheet["station"]["roleSource"], string> = {
  labels: "from the speaker labels",
  model: "worked out from the words: the transcript has no labels",
  told: "as told on the command line or in the file",
  mixed: "from the speaker labels where they are, else worked out from the words",
};

/** A hash this long tells versions apart; the JSON sheet has all of it. */
const HASH_SHOWN = 12;

export function claims(page: Page, { claims: list }: MarkSheet): void {
  page.heading("Other statements with numbers");
  if (list.length === 0) {
    page.entry({ body: "none found beyond the rubric's items" });
    return;
  }
  page.entry({ body: faint("Not matched to an item of the rubric: the coach checks whether they are right.") });
  for (const { evidence } of list) page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: spoken(evidence, page.symbols) });
}

/** What the transcript needed, how the station and the roles were found, what marked it. */
export function origin(page: Page, sheet: MarkSheet): void {
  const { transcript, station, rubric } = sheet;
  page.heading("What this sheet rests on");
  // Cut, not rounded, as the messages about the file name its times.
  const length = transcript.duration === null ? "" : `, ${clock(Math.floor(transcript.duration))} long`;
  row(page, "Transcript", `${transcript.file}: ${transcript.format}, ${plural(transcript.words, "word")}${length}; ${TIMING[transcript.timing]}`);
  row(page, "Station from", edge(station.start));
  row(page, "Station to", edge(station.end));
  if (station.restarts > 0) row(page, "Restarts", `${plural(station.restarts, "restart")}; only the last run is marked`);
  row(page, "Roles", ROLE_SOURCE[station.roleSource]);
  for (const { role, words, confidence } of station.roles) row(page, "", `${role}: ${plural(words, "word")} (${percent(confidence * 100)} sure)`);
  station.labelRoles.forEach(({ label, role, confidence }, index) =>
    row(page, index === 0 ? "Labels" : "", `${label} = ${role} (${percent(confidence * 100)} sure)`),
  );
  row(page, "Rubric", [`${rubric.id}, version ${number(rubric.version)}`, rubric.file === rubric.id ? "" : `, ${rubric.file}`, `, content ${rubric.hash.slice(0, HASH_SHOWN)}`].join(""));
  row(page, "Pass rule", sheet.result.rule);
  row(page, "Program", `saidwell ${sheet.version}`);
  findings(page, sheet);
}

function edge({ time, line, reason, confidence }: MarkSheet["station"]["start"]): string {
  const at = [time === null ? null : clock(time), /\bline \d/.test(reason) ? null : `line ${line}`].filter((part) => part !== null);
  return `${at.length === 0 ? "" : `${at.join(", ")}: `}${reason} (${percent(confidence * 100)} sure)`;
}

function findings(page: Page, { findings: list }: MarkSheet): void {
  page.heading("Repairs and guesses");
  if (list.length === 0) page.entry({ body: "none were needed" });
  for (const { line, message, mend, code, severity } of list) {
    const where = line === undefined ? "" : `line ${line}: `;
    page.entry({
      indent: 2,
      lead: styled(page.symbols.bullet, severity === "info" ? "plain" : "fair"),
      hang: 2,
      body: [severity === "info" ? "" : strong(`${severity}: `), where, message, faint(` [${code}]`), mend === undefined ? "" : ` ${sentence(mend)}`],
    });
  }
}
