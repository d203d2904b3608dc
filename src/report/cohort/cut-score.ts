import type { Cut, CutScoreReport, NearCandidate, StationCut } from "../../cohort/cutscore/report.ts";
import { SMALL_COHORT } from "../../cohort/items/station.ts";
import type { Estimate } from "../../cohort/statistics/estimate.ts";
import { number, plural } from "../figures.ts";
import { faint, strong, type Page } from "../page.ts";
import { coefficient, estimate } from "./estimates.ts";
import { harmless } from "../harmless.ts";
import { readablePage, type Look } from "../page-of.ts";
import { rowsOf } from "./rows.ts";
import { scatterLines } from "./scatter.ts";

const row = rowsOf(24);
const MOST_NEAR = 40;

/** Cut scores as a page of text. */
export function cutScoreText(report: CutScoreReport, look: Look): string {
  const page = readablePage(look);
  const data = harmless(report, look.ascii);
  page.entry({ body: [strong("Cut scores"), data.borderline === null ? "" : `: the rating ${data.borderline} is borderline`] });
  for (const station of data.stations) stationBlock(page, station, data.borderline);
  if (data.examination !== null) {
    const { method, cut, below, candidates, errorOfMeasurement, near } = data.examination;
    page.heading("The examination as a whole", plural(data.stations.length, "station"));
    row(page, "cut, mean of stations", `${percents(cut)} by ${method}${cut.value !== null && cut.standardError !== null ? `; standard error ${number(cut.standardError, 2)} points, the stations' errors taken as independent` : ""}`);
    if (candidates > 0) {
      row(page, "below it", `${below} of ${plural(candidates, "candidate")} with a score at every station`);
      row(page, "error of measurement", measurementError(errorOfMeasurement, "a candidate's mean over the stations"));
      nearList(page, near, cut.value !== null && cut.standardError !== null, errorOfMeasurement.value !== null);
    }
  }
  page.blank();
  page.entry({ body: faint("In brackets: 95% confidence intervals. A cut score is a judgement of people; these figures only carry theirs over to the scores. A practice aid: a trained person decides.") });
  return page.toString();
}

function percents(figure: Cut["cut"]): string {
  return estimate(figure, (value) => `${number(value)}%`);
}

function stationBlock(page: Page, station: StationCut, borderline: number | null): void {
  const { regression, group, angoff, decision } = station;
  if (station.candidates === 0) page.heading(station.station || "Judgements", "no candidates");
  else page.heading(station.station || "All scores", `${plural(station.candidates, "candidate")}, ${station.rated} rated`);
  if (regression !== null) {
    cutRow(page, regression);
    if (regression.slope !== null) row(page, "", `R squared ${regression.rSquared === null ? "not measurable: all scores are the same" : coefficient(regression.rSquared)}; ${number(regression.slope)} points a step of the rating`);
    warnings(page, regression);
  }
  if (group !== null) {
    cutRow(page, group);
    if (group.median.value !== null) row(page, "", `median of the group ${percents(group.median)}`);
    warnings(page, group);
  }
  if (angoff !== null) {
    cutRow(page, angoff);
    row(page, "", angoff.judges.map(({ judge, cut }) => `${judge} ${number(cut)}%`).join(", "));
    warnings(page, angoff);
  }
  if (station.candidates === 0) return;
  row(page, "error of measurement", measurementError(station.errorOfMeasurement, "one candidate's score"));
  if (borderline !== null && station.points.length > 0) {
    page.blank();
    for (const line of scatterLines(station, borderline)) page.entry({ indent: 2, body: line.replaceAll(" ", "\u00a0") });
    page.entry({ indent: 2, body: faint("Across: rating; up: score. Figures count candidates, dots are the line, = the cut, | borderline.") });
    page.blank();
  }
  if (decision === null) return;
  row(page, "below the cut", `${decision.below} of ${station.candidates} by ${decision.method}`);
  nearList(page, decision.near, decision.standardError !== null, station.errorOfMeasurement.value !== null);
}

function measurementError(error: Estimate, of: string): string {
  if (error.value === null) return `not measurable: ${error.why}`;
  return `${number(error.value)} points of ${of}${error.n < SMALL_COHORT ? `; from ${plural(error.n, "candidate")} only (fewer than ${SMALL_COHORT}), so a hint` : ""}`;
}

function cutRow(page: Page, cut: Cut): void {
  const error = cut.cut.value !== null && cut.cut.standardError !== null ? `; standard error ${number(cut.cut.standardError, 2)}: ${cut.errorBy}` : "";
  row(page, cut.method, `${percents(cut.cut)}${error}`);
}

function warnings(page: Page, { warnings: all }: Cut): void {
  for (const warning of all) row(page, "", `WARNING: ${warning}.`);
}

function nearList(page: Page, near: readonly NearCandidate[], cutError: boolean, measurementError: boolean): void {
  const known = [cutError ? "the cut's standard error" : null, measurementError ? "the error of measurement" : null].filter((part) => part !== null);
  if (known.length === 0) return row(page, "near the cut", "not measurable: no standard error is known");
  if (near.length === 0) return row(page, "near the cut", `nobody within ${known.join(" or ")}`);
  near.slice(0, MOST_NEAR).forEach(({ candidate, score, distance, withinCutError, withinMeasurementError }, place) => {
    const within = [withinCutError === true ? "the cut's standard error" : null, withinMeasurementError === true ? "the error of measurement" : null].filter((part) => part !== null);
    row(page, place === 0 ? "near the cut" : "", `${candidate}: ${number(score)}%, ${Math.abs(distance) < 0.05 ? "on the cut" : `${number(Math.abs(distance))} points ${distance < 0 ? "below" : "above"}`}, within ${within.join(" and ")}`);
  });
  if (near.length > MOST_NEAR) row(page, "", `and ${near.length - MOST_NEAR} more (all in --format json)`);
}
