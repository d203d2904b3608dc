import { RATE_MEANING, SMALL_GROUP, type GroupReport, type RateName } from "../../cohort/items/groups.ts";
import type { ItemsReport } from "../../cohort/items/report.ts";
import { SMALL_COHORT, type StationItems } from "../../cohort/items/station.ts";
import { clock, number, plural } from "../figures.ts";
import { faint, strong, type Page } from "../page.ts";
import { briefly, estimate, INTERVAL_NOTE, share, unmeasured } from "./estimates.ts";
import { harmless } from "../harmless.ts";
import { readablePage, type Look } from "../page-of.ts";
import { rowsOf } from "./rows.ts";
import { confirming } from "./summary.ts";
import { table } from "./table.ts";

const row = rowsOf(24);
const MOST_STATEMENTS = 8;
const MOST_SECTIONS = 5;

/** Item analysis as a page of text. */
export function itemsText(report: ItemsReport, look: Look): string {
  const page = readablePage(look);
  const data = harmless(report, look.ascii);
  page.entry({ body: [strong("Item analysis"), `: ${plural(data.rehearsals, "rehearsal")} of ${plural(data.candidates, "candidate")}`] });
  for (const station of data.stations) stationBlock(page, station);
  examination(page, data);
  for (const group of data.groups) groups(page, group);
  page.blank();
  page.entry({ body: faint(`${INTERVAL_NOTE} "Earn it": the item is met, complete or with as much of it as the rubric asks for at least. "With the rest": correlation of its marks with the total of the other items.`) });
  return page.toString();
}

