import { tQuantile } from "./distributions.ts";
import { clamped, estimated, LEVEL, NO_VARIANCE, notMeasurable, type Estimate } from "./estimate.ts";
import { wilsonInterval } from "./proportion.ts";

/** Counts of one cluster: how many of its units have the property. */
export interface Cluster {
  having: number;
  of: number;
}

/**
 * A share of units that come in clusters (marks in rehearsals): the ratio of the sums, with the standard error of the
 * ratio over clusters (W. G. Cochran, Sampling Techniques, 3rd edition (1977), section 3.12) and a t interval. Where no
 * cluster differs from the others, Wilson's interval with the clusters as the count, which claims less.
 */
export function clusteredProportion(clusters: readonly Cluster[]): Estimate {
  const used = clusters.filter(({ of }) => of > 0);
  const units = used.reduce((sum, { of }) => sum + of, 0);
  if (units === 0) return notMeasurable(0, "nothing to count");
  const share = used.reduce((sum, { having }) => sum + having, 0) / units;
  const n = used.length;
  if (n < 2) return estimated(share, units);
  const squares = used.reduce((sum, { having, of }) => sum + (having - share * of) ** 2, 0);
  const error = Math.sqrt((n / (n - 1)) * squares) / units;
  if (error < NO_VARIANCE) return estimated(share, units, null, wilsonInterval(share * n, n));
  const t = tQuantile(1 - (1 - LEVEL) / 2, n - 1);
  return estimated(share, units, error, clamped(share - t * error, share + t * error, 0, 1));
}

/**
 * First minus second; t interval with Welch's degrees of freedom over the clusters (B. L. Welch, Biometrika 34 (1947)
 * 28-35), because a small group's error is itself uncertain. None where one of them has no error.
 */
export function clusteredDifference(first: readonly Cluster[], second: readonly Cluster[]): Estimate {
  const [a, b] = [clusteredProportion(first), clusteredProportion(second)];
  if (a.value === null || b.value === null) return notMeasurable(0, "one of the groups is empty");
  const n = a.n + b.n;
  const difference = a.value - b.value;
  if (a.standardError === null || b.standardError === null) return estimated(difference, n);
  const [u, v] = [a.standardError ** 2, b.standardError ** 2];
  const size = (clusters: readonly Cluster[]) => clusters.filter(({ of }) => of > 0).length;
  const df = (u + v) ** 2 / (u ** 2 / (size(first) - 1) + v ** 2 / (size(second) - 1));
  const half = tQuantile(1 - (1 - LEVEL) / 2, df) * Math.sqrt(u + v);
  return estimated(difference, n, Math.sqrt(u + v), clamped(difference - half, difference + half, -1, 1));
}
