import { estimated, notMeasurable, type Estimate } from "./estimate.ts";

/**
 * Standard error of one candidate's per cent total from the items alone, where no cohort tells it: the items are taken
 * as a sample of what could have been asked. F. M. Lord, Educational and Psychological Measurement 15 (1955) 325-336:
 * sqrt(x (n - x) / (n - 1)) for x of n items; in per cent, with n the number of equal items that weighs the same,
 * (sum of weights)^2 / sum of squared weights (L. Kish, Survey Sampling, 1965). A share of none or all is moved in by
 * half an item, since no error at all would be untrue.
 * @param marks earned and full marks of the items that count
 */
export function binomialError(marks: readonly { earned: number; weight: number }[]): Estimate {
  const weights = marks.reduce((sum, { weight }) => sum + weight, 0);
  const n = weights ** 2 / marks.reduce((sum, { weight }) => sum + weight ** 2, 0);
  if (marks.length < 2 || n < 2) return notMeasurable(marks.length, "fewer than two items count");
  const share = marks.reduce((sum, { earned }) => sum + earned, 0) / weights;
  const inside = Math.min(1 - 0.5 / n, Math.max(0.5 / n, share));
  return estimated(100 * Math.sqrt((inside * (1 - inside)) / (n - 1)), marks.length);
}