function stationBlock(page: Page, station: StationItems): void {
  const { reliability, rubric, items } = station;
  page.heading(station.station, plural(station.rehearsals, "rehearsal"));
  page.entry({ indent: 2, body: faint(`${rubric.title}, version ${rubric.version}`) });
  if (station.rehearsals > station.candidates) page.entry({ indent: 2, body: `Of ${plural(station.candidates, "candidate")}; of several attempts the first counts here, since attempts of one candidate are not independent.` });
  if (station.candidates < SMALL_COHORT) page.entry({ indent: 2, body: `Fewer than ${SMALL_COHORT} candidates: take correlations and reliability as a hint only.` });
  table(page, ["item", "n", "earn it", "cannot tell", "with the rest"], items.map((item) => [
    `${item.label}${item.critical ? " CRITICAL" : ""}`,
    String(item.n),
    item.earning.value === null ? "n.m." : share(item.earning.value),
    String(item.contents["cannot-tell"] ?? 0),
    briefly(item.itemTotal).replace(/ \(.*/, ""),
  ]));
  const said = (which: "all" | "none") => items.filter(({ everybody }) => everybody === which).map(({ label }) => label);
  page.blank();
  if (said("all").length > 0) row(page, "all earn", said("all").join("; "));
  if (said("none").length > 0) row(page, "none earn", said("none").join("; "));
  // Below nought by chance alone is no finding, and where all or none earn it nobody earns it less often.
  const against = items.filter(({ itemTotal, everybody }) => everybody === null && itemTotal.value !== null && itemTotal.interval !== null && itemTotal.interval.high < 0);
  if (against.length > 0) row(page, "against the rest", `${against.map(({ label }) => label).join("; ")}: those who do well elsewhere earn it less often; look at its wording`);
  row(page, reliability.name, `${estimate(reliability.figure)}, from ${plural(reliability.rehearsals, "candidate")} and ${plural(reliability.items, "item")}${reliability.leftOut.length > 0 ? `; left out, as they often do not count: ${reliability.leftOut.join(", ")}` : ""}`);
  if (reliability.figure.value !== null && reliability.figure.value < 0) row(page, "", "Below nought: the items do not go together in this cohort.");
  row(page, "error of measurement", `${estimate(reliability.errorOfMeasurement, (value) => number(value))}${reliability.errorOfMeasurement.value === null ? "" : " points of the per cent total"}`);
  for (const { label, missed, count, toConfirm } of station.criticalMissed) row(page, "critical, missed", `${count} of ${station.candidates}, ${estimate(missed, share)}${confirming(toConfirm, count)}: ${label}`);
  for (const { label, standing, corrected } of station.incorrect.slice(0, MOST_STATEMENTS)) row(page, "said wrongly", `${standing} standing, ${corrected} put right: ${label}`);
  for (const { label, standing, corrected, toListen } of station.unsafe.slice(0, MOST_STATEMENTS)) row(page, "unsafe", `${standing} standing, ${corrected} put right, ${toListen} to listen to: ${label}`);
  time(page, station);
}

function time(page: Page, { time: { timed, costs, sections, overLimit } }: StationItems): void {
  if (timed === 0) return row(page, "time", "not measurable: no times");
  row(page, "over the limit", `${estimate(overLimit, share)} of ${plural(overLimit.n, "timed rehearsal")}`);
  row(page, "time lost, on average", costs.map(({ what, seconds }) => `${what} ${number(seconds, 0)} s`).join(", "));
  row(page, "time by section", sections.slice(0, MOST_SECTIONS).map(({ title, seconds }) => `${title} ${clock(seconds)}`).join(", "));
}

function examination(page: Page, { examination: { stations, candidates, leftOut, study } }: ItemsReport): void {
  page.heading("The examination as a whole", plural(stations.length, "station"));
  row(page, "candidates", `${candidates} with a total at every station${leftOut > 0 ? `; ${leftOut} left out, as a station is missing` : ""}`);
  if (unmeasured(study)) return row(page, "reliability", `not measurable: ${study.why}`);
  if (candidates < SMALL_COHORT) page.entry({ indent: 2, body: `Fewer than ${SMALL_COHORT} candidates: take these figures as a hint only.` });
  row(page, "for ranking", `${estimate(study.relative)} (generalizability coefficient, candidates by stations)`);
  row(page, "for pass or fail", `${estimate(study.absolute)} (index of dependability)`);
  row(page, "one station alone", estimate(study.oneStation));
  row(page, "error of the mean", `${number(study.absoluteError)} points of the per cent total`);
  const { candidates: own, stations: between, residual } = study.components;
  const whole = own + between + residual;
  if (whole > 0) row(page, "variance", `candidates ${share(own / whole)}, stations ${share(between / whole)}, what is left ${share(residual / whole)}`);
  row(page, "stations for 0.8", study.stationsNeeded === null ? "more of the same would not do" : String(study.stationsNeeded));
}

const RATE_TITLE: Record<RateName, string> = { error: "error", "cannot-tell": "cannot tell", listen: "listen", missed: "missed" };

function groups(page: Page, { column, without, groups: all, stationsDiffer, differing }: GroupReport): void {
  page.heading(`By ${column}`, plural(all.length, "group"));
  if (all.length === 0) page.entry({ indent: 2, body: "No rehearsal has this column filled in." });
  for (const [name, title] of Object.entries(RATE_TITLE) as [RateName, string][]) {
    page.entry({ indent: 2, body: [strong(title), faint(`: ${RATE_MEANING[name]}`)] });
    for (const { value, rehearsals, small, rates } of all) {
      page.entry({ indent: 4, lead: value, hang: 20, body: `${estimate(rates[name], share)}${rates[name].value === null ? "" : `; ${plural(rehearsals, "rehearsal")}`}${small ? ` - SMALL GROUP (under ${SMALL_GROUP})` : ""}` });
    }
  }
  page.blank();
  for (const { value, rate } of differing) {
    const figure = all.find((group) => group.value === value)!.differences[rate];
    page.entry({ indent: 2, body: `DIFFERS: ${RATE_TITLE[rate]} of ${value} from all others by ${estimate(figure, (points) => `${number(100 * points)} points`)}.` });
  }
  if (differing.length > 0) page.entry({ indent: 2, body: faint("One in twenty such comparisons differs by chance.") });
  else if (all.length > 1) page.entry({ indent: 2, body: "No group's interval keeps clear of the others'. That is no proof of fairness where groups are small." });
  if (stationsDiffer) page.entry({ indent: 2, body: `The groups did not sit the same stations alike often (${all.map(({ value, stations }) => `${value}: ${stations.map(({ station, count }) => `${station} ${count}`).join(", ")}`).join("; ")}): a difference may be the stations', not the groups'.` });
  if (without > 0) page.entry({ indent: 2, body: `${plural(without, "rehearsal")} without this column, in no group.` });
}
