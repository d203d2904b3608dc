import { binomialAtMost, tQuantile } from "./distributions.ts";
import { around, estimated, LEVEL, notMeasurable, type Estimate, type Interval } from "./estimate.ts";
import { mean, median, standardDeviation } from "./moments.ts";

/**
 * Borderline group: the cut is the middle of the scores of those whom the examiners rated borderline (Livingston and
 * Zieky, Passing Scores, 1982). The mean has the standard error sd / sqrt(n) and a t interval; the median an interval
 * between two of the scores by the binomial (distribution-free).
 */
export function borderlineGroup(scores: readonly number[]): { mean: Estimate; median: Estimate } {
  const n = scores.length;
  if (n === 0) return { mean: notMeasurable(0, "nobody was rated borderline"), median: notMeasurable(0, "nobody was rated borderline") };
  if (n === 1) return { mean: notMeasurable(1, "only one candidate was rated borderline"), median: notMeasurable(1, "only one candidate was rated borderline") };
  const error = standardDeviation(scores) / Math.sqrt(n);
  const t = tQuantile(1 - (1 - LEVEL) / 2, n - 1);
  const middle = mean(scores);
  return {
    mean: around(middle, n, error, t),
    median: estimated(median(scores), n, null, medianInterval(scores)),
  };
}

/** The rth smallest and rth largest with the largest r that still keeps the level; null where the group is too small. */
function medianInterval(scores: readonly number[]): Interval | null {
  const sorted = [...scores].sort((a, b) => a - b);
  const n = sorted.length;
  let rank = 0;
  while (rank < n / 2 && binomialAtMost(rank, n, 0.5) <= (1 - LEVEL) / 2) rank += 1;
  return rank === 0 ? null : { low: sorted[rank - 1]!, high: sorted[n - rank]!, level: LEVEL };
}
