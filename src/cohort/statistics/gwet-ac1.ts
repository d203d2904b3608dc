import { chanceCorrected, type ChanceModel } from "./chance-corrected.ts";
import type { Estimate } from "./estimate.ts";

/** pe = sum of share (1 - share), over categories - 1: Gwet 2008, formula 5. */
const CHANCE: ChanceModel = {
  expected: (shares) => shares.reduce((sum, share) => sum + share * (1 - share), 0) / (shares.length - 1),
  unitExpected: (unit, shares) => unit.reduce((sum, own, k) => sum + own * (1 - shares[k]!), 0) / (shares.length - 1),
};

/**
 * Gwet's AC1: agreement beyond chance for two or more markers, steady where one category is very common and kappa is
 * not. K. L. Gwet, British Journal of Mathematical and Statistical Psychology 61 (2008) 29-48.
 * @param counts `counts[unit][category]`; all categories that could have been used, since their number enters
 */
export function gwetAc1(counts: readonly (readonly number[])[]): Estimate {
  return chanceCorrected(counts, CHANCE);
}
