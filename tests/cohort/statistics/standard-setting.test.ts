import { linearRegression as bySimpleStatistics, rSquared } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { angoffCut } from "../../../src/cohort/statistics/angoff.ts";
import { borderlineGroup } from "../../../src/cohort/statistics/borderline-group.ts";
import { linearRegression, type LinearRegression } from "../../../src/cohort/statistics/linear-regression.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";
import { fiveGrades, fourGrades } from "../graded-scores.ts";
import { error, interval, printed } from "./figures.ts";

function line(x: number[], y: number[]): LinearRegression {
  const found = linearRegression(x, y);
  if (!("slope" in found)) throw new Error(found.why);
  return found;
}

/** NIST, Statistical Reference Datasets, "Norris": calibration of ozone monitors, 36 observations. */
const X = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];
const Y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];

test("NIST StRD Norris: certified intercept, slope, their errors, residual and R squared", () => {
  const found = line(X, Y);
  expect(found.intercept.value).toBeCloseTo(-0.262323073774029, 10);
  expect(found.slope.value).toBeCloseTo(1.00211681802045, 12);
  expect(found.intercept.standardError).toBeCloseTo(0.232818234301152, 10);
  expect(found.slope.standardError).toBeCloseTo(0.429796848199937e-3, 12);
  expect(found.residual).toBeCloseTo(0.884796396144373, 10);
  expect(found.rSquared).toBeCloseTo(0.999993745883712, 12);
});

test("simple-statistics finds the same line and R squared", () => {
  const points = X.map((x, i) => [x, Y[i]!]);
  const other = bySimpleStatistics(points);
  const found = line(X, Y);
  expect(found.slope.value).toBeCloseTo(other.m, 10);
  expect(found.intercept.value).toBeCloseTo(other.b, 8);
  expect(found.rSquared).toBeCloseTo(rSquared(points, (x) => other.m * x + other.b), 10);
});

test("the error of the line's height is what resampling of candidates finds, within a tenth", () => {
  // Invented scores of 200 candidates with even noise; resampling as Homer et al., Medical Teacher 38 (2016) 181-188, did.
  const random = seededRandom(7);
  const ratings = Array.from({ length: 200 }, () => 1 + Math.floor(random() * 5));
  const scores = ratings.map((rating) => 30 + 10 * rating + 12 * (random() + random() + random() - 1.5));
  const heights = Array.from({ length: 2000 }, () => {
    const drawn = ratings.map(() => Math.floor(random() * ratings.length));
    return line(drawn.map((i) => ratings[i]!), drawn.map((i) => scores[i]!)).at(2).value;
  });
  const middle = heights.reduce((sum, height) => sum + height, 0) / heights.length;
  const spread = Math.sqrt(heights.reduce((sum, height) => sum + (height - middle) ** 2, 0) / (heights.length - 1));
  const stated = line(ratings, scores).at(2).standardError!;
  expect(Math.abs(stated / spread - 1)).toBeLessThan(0.1);
});

/*
 * Data published by M. Roberts 2018 (source in graded-scores.ts), which prints no result. Computed: slope, intercept, cut,
 * R squared, leverage and residual variance as exact fractions from the counts; the standard errors and the 95 % interval by R 4.2.2,
 * summary(lm) and predict.lm(se.fit = TRUE, interval = "confidence").
 */
describe.each([
  { name: "five grades", graded: fiveGrades, sums: [70, 235, 1103], slope: 3417 / 1205, intercept: 7516 / 1205, cut: 2870 / 241, explained: 3891963 / 5279587, variance: 74337 / 20485, leverage: 43 / 1205, errors: [0.205331237902455, 0.725955553551271, 0.359853089281669], limits: [11.1906380334054, 12.6267893524867] },
  { name: "four grades", graded: fourGrades, sums: [70, 193, 975], slope: 10765 / 3421, intercept: 17969 / 3421, cut: 39499 / 3421, explained: 23177045 / 32598709, variance: 168244 / 58157, leverage: 89 / 3421, errors: [0.243299534333482, 0.700939160182378, 0.27433881666949], limits: [10.9986045844842, 12.0934737551826] },
])("published borderline data of 70 candidates, $name", ({ graded, sums, slope, intercept, cut, explained, variance, leverage, errors, limits }) => {
  const found = line(graded.map(({ rating }) => rating), graded.map(({ score }) => score));

  test("the counts give back the example's number of candidates, sum of grades and sum of scores", () => {
    const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
    expect([graded.length, sum(graded.map(({ rating }) => rating)), sum(graded.map(({ score }) => score))]).toEqual(sums);
  });

  test("line, cut at grade 2, R squared and residual are the exact fractions", () => {
    expect(found.slope.value).toBeCloseTo(slope, 12);
    expect(found.intercept.value).toBeCloseTo(intercept, 12);
    expect(found.at(2).value).toBeCloseTo(cut, 12);
    expect(found.rSquared).toBeCloseTo(explained, 12);
    expect(found.residual).toBeCloseTo(Math.sqrt(variance), 12);
  });

  test("the cut's standard error is the residual times the root of 1/n + (2 - mean)^2 / Sxx, and R's lm and predict find it and the interval too", () => {
    expect(found.at(2).standardError).toBeCloseTo(Math.sqrt(variance * leverage), 12);
    expect([found.slope.standardError, found.intercept.standardError, found.at(2).standardError]).toEqual(errors.map((figure) => expect.closeTo(figure, 12)));
    // Six digits: jstat's quantile of t differs from R's in the ninth.
    expect(found.at(2).interval).toMatchObject({ low: expect.closeTo(limits[0]!, 6), high: expect.closeTo(limits[1]!, 6) });
  });
});

