import { calibration } from "./weights.ts";

/** The model's marginals are cut off here before the logarithm: beyond, they say nothing more. */
const CLOSEST = 1e-4;
/** No sentence is surer than this without a label. */
const SUREST = 0.995;

/**
 * A sentence's confidence from the mean of its words' marginals: logistic (Platt) calibration, fitted on held-out
 * folds by `npm run train:roles`; the reliability table is in tests/bench/results/roles.md.
 */
export function calibrated(mean: number): number {
  const { slope, intercept } = calibration();
  const p = Math.min(1 - CLOSEST, Math.max(CLOSEST, mean));
  return Math.min(SUREST, 1 / (1 + Math.exp(-(intercept + slope * Math.log(p / (1 - p))))));
}
