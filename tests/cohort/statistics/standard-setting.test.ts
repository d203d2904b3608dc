import { linearRegression as bySimpleStatistics, rSquared } from "simple-statistics";
import { expect, test } from "vitest";
import { angoffCut } from "../../../src/cohort/statistics/angoff.ts";
import { borderlineGroup } from "../../../src/cohort/statistics/borderline-group.ts";
import { linearRegression, type LinearRegression } from "../../../src/cohort/statistics/linear-regression.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";
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

test("modified Angoff: weighted sums of the judges' shares, sd / sqrt(judges)", () => {
  // Invented: three judges, cuts of 2.0, 2.5 and 3.0 marks of 4: mean 2.5, sd 0.5, error 0.5 / sqrt(3).
  const { judges, cut } = angoffCut([[0.5, 0.5, 0.5], [0.5, 0.5, 0.75], [0.5, 1, 0.75]], [1, 1, 2]);
  expect(judges).toEqual([2, 2.5, 3]);
  expect([printed(cut, 2), error(cut, 4)]).toEqual(["2.50", (0.5 / Math.sqrt(3)).toFixed(4)]);
  expect(angoffCut([[0.5, 0.5, 0.5]], [1, 1, 2]).cut).toMatchObject({ value: 2, standardError: null });
});
