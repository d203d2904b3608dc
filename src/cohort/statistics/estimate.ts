/** A range that holds the true value in `level` of all samples (0.95: in 95 of 100). Same unit as the value. */
export interface Interval {
  low: number;
  high: number;
  level: number;
}

/** A figure computed from `n` observations. Standard error and interval are null where no method gives them. */
export interface Estimated {
  value: number;
  n: number;
  standardError: number | null;
  interval: Interval | null;
}

/** What cannot be computed is never printed as a number: `why` is a clause such as "nobody differed". */
export interface NotMeasurable {
  value: null;
  n: number;
  why: string;
}

export type Estimate = Estimated | NotMeasurable;

/** One unit agrees or does not: no measure beyond chance can be had of it. */
export const ONE_UNIT = "only one unit was marked by both";

/** Used for every interval: the custom of the trade. */
export const LEVEL = 0.95;

export function estimated(value: number, n: number, standardError: number | null = null, interval: Interval | null = null): Estimated {
  return { value, n, standardError, interval };
}

export function notMeasurable(n: number, why: string): NotMeasurable {
  return { value: null, n, why };
}

/** The interval kept inside what the statistic can be. */
export function clamped(low: number, high: number, least: number, most: number): Interval {
  return { low: Math.min(most, Math.max(least, low)), high: Math.min(most, Math.max(least, high)), level: LEVEL };
}

/**
 * A value with its standard error and the interval that many errors wide on either side. Data that do not vary at all (every score on
 * the line, judges who say the same) give an error of nought: that is chance, not certainty, so neither is given then.
 */
export function around(value: number, n: number, error: number, times: number): Estimated {
  if (error < NO_VARIANCE) return estimated(value, n);
  return estimated(value, n, error, { low: value - times * error, high: value + times * error, level: LEVEL });
}

/** Differences of rounding below this are no variance: sums of marks carry errors of about 1e-13. */
export const NO_VARIANCE = 1e-9;
