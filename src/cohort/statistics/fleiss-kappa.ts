import { chanceCorrected, type ChanceModel } from "./chance-corrected.ts";
import type { Estimate } from "./estimate.ts";

/** pe = sum of squared shares: Fleiss 1971, formula 4. */
const CHANCE: ChanceModel = {
  expected: (shares) => shares.reduce((sum, share) => sum + share ** 2, 0),
  unitExpected: (unit, shares) => unit.reduce((sum, own, k) => sum + own * shares[k]!, 0),
};

/**
 * Fleiss' kappa: agreement beyond chance for two or more markers. J. L. Fleiss, Psychological Bulletin 76 (1971)
 * 378-382. Its standard error here is Gwet's (see chanceCorrected), which holds for any true value and missing marks;
 * the one of the 1971 paper holds only where there is no agreement beyond chance.
 * @param counts `counts[unit][category]`
 */
export function fleissKappa(counts: readonly (readonly number[])[], clusters?: readonly number[]): Estimate {
  return chanceCorrected(counts, CHANCE, clusters);
}
