import { tQuantile } from "./distributions.ts";
import { around, estimated, LEVEL, notMeasurable, type Estimate } from "./estimate.ts";
import { mean, standardDeviation } from "./moments.ts";

export interface AngoffCut {
  /** Each judge's own cut, in the unit of the weights' sum. */
  judges: number[];
  cut: Estimate;
}

/**
 * Modified Angoff: each judge says for each item what share of borderline candidates would earn it; a judge's cut is
 * the weighted sum, the cut is the mean over judges (W. H. Angoff, in Educational Measurement, 2nd edition, 1971).
 * Standard error across judges sd / sqrt(judges), as R. G. MacCann and G. Stanley, Practical Assessment, Research and
 * Evaluation 9 (2004) no. 5, "central limit theorem method"; it holds for judgements made without talk.
 * @param shares `shares[judge][item]`, 0 to 1
 * @param weights marks of each item
 */
export function angoffCut(shares: readonly (readonly number[])[], weights: readonly number[]): AngoffCut {
  const judges = shares.map((row) => row.reduce((sum, share, item) => sum + share * weights[item]!, 0));
  const n = judges.length;
  if (n === 0) return { judges, cut: notMeasurable(0, "there are no judges") };
  if (n === 1) return { judges, cut: estimated(judges[0]!, 1) };
  const middle = mean(judges);
  const error = standardDeviation(judges) / Math.sqrt(n);
  const t = tQuantile(1 - (1 - LEVEL) / 2, n - 1);
  return { judges, cut: around(middle, n, error, t) };
}
