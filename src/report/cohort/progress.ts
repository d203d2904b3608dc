import { ERROR_MEANING, type Attempt, type Comparison, type ProgressReport } from "../../cohort/progress/report.ts";
import { clock, number, plural } from "../figures.ts";
import { faint, strong, type Page } from "../page.ts";
import { harmless } from "../harmless.ts";
import { readablePage, type Look } from "../page-of.ts";
import { rowsOf } from "./rows.ts";

const row = rowsOf(20);
const MOST_ITEMS = 10;

/** One candidate's attempts as a page of text. Never says "improved" inside measurement error. */
export function progressText(report: ProgressReport, look: Look): string {
  const page = readablePage(look);
  const data = harmless(report, look.ascii);
  page.entry({ body: [strong(`Progress of ${data.candidate}`), `: ${plural(data.attempts.length, "attempt")}`] });
  data.attempts.forEach((attempt, place) => attemptBlock(page, attempt, place + 1));
  page.heading("What the totals tell");
  if (data.comparisons.length === 0) page.entry({ indent: 2, body: "Nothing yet: no scenario was tried twice. Totals of different scenarios are not compared, as one may be harder." });
  for (const comparison of data.comparisons) page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: sentenceOf(comparison) });
  page.heading("Keeps being missed");
  if (data.keepsMissing.length === 0) page.entry({ indent: 2, body: "No item was missed twice and still the last time." });
  for (const { label, critical, missed, of } of data.keepsMissing.slice(0, MOST_ITEMS)) page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: `${label}${critical ? " CRITICAL" : ""}: ${missed} of ${of}` });
  if (data.keepsMissing.length > MOST_ITEMS) page.entry({ indent: 2, body: faint(`and ${data.keepsMissing.length - MOST_ITEMS} more (all in --format json)`) });
  if (data.nowSaid.length > 0) {
    page.heading("Missed before, said the last time");
    for (const { label, critical } of data.nowSaid.slice(0, MOST_ITEMS)) page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: `${label}${critical ? " CRITICAL" : ""}` });
    if (data.nowSaid.length > MOST_ITEMS) page.entry({ indent: 2, body: faint(`and ${data.nowSaid.length - MOST_ITEMS} more (all in --format json)`) });
  }
  page.heading("What to practise next");
  data.practise.forEach(({ what, why }, place) => page.entry({ indent: 2, lead: strong(String(place + 1)), hang: 3, body: [what, faint(` (${why})`)] }));
  if (data.practise.length === 0) page.entry({ indent: 2, body: "Nothing was found missing in the last attempt." });
  const sources = [...new Set(data.attempts.map(({ errorBy }) => errorBy))].map((source) => ERROR_MEANING[source]);
  const unused = [...new Set(data.attempts.flatMap(({ cohortUnused }) => cohortUnused ?? []))];
  page.blank();
  for (const why of unused) page.entry({ body: `--cohort is not used: ${why}.` });
  page.entry({ body: faint(`Error of a total: ${sources.join("; ")}. Two totals are told apart when they differ by more than 1.96 times the error of their difference.`) });
  return page.toString();
}

function attemptBlock(page: Page, attempt: Attempt, place: number): void {
  const { key, rubric, scenario, rubricChanged, percent, provisional, error, criticalMissed, criticalDoubted, unsafe, used, limit, overLimit, wordsPerMinute } = attempt;
  page.heading(`${place}. ${rubric.title}`, `attempt ${key.attempt}`);
  row(page, "scenario", `${scenario === "same" ? "the same as before" : "new"}; rubric ${rubric.id}, version ${rubric.version}${rubricChanged ? ", CHANGED since the last time" : ""}`);
  row(page, "coverage", percent === null ? "not measurable: no item counts" : `${number(percent)}%${error.value === null ? "" : `, standard error ${number(error.value)} points`}${provisional ? "; provisional: somebody must listen" : ""}`);
  row(page, "critical, missed", criticalMissed.length === 0 ? "none" : criticalMissed.map((label) => `${label}${criticalDoubted.includes(label) ? " (to be confirmed by listening)" : ""}`).join("; "));
  if (unsafe.length > 0) row(page, "unsafe", unsafe.join("; "));
  row(page, "time", used === null ? "not measurable: no times" : `${clock(used)} of ${clock(limit)}${overLimit !== null && overLimit > 0 ? `, ${clock(overLimit)} over` : ""}`);
  row(page, "pace", wordsPerMinute === null ? "not measurable" : `${number(wordsPerMinute, 0)} words a minute`);
}

function sentenceOf({ station, from, to, difference, smallest, verdict, why }: Comparison): string {
  const where = `${station}, attempt ${from.attempt} to ${to.attempt}: `;
  if (difference === null || smallest === null) return `${where}not comparable, as ${why}.`;
  const points = `${difference >= 0 ? "+" : "-"}${number(Math.abs(difference))} points`;
  if (verdict === "not told apart") return `${where}${points}. Within measurement error (up to ${number(smallest)} points): no change can be told.`;
  return `${where}${points}, ${verdict === "higher" ? "improved" : "lower"}: ${why} (more than ${number(smallest)} points).`.replace(/: the difference is more than measurement error/, " by more than measurement error");
}
