import type { CohortSummary, StationSummary } from "../../cohort/summary.ts";
import { clean } from "../clean.ts";
import { number, percent, plural } from "../figures.ts";
import { toJson } from "../json.ts";
import { strong } from "../page.ts";
import { pageOf, type Look } from "../page-of.ts";

/** More failed files than this scroll the rest of the summary away; the JSON form and the gradebook have them all. */
const MOST_LISTED = 50;
/** The critical items that most missed. */
const MOST_CRITICAL = 5;

export function summaryText(summary: CohortSummary, look: Look): string {
  const page = pageOf(look);
  page.entry({ body: headline(summary) });
  for (const station of summary.stations) {
    page.heading(clean(station.station) || "Station not known");
    for (const [term, meaning] of stationRows(station)) page.entry({ indent: 2, lead: term, hang: 18, body: meaning });
  }
  if (summary.failed.length > 0) page.heading("Could not be marked");
  for (const { file, errors } of summary.failed.slice(0, MOST_LISTED)) {
    page.entry({ indent: 2, body: strong(clean(file)) });
    for (const { code, file: of, line, message, mend } of errors) page.entry({ indent: 4, body: clean(`${place(file, of, line)}${message} [${code}]${mend === undefined ? "" : ` ${mend}`}`) });
  }
  if (summary.failed.length > MOST_LISTED) page.entry({ indent: 2, body: `and ${plural(summary.failed.length - MOST_LISTED, "more file")}: see summary.json or the column 'error' of gradebook.csv` });
  if (summary.unplanned.length > 0) page.heading("Not named by the plan", "passed over");
  for (const file of summary.unplanned.slice(0, MOST_LISTED)) page.entry({ indent: 2, body: clean(file) });
  if (summary.unplanned.length > MOST_LISTED) page.entry({ indent: 2, body: `and ${plural(summary.unplanned.length - MOST_LISTED, "more file")}: see summary.json` });
  return page.toString();
}

/** GitHub-flavoured Markdown. */
export function summaryMarkdown(summary: CohortSummary): string {
  const lines = ["# Cohort", "", cell(headline(summary))];
  for (const station of summary.stations) {
    lines.push("", `## ${cell(station.station) || "Station not known"}`, "", "| | |", "|---|---|");
    for (const [term, meaning] of stationRows(station)) lines.push(`| ${term} | ${cell(meaning)} |`);
  }
  if (summary.failed.length > 0) {
    lines.push("", "## Could not be marked", "", "| file | line | code | reason |", "|---|---|---|---|");
    for (const { file, errors } of summary.failed) for (const { code, file: of, line, message } of errors) lines.push(`| ${cell(file)} | ${cell(of === file ? String(line ?? "") : place(file, of, line).replace(/: $/, ""))} | ${code} | ${cell(message)} |`);
  }
  if (summary.unplanned.length > 0) lines.push("", "## Not named by the plan, passed over", "", ...summary.unplanned.map((file) => `- ${cell(file)}`));
  return `${lines.join("\n")}\n`;
}

/** Where a fault lies; it may lie in another file, as that of the corrections. */
function place(file: string, of: string, line: number | undefined): string {
  const parts = [of === file ? null : of, line === undefined ? null : `line ${line}`].filter((part) => part !== null);
  return parts.length === 0 ? "" : `${parts.join(", ")}: `;
}

export function summaryJson(summary: CohortSummary): string {
  return toJson(summary);
}

function headline({ candidates, rehearsals, marked, failed, unplanned, stations }: CohortSummary): string {
  // What could not be read names no station.
  const known = stations.filter(({ station }) => station !== "").length;
  const counts = `${plural(rehearsals, "rehearsal")} of ${plural(candidates, "candidate")} at ${plural(known, "station")}: ${number(marked)} marked, ${number(failed.length)} could not be marked${unplanned.length > 0 ? `, ${plural(unplanned.length, "transcript")} not named by the plan` : ""}.`;
  return `${counts} A practice aid: a trained person decides.`;
}

function stationRows(station: StationSummary): [string, string][] {
  const { marked, failed, outcomes, coverage, unsafe, overLimit, toListen, overruled, criticalMissed, rubrics } = station;
  const share = (count: number, of: number) => `${number(count)} of ${number(of)}${of > 0 ? ` (${percent((100 * count) / of)})` : ""}`;
  const rows: [string, string][] = [["marked", `${number(marked)}${failed > 0 ? `; ${number(failed)} could not be` : ""}`]];
  if (marked === 0) return rows;
  rows.push(["rubric", rubrics.join("; ")]);
  rows.push(["result", Object.entries(outcomes).filter(([, count]) => count > 0).map(([outcome, count]) => `${outcome.replace("-", " ")} ${number(count)}`).join(", ")]);
  rows.push(["coverage", coverage === null ? "not measurable" : `mean ${number(coverage.mean)}%, median ${number(coverage.median)}%, from ${number(coverage.lowest)}% to ${number(coverage.highest)}%`]);
  rows.push(["unsafe statement", share(unsafe, marked)]);
  rows.push(["over the limit", overLimit.timed === 0 ? "not measurable: no times" : share(overLimit.count, overLimit.timed)]);
  rows.push(["to be listened to", plural(toListen, "mark")]);
  if (overruled.marks > 0) rows.push(["overruled", `${plural(overruled.marks, "mark")} by hand, in ${plural(overruled.rehearsals, "rehearsal")}: the figures rest on ${overruled.marks === 1 ? "it" : "them"}`]);
  for (const { label, missed, toConfirm } of criticalMissed.slice(0, MOST_CRITICAL)) rows.push(["critical, missed", `${share(missed, marked)}${confirming(toConfirm, missed)}: ${label}`]);
  return rows;
}

/** Which of the misses listening may well find said. */
export function confirming(toConfirm: number, missed: number): string {
  return toConfirm === 0 ? "" : `, ${toConfirm === missed ? "to be" : `${number(toConfirm)} of them to be`} confirmed by listening`;
}

/** No cell ends its row, opens a tag or a link. */
function cell(text: string): string {
  return clean(text).replace(/[\\|<>[\]`*_]/g, "\\$&");
}
