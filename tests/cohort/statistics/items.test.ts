import { sampleCorrelation, sampleVariance } from "simple-statistics";
import { expect, test } from "vitest";
import { correctedItemTotal, correlation } from "../../../src/cohort/statistics/correlation.ts";
import { cronbachAlpha, isDichotomous, standardErrorOfMeasurement } from "../../../src/cohort/statistics/cronbach-alpha.ts";
import { estimated } from "../../../src/cohort/statistics/estimate.ts";
import { proportion, proportionDifference } from "../../../src/cohort/statistics/proportion.ts";
import { variance } from "../../../src/cohort/statistics/moments.ts";
import { interval, printed } from "./figures.ts";

/**
 * K. L. Wuensch, "The Kuder-Richardson 20" (East Carolina University, KR20.txt): ten students, ten items. The page prints
 * the p q of each item and the totals' variance, 5.84; by its formula KR-20 is 10/9 (1 - 2.18 / 5.84) = .696.
 */
const QUIZ = ["1111110110", "1011011101", "1111011001", "0010001000", "0000010010", "1110111111", "1101110111", "1111111101", "0101111101", "1101101110"].map((row) => [...row].map(Number));

test("Wuensch's ten students: variance of totals 5.84 by n, KR-20 .696", () => {
  const totals = QUIZ.map((row) => row.reduce((sum, mark) => sum + mark, 0));
  expect(totals).toEqual([8, 7, 7, 2, 2, 9, 8, 9, 7, 7]);
  expect(((variance(totals) * 9) / 10).toFixed(2)).toBe("5.84");
  expect(isDichotomous(QUIZ, Array<number>(10).fill(1))).toBe(true);
  expect(printed(cronbachAlpha(QUIZ), 3)).toBe(((10 / 9) * (1 - 2.18 / 5.84)).toFixed(3));
});

test("the error of measurement is the spread of totals times the root of what is not reliable", () => {
  expect(printed(standardErrorOfMeasurement([0, 10], estimated(0.75, 2)), 4)).toBe((Math.sqrt(50) / 2).toFixed(4));
  expect(printed(standardErrorOfMeasurement([0, 10], estimated(-0.5, 2)), 4)).toBe(Math.sqrt(50).toFixed(4));
});

test("simple-statistics finds the same variance, correlation and corrected item-total correlation", () => {
  const own = QUIZ.map((row) => row[4]!);
  const rest = QUIZ.map((row) => row.reduce((sum, mark, item) => (item === 4 ? sum : sum + mark), 0));
  expect(variance(rest)).toBeCloseTo(sampleVariance(rest), 12);
  expect(correlation(own, rest).value).toBeCloseTo(sampleCorrelation(own, rest), 12);
  expect(correctedItemTotal(QUIZ, 4).value).toBeCloseTo(sampleCorrelation(own, rest), 12);
});

test("an item that all earn has no correlation, and equal totals have no alpha", () => {
  const all = [[1, 0], [1, 1], [1, 0]];
  expect(correctedItemTotal(all, 0)).toMatchObject({ value: null, why: "all have the same mark for it" });
  expect(cronbachAlpha([[1, 0], [0, 1]])).toMatchObject({ value: null, why: "all candidates have the same total" });
  expect(cronbachAlpha([[1, 0]])).toMatchObject({ value: null });
});

// R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3; 873-890, table II, method 10. From memory.
test("Newcombe 1998: Wilson's limits of 81/263, 15/148, 0/20 and 1/29", () => {
  expect(interval(proportion(81, 263), 4)).toEqual(["0.2553", "0.3662"]);
  expect(interval(proportion(15, 148), 4)).toEqual(["0.0624", "0.1605"]);
  expect(interval(proportion(0, 20), 4)).toEqual(["0.0000", "0.1611"]);
  expect(interval(proportion(1, 29), 4)).toEqual(["0.0061", "0.1718"]);
});

test("Newcombe 1998: limits of the difference of 56/70 and 48/80, 9/10 and 3/10", () => {
  expect(interval(proportionDifference({ successes: 56, n: 70 }, { successes: 48, n: 80 }), 4)).toEqual(["0.0524", "0.3339"]);
  expect(interval(proportionDifference({ successes: 9, n: 10 }, { successes: 3, n: 10 }), 4)).toEqual(["0.1705", "0.8090"]);
});
