import { tQuantile } from "./distributions.ts";
import { around, LEVEL, notMeasurable, type Estimate, type NotMeasurable } from "./estimate.ts";
import { mean, standardDeviation } from "./moments.ts";

/** 95% of normal differences lie within this many standard deviations; the 1986 paper rounds it to 2. */
const LIMITS = 1.96;

export interface LimitsOfAgreement {
  n: number;
  /** Mean of first minus second, with its interval: the bias. */
  bias: Estimate;
  /** Standard deviation of the differences. */
  standardDeviation: number;
  /** Between these two lie about 95% of differences. */
  lower: Estimate;
  upper: Estimate;
}

/**
 * Limits of agreement of two markers' totals: J. M. Bland and D. G. Altman, Lancet 327 (1986) 307-310. Mean difference
 * and mean difference -/+ 1.96 standard deviations; standard error of the mean sd / sqrt(n), of a limit about
 * sqrt(3 sd^2 / n); intervals by t with n - 1 degrees of freedom. In the totals' own unit.
 * @param multiplier 1.96, or the 2 of the paper
 */
export function limitsOfAgreement(pairs: readonly (readonly [number, number])[], multiplier = LIMITS): LimitsOfAgreement | NotMeasurable {
  const n = pairs.length;
  if (n < 2) return notMeasurable(n, "fewer than two pairs of totals");
  const differences = pairs.map(([first, second]) => first - second);
  const middle = mean(differences);
  const spread = standardDeviation(differences);
  const t = tQuantile(1 - (1 - LEVEL) / 2, n - 1);
  const limitError = Math.sqrt((3 * spread ** 2) / n);
  return {
    n,
    bias: around(middle, n, spread / Math.sqrt(n), t),
    standardDeviation: spread,
    lower: around(middle - multiplier * spread, n, limitError, t),
    upper: around(middle + multiplier * spread, n, limitError, t),
  };
}
