import { compareNatural } from "../result.ts";
import { angoffCut } from "../statistics/angoff.ts";
import { borderlineGroup } from "../statistics/borderline-group.ts";
import { clamped, estimated, notMeasurable, type Estimate, type Interval } from "../statistics/estimate.ts";
import { generalizability } from "../statistics/generalizability.ts";
import { linearRegression } from "../statistics/linear-regression.ts";
import { mean } from "../statistics/moments.ts";
import type { Judgement } from "./judgements.ts";
import type { Score } from "./scores.ts";

export type CutMethod = "borderline regression" | "borderline group" | "modified Angoff";

/**
 * Below this the cut's error is unacceptably large: M. Homer, G. Pell, R. Fuller and J. Patterson, Medical Teacher 38
 * (2016) 181-188, from resampling of four examinations.
 */
export const SMALLEST_COHORT = 50;
/** Below this the checklist and the rating hardly measure the same: G. Pell et al., AMEE Guide 49, Medical Teacher 32 (2010) 802-811 (from memory). */
export const LEAST_R_SQUARED = 0.5;
/** A group's mean is unsteady below this; common practice, no source. */
export const SMALLEST_GROUP = 10;
/** Half a step: a mean of several examiners' ratings counts as borderline up to here. */
const HALF_STEP = 0.5;

export interface Cut {
  method: CutMethod;
  /** Per cent. */
  cut: Estimate;
  /** How the standard error was had. */
  errorBy: string;
  warnings: string[];
}

export interface RegressionCut extends Cut {
  method: "borderline regression";
  rSquared: number | null;
  /** Per cent points a step of the rating; null when there is no line. */
  slope: number | null;
  intercept: number | null;
}

export interface GroupCut extends Cut {
  method: "borderline group";
  median: Estimate;
}

export interface AngoffReport extends Cut {
  method: "modified Angoff";
  judges: { judge: string; cut: number }[];
  /** Items judged, which the cut is in per cent of. */
  items: number;
  /** Items of the station's rubric; null where only scores are known. */
  ofItems: number | null;
}

export interface NearCandidate {
  candidate: string;
  score: number;
  /** Score minus cut. */
  distance: number;
  /** Null when the cut's standard error is not known. */
  withinCutError: boolean | null;
  /** Null when the error of measurement is not known. */
  withinMeasurementError: boolean | null;
}

export interface StationCut {
  station: string;
  candidates: number;
  rated: number;
  /** Rating and score of each rated candidate, for the plot. */
  points: { candidate: string; rating: number; score: number }[];
  regression: RegressionCut | null;
  group: GroupCut | null;
  angoff: AngoffReport | null;
  /** Of one candidate's score, in per cent points. */
  errorOfMeasurement: Estimate;
  /** By the first method that gives a cut of these scores. */
  decision: { method: CutMethod; cut: number; standardError: number | null; below: number; near: NearCandidate[] } | null;
}

export interface CutScoreReport {
  form: "saidwell/cut-score@1";
  version: string;
  /** The rating that means borderline. */
  borderline: number | null;
  stations: StationCut[];
  /** Mean of the stations' cuts by one method, where every station has one. */
  examination: { method: CutMethod; cut: Estimate; below: number; candidates: number; /** Of a candidate's mean over the stations, in per cent points. */ errorOfMeasurement: Estimate; near: NearCandidate[] } | null;
}

export interface CutScoreInput {
  scores: readonly Score[];
  borderline: number | null;
  judgements: readonly Judgement[];
  /** Marks of an item where the judgements bring no weight. */
  weightOf: (station: string, item: string) => number;
  /** How many items a candidate's score is of; null where only scores are known. */
  itemsOf?: (station: string) => number | null;
  errorOfMeasurement: ReadonlyMap<string, Estimate>;
}

export function cutScoreReport({ scores, borderline, judgements, weightOf, itemsOf = () => null, errorOfMeasurement }: CutScoreInput, version: string): CutScoreReport {
  const names = [...new Set([...scores.map(({ station }) => station), ...judgements.map(({ station }) => station)])].sort(compareNatural);
  const stations = names.map((station): StationCut => {
    const own = scores.filter((score) => score.station === station);
    const rated = own.flatMap(({ candidate, rating, score }) => (rating === null ? [] : [{ candidate, rating, score }]));
    const judged = judgements.filter((judgement) => judgement.station === station);
    const regression = borderline === null ? null : regressionCut(rated, borderline, own);
    const group = borderline === null ? null : groupCut(rated, borderline);
    const angoff = judged.length === 0 ? null : angoffOf(judged, station, weightOf, itemsOf(station));
    const error = errorOfMeasurement.get(station) ?? notMeasurable(own.length, "it needs the items of a cohort: give results, not a table of scores");
    return { station, candidates: own.length, rated: rated.length, points: rated, regression, group, angoff, errorOfMeasurement: error, decision: decisionOf([regression, group, angoff !== null && ofAllItems(angoff) ? angoff : null], own, error) };
  });
  return { form: "saidwell/cut-score@1", version, borderline, stations, examination: examinationOf(stations, scores) };
}

