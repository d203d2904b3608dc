import { agreed, marginals, type AgreementTable } from "./agreement-table.ts";
import { chanceCorrected, type ChanceModel } from "./chance-corrected.ts";
import { estimated, notMeasurable, ONE_UNIT, type Estimate } from "./estimate.ts";

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
export function gwetAc1(counts: readonly (readonly number[])[], clusters?: readonly number[]): Estimate {
  return chanceCorrected(counts, CHANCE, clusters);
}

/** The same value from a table of two markers, without an interval: quick enough to be drawn a thousand times. */
export function gwetAc1OfTable(table: AgreementTable): Estimate {
  if (table.n === 0) return notMeasurable(0, "nothing was marked by both");
  if (table.n === 1) return notMeasurable(1, ONE_UNIT);
  const { rows, columns } = marginals(table);
  const expected = CHANCE.expected(rows.map((row, k) => (row + columns[k]!) / 2));
  return estimated((agreed(table) / table.n - expected) / (1 - expected), table.n);
}
