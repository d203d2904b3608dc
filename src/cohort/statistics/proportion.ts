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