const REGRESSION_ERROR = "standard error of the line's height at the borderline rating (Draper and Smith 1998)";

function regressionCut(rated: StationCut["points"], borderline: number, own: readonly Score[]): RegressionCut {
  const none = (why: string): RegressionCut => ({ method: "borderline regression", cut: notMeasurable(rated.length, why), errorBy: REGRESSION_ERROR, warnings: [], rSquared: null, slope: null, intercept: null });
  if (rated.length === 0) return none("nobody was rated");
  if (rated.length < 3) return none("fewer than three rated candidates");
  const ratings = rated.map(({ rating }) => rating);
  const line = linearRegression(ratings, rated.map(({ score }) => score));
  // Enough points, so what is left is that they stand above one another.
  if (!("slope" in line)) return none("all candidates have the same rating");
  if (line.slope.value <= 0) return { ...none("higher ratings do not go with higher scores here, so no cut can be read from the line"), rSquared: line.rSquared, slope: line.slope.value, intercept: line.intercept.value };
  const cut = line.at(borderline);
  // The line knows no bounds, a score does.
  if (cut.value < 0 || cut.value > 100) {
    return { ...none(`at the rating ${borderline} the line is at ${Number(cut.value.toFixed(1))}%, and no score can be`), rSquared: line.rSquared, slope: line.slope.value, intercept: line.intercept.value };
  }
  const warnings = [
    rated.length < SMALLEST_COHORT ? `only ${rated.length} rated candidates: below ${SMALLEST_COHORT} the cut's error is unacceptably large (Homer et al., Medical Teacher 2016)` : null,
    line.rSquared !== null && line.rSquared < LEAST_R_SQUARED ? `R squared is below ${LEAST_R_SQUARED}: checklist and rating hardly go together (AMEE Guide 49, 2010)` : null,
    borderline < Math.min(...ratings) || borderline > Math.max(...ratings) ? "nobody was rated as low (or high) as borderline: the line is drawn beyond the data" : null,
    cut.standardError === null ? "all scores lie on the line: no error can be told" : null,
    boundlessWarning(cut),
    provisionalWarning(own),
  ].filter((warning) => warning !== null);
  return { method: "borderline regression", cut: inRange(cut), errorBy: REGRESSION_ERROR, warnings, rSquared: line.rSquared, slope: line.slope.value, intercept: line.intercept.value };
}

/** The interval kept to what a score can be; the cut itself lies in it. One over the whole scale, as two or three scores give, tells nothing. */
function inRange(cut: Estimate): Estimate {
  if (cut.value === null || cut.interval === null) return cut;
  const { low, high } = cut.interval;
  return { ...cut, interval: holdsAll(cut.interval) ? null : clamped(low, high, 0, 100) };
}

function boundlessWarning(cut: Estimate): string | null {
  return cut.value !== null && cut.interval !== null && holdsAll(cut.interval) ? "its 95% interval holds the whole scale and is left out" : null;
}

function holdsAll({ low, high }: Interval): boolean {
  return low <= 0 && high >= 100;
}

function provisionalWarning(own: readonly Score[]): string | null {
  const count = own.filter(({ provisional }) => provisional).length;
  return count === 0 ? null : `${count} of the scores ${count === 1 ? "is" : "are"} provisional: somebody must listen first`;
}

function groupCut(rated: StationCut["points"], borderline: number): GroupCut {
  const own = rated.filter(({ rating }) => Math.abs(rating - borderline) < HALF_STEP);
  const { mean: cut, median } = borderlineGroup(own.map(({ score }) => score));
  return {
    method: "borderline group",
    cut: inRange(cut),
    errorBy: "standard deviation of the group's scores over the root of its size",
    warnings: cut.value === null ? [] : [
      own.length < SMALLEST_GROUP ? `only ${own.length} rated borderline: the mean is unsteady` : null,
      cut.standardError === null ? "all of them have the same score: no error can be told" : null,
      boundlessWarning(cut),
    ].filter((warning) => warning !== null),
    median,
  };
}

