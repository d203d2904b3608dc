import { normalQuantile } from "./distributions.ts";
import { estimated, LEVEL, NO_VARIANCE, notMeasurable, type Estimate } from "./estimate.ts";
import { mean, sumOfSquares } from "./moments.ts";

/** Pearson's correlation, -1 to 1, with Fisher's z interval (R. A. Fisher, Metron 1 (1921) 3-32). */
export function correlation(first: readonly number[], second: readonly number[]): Estimate {
  const n = first.length;
  if (n < 3) return notMeasurable(n, "fewer than three candidates");
  const [a, b] = [sumOfSquares(first), sumOfSquares(second)];
  if (a < NO_VARIANCE || b < NO_VARIANCE) return notMeasurable(n, "one of the two does not vary");
  const [middleA, middleB] = [mean(first), mean(second)];
  const product = first.reduce((sum, value, i) => sum + (value - middleA) * (second[i]! - middleB), 0);
  const r = Math.min(1, Math.max(-1, product / Math.sqrt(a * b)));
  if (n < 4 || Math.abs(r) > 1 - NO_VARIANCE) return estimated(r, n);
  const z = Math.atanh(r);
  const half = normalQuantile(1 - (1 - LEVEL) / 2) / Math.sqrt(n - 3);
  return estimated(r, n, null, { low: Math.tanh(z - half), high: Math.tanh(z + half), level: LEVEL });
}

/**
 * Corrected item-total correlation: of an item's marks with the total of all other items, so that the item does not
 * correlate with itself (S. Henrysson, Psychometrika 28 (1963) 211-218, from memory).
 * @param marks `marks[candidate][item]`, complete
 */
export function correctedItemTotal(marks: readonly (readonly number[])[], item: number): Estimate {
  const own = marks.map((row) => row[item]!);
  if (own.length >= 1 && own.every((mark) => mark === own[0])) return notMeasurable(own.length, "all have the same mark for it");
  const rest = marks.map((row) => row.reduce((sum, mark, index) => (index === item ? sum : sum + mark), 0));
  if (rest.length >= 1 && rest.every((total) => Math.abs(total - rest[0]!) < NO_VARIANCE)) return notMeasurable(own.length, "all have the same total of the other items");
  return correlation(own, rest);
}