test("ratings all alike have no line", () => {
  expect(linearRegression([2, 2, 2], [1, 5, 9])).toMatchObject({ value: null });
});

test("borderline group: mean with sd / sqrt(n), and a median between two scores", () => {
  // Invented. Ranks of the distribution-free interval of a median of ten: 2nd and 9th (Conover, Practical Nonparametric Statistics; from memory).
  const { mean, median } = borderlineGroup([10, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  expect([printed(mean, 2), error(mean, 4)]).toEqual(["5.50", "0.9574"]);
  expect(printed(median, 1)).toBe("5.5");
  expect(interval(median, 0)).toEqual(["2", "9"]);
  expect(borderlineGroup([]).mean.value).toBeNull();
  expect(borderlineGroup([4]).median.value).toBeNull();
});

test("borderline group of the published data: R's t.test of those with grade 2", () => {
  // Data of M. Roberts 2018 (graded-scores.ts), no result printed there; mean, error and 95 % interval by R 4.2.2, t.test.
  const group = (graded: typeof fiveGrades) => borderlineGroup(graded.flatMap(({ rating, score }) => (rating === 2 ? [score] : [])));
  const five = group(fiveGrades);
  expect(five.mean).toMatchObject({ n: 10, value: 12.5, standardError: expect.closeTo(0.5, 12), interval: { low: expect.closeTo(11.3689214186009, 6), high: expect.closeTo(13.6310785813991, 6) } });
  // 2nd and 9th of ten, as above.
  expect(five.median).toMatchObject({ value: 12.5, interval: { low: 11, high: 14 } });
  const four = group(fourGrades);
  expect(four.mean).toMatchObject({ n: 20, value: 12, standardError: expect.closeTo(0.362738125055006, 12), interval: { low: expect.closeTo(11.2407803788089, 6), high: expect.closeTo(12.7592196211911, 6) } });
  expect(four.median.value).toBe(12);
});

test("modified Angoff: weighted sums of the judges' shares, sd / sqrt(judges)", () => {
  // Invented: three judges, cuts of 2.0, 2.5 and 3.0 marks of 4: mean 2.5, sd 0.5, error 0.5 / sqrt(3).
  const { judges, cut } = angoffCut([[0.5, 0.5, 0.5], [0.5, 0.5, 0.75], [0.5, 1, 0.75]], [1, 1, 2]);
  expect(judges).toEqual([2, 2.5, 3]);
  expect([printed(cut, 2), error(cut, 4)]).toEqual(["2.50", (0.5 / Math.sqrt(3)).toFixed(4)]);
  expect(angoffCut([[0.5, 0.5, 0.5]], [1, 1, 2]).cut).toMatchObject({ value: 2, standardError: null });
});

/*
 * A differential, no authority: the test of an anonymous public program for school grading states these cuts as those of a
 * spreadsheet not published with it (github.com/maechorom31-pixel/grade, test/cutscore.golden.test.js, commit 2ae6987; in its
 * listed files no licence, no publication named behind it). It has one judgement for each item and boundary, so the rows are
 * boundaries, not judges: only the weighted sums are compared; a mean and an error across them would mean nothing.
 */
test.each([
  { set: "six groups of items", marks: [24, 28.8, 27.2, 4, 10, 6], percents: [[75, 70, 60, 75, 70, 65], [65, 65, 55, 70, 65, 60], [65, 60, 50, 65, 60, 55], [60, 55, 45, 60, 55, 50], [55, 50, 40, 55, 50, 45]], cuts: [68.38, 62.18, 58.38, 53.38, 48.38] },
  { set: "four groups of items", marks: [10.4, 37.6, 32, 20], percents: [[90, 80, 65, 60], [40, 30, 20, 10]], cuts: [72.24, 23.84] },
])("weighted Angoff sums agree with another program's, $set", ({ marks, percents, cuts }) => {
  const { judges } = angoffCut(percents.map((row) => row.map((percent) => percent / 100)), marks);
  expect(judges).toEqual(cuts.map((cut) => expect.closeTo(cut, 10)));
});
