import { expect, test } from "vitest";
import { drawnInterval } from "../../../src/cohort/statistics/drawn-interval.ts";
import { mean, standardDeviation } from "../../../src/cohort/statistics/moments.ts";

const units = (...values: number[]) => values.map((value) => Float64Array.of(value));
const meanOf = (of: number) => (sum: Float64Array) => sum[0]! / of;
const VALUES = Array.from({ length: 50 }, (_, i) => (i * 37) % 50);

test("the mean of fifty values varies over the draws as the textbook's standard error says, sd / sqrt(n), within a tenth", () => {
  const { standardError, interval } = drawnInterval(units(...VALUES), meanOf(50))!;
  const expected = standardDeviation(VALUES) / Math.sqrt(50);
  expect(Math.abs(standardError / expected - 1)).toBeLessThan(0.1);
  // 2.5% and 97.5% of a distribution that is nearly normal.
  expect(Math.abs(interval.low - (mean(VALUES) - 1.96 * expected))).toBeLessThan(0.5);
  expect(Math.abs(interval.high - (mean(VALUES) + 1.96 * expected))).toBeLessThan(0.5);
});

test("the same data give the same interval", () => {
  expect(drawnInterval(units(...VALUES), meanOf(50))).toEqual(drawnInterval(units(...VALUES), meanOf(50)));
});

test("units that are all alike tell nothing of how they vary, nor does a statistic that most draws do not have", () => {
  expect(drawnInterval(units(3, 3, 3, 3), meanOf(4))).toBeNull();
  expect(drawnInterval(units(...VALUES), (sum) => (sum[0]! > 50 * mean(VALUES) + 25 ? sum[0]! : null))).toBeNull();
});