function angoffOf(judged: readonly Judgement[], station: string, weightOf: CutScoreInput["weightOf"], ofItems: number | null): AngoffReport {
  const items = [...new Set(judged.map(({ item }) => item))];
  const names = [...new Set(judged.map(({ judge }) => judge))];
  const weights = items.map((item) => judged.find((one) => one.item === item && one.weight !== null)?.weight ?? weightOf(station, item));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  // In per cent of the items judged.
  const percents = weights.map((weight) => (100 * weight) / whole);
  const { judges, cut } = angoffCut(names.map((judge) => items.map((item) => judged.find((one) => one.judge === judge && one.item === item)!.share)), percents);
  return {
    method: "modified Angoff",
    cut: inRange(cut),
    errorBy: "standard deviation of the judges' cuts over the root of their number (MacCann and Stanley 2004)",
    warnings: [
      names.length < 2 ? "one judge only: no error can be told" : cut.value !== null && cut.standardError === null ? "all judges give the same cut: no error can be told" : null,
      boundlessWarning(cut),
      ofItems !== null && items.length < ofItems ? `${items.length} of the station's ${ofItems} items ${items.length === 1 ? "was" : "were"} judged: the cut is in per cent of these, and totals of all items are not held against it` : null,
    ].filter((warning) => warning !== null),
    judges: names.map((judge, place) => ({ judge, cut: judges[place]! })),
    items: items.length,
    ofItems,
  };
}

/** Whether cut and scores are per cent of the same. */
function ofAllItems({ items, ofItems }: AngoffReport): boolean {
  return ofItems === null || items >= ofItems;
}

function decisionOf(cuts: readonly (Cut | null)[], own: readonly Score[], error: Estimate): StationCut["decision"] {
  for (const found of cuts) {
    if (found === null || found.cut.value === null) continue;
    const { value, standardError } = found.cut;
    return { method: found.method, cut: value, standardError, below: own.filter(({ score }) => score < value).length, near: nearest(own, value, standardError, error.value) };
  }
  return null;
}

/** Who would pass or fail otherwise if the cut, or the score, were off by its standard error. */
function nearest(own: readonly { candidate: string; score: number }[], cut: number, cutError: number | null, measurementError: number | null): NearCandidate[] {
  return own
    .map(({ candidate, score }) => {
      const distance = score - cut;
      return { candidate, score, distance, withinCutError: cutError === null ? null : Math.abs(distance) <= cutError, withinMeasurementError: measurementError === null ? null : Math.abs(distance) <= measurementError };
    })
    .filter(({ withinCutError, withinMeasurementError }) => withinCutError === true || withinMeasurementError === true)
    .sort((a, b) => a.distance - b.distance);
}

/** The mean of the stations' cuts; its error from theirs as independent, as Hejri et al., Journal of Research in Medical Sciences 18 (2013) 887-891, averaged them. */
function examinationOf(stations: readonly StationCut[], scores: readonly Score[]): CutScoreReport["examination"] {
  if (stations.length < 2) return null;
  for (const method of ["borderline regression", "borderline group", "modified Angoff"] as const) {
    if (method === "modified Angoff" && stations.some(({ angoff }) => angoff !== null && !ofAllItems(angoff))) continue;
    const cuts = stations.map(({ regression, group, angoff }) => [regression, group, angoff].find((cut) => cut?.method === method)?.cut ?? null);
    if (!cuts.every((cut) => cut !== null && cut.value !== null)) continue;
    const known = cuts.map((cut) => cut as Extract<Estimate, { value: number }>);
    const errors = known.map(({ standardError }) => standardError);
    const error = errors.every((one) => one !== null) ? Math.sqrt(errors.reduce((sum, one) => sum + one ** 2, 0)) / stations.length : null;
    const value = mean(known.map((cut) => cut.value));
    const candidates = [...new Set(scores.map(({ candidate }) => candidate))].flatMap((candidate) => {
      const own = scores.filter((score) => score.candidate === candidate);
      return own.length === stations.length ? [{ candidate, score: mean(own.map(({ score }) => score)), scores: stations.map(({ station }) => own.find((score) => score.station === station)!.score) }] : [];
    });
    const study = generalizability(candidates.map((one) => one.scores));
    const errorOfMeasurement = "absoluteError" in study ? estimated(study.absoluteError, candidates.length) : study;
    return { method, cut: estimated(value, stations.length, error), below: candidates.filter(({ score }) => score < value).length, candidates: candidates.length, errorOfMeasurement, near: nearest(candidates, value, error, errorOfMeasurement.value) };
  }
  return null;
}
