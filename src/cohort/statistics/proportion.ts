import { normalQuantile } from "./distributions.ts";
import { clamped, estimated, LEVEL, notMeasurable, type Estimate, type Interval } from "./estimate.ts";

/**
 * Wilson's score interval of a proportion: E. B. Wilson, Journal of the American Statistical Association 22 (1927)
 * 209-212. It stays inside 0 to 1 and holds for small groups, where the plain normal interval does not.
 */
export function wilsonInterval(successes: number, n: number): Interval {
  const z = normalQuantile(1 - (1 - LEVEL) / 2);
  const p = successes / n;
  const middle = (p + z ** 2 / (2 * n)) / (1 + z ** 2 / n);
  const half = (z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2))) / (1 + z ** 2 / n);
  return clamped(middle - half, middle + half, 0, 1);
}

/** A proportion, 0 to 1, with its binomial standard error and Wilson's interval. */
export function proportion(successes: number, n: number): Estimate {
  if (n === 0) return notMeasurable(0, "nothing to count");
  const p = successes / n;
  return estimated(p, n, Math.sqrt((p * (1 - p)) / n), wilsonInterval(successes, n));
}

/**
 * The difference of two independent proportions, first minus second, with Newcombe's interval (method 10): R. G.
 * Newcombe, Statistics in Medicine 17 (1998) 873-890.
 */
export function proportionDifference(first: { successes: number; n: number }, second: { successes: number; n: number }): Estimate {
  if (first.n === 0 || second.n === 0) return notMeasurable(first.n + second.n, "one of the groups is empty");
  const [p1, p2] = [first.successes / first.n, second.successes / second.n];
  const [a, b] = [wilsonInterval(first.successes, first.n), wilsonInterval(second.successes, second.n)];
  const difference = p1 - p2;
  const low = difference - Math.hypot(p1 - a.low, b.high - p2);
  const high = difference + Math.hypot(a.high - p1, p2 - b.low);
  const error = Math.sqrt((p1 * (1 - p1)) / first.n + (p2 * (1 - p2)) / second.n);
  return estimated(difference, first.n + second.n, error, clamped(low, high, -1, 1));
}
