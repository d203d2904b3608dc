import { marginals, type AgreementTable } from "./agreement-table.ts";
import { normalQuantile } from "./distributions.ts";
import { clamped, estimated, LEVEL, NO_VARIANCE, notMeasurable, ONE_UNIT, type Estimate } from "./estimate.ts";

/** 1 for full agreement, 0 for none, by place of the categories. */
export type AgreementWeights = (first: number, second: number, categories: number) => number;

export const unweighted: AgreementWeights = (first, second) => (first === second ? 1 : 0);
/** Steps apart, over the most that is possible (Cicchetti and Allison, American Journal of EEG Technology 11, 1971). */
export const linearWeights: AgreementWeights = (first, second, categories) => 1 - Math.abs(first - second) / (categories - 1);
/** Squared steps apart (Fleiss and Cohen, Educational and Psychological Measurement 33, 1973). */
export const quadraticWeights: AgreementWeights = (first, second, categories) => 1 - ((first - second) / (categories - 1)) ** 2;

/** Squared differences of the categories' own values, for a scale whose steps are not all used or not evenly apart. @param values by place of the categories */
export function squaredValueWeights(values: readonly number[]): AgreementWeights {
  const span = Math.max(...values) - Math.min(...values);
  return (first, second) => 1 - ((values[first]! - values[second]!) / span) ** 2;
}

/**
 * Cohen's kappa: agreement beyond what the two markers' own proportions would give by chance, at most 1.
 *
 * kappa = (po - pe) / (1 - pe), with po and pe weighted: J. Cohen, Educational and Psychological Measurement 20 (1960)
 * 37-46, formula 1; Psychological Bulletin 70 (1968) 213-220 with weights. Standard error for the interval by Fleiss,
 * Cohen and Everitt, Psychological Bulletin 72 (1969) 323-327, formula 13; the simpler one of the 1960 paper is
 * `cohenSimpleStandardError`. The interval is the normal one.
 */
export function cohenKappa(table: AgreementTable, weights: AgreementWeights = unweighted): Estimate {
  const { n, counts } = table;
  const size = counts.length;
  if (n < 2) return notMeasurable(n, n === 0 ? "nothing was marked by both" : ONE_UNIT);
  if (size < 2) return notMeasurable(n, "only one category was used: agreement beyond chance has no meaning");
  const { rows, columns } = marginals(table);
  const { observed, expected } = agreementOf(table, weights);
  if (1 - expected < NO_VARIANCE) return notMeasurable(n, "both used one and the same category throughout: agreement beyond chance has no meaning");
  const kappa = (observed - expected) / (1 - expected);
  const rowWeight = rows.map((_, i) => columns.reduce((sum, share, j) => sum + share * weights(i, j, size), 0));
  const columnWeight = columns.map((_, j) => rows.reduce((sum, share, i) => sum + share * weights(i, j, size), 0));
  let sum = 0;
  counts.forEach((row, i) =>
    row.forEach((count, j) => {
      sum += (count / n) * (weights(i, j, size) * (1 - expected) - (rowWeight[i]! + columnWeight[j]!) * (1 - observed)) ** 2;
    }),
  );
  const variance = (sum - (observed * expected - 2 * expected + observed) ** 2) / (n * (1 - expected) ** 4);
  const error = Math.sqrt(Math.max(0, variance));
  // With no disagreement at all (or an exact pattern) the large-sample error is nought, which is no certainty.
  if (error < NO_VARIANCE) return estimated(kappa, n);
  const z = normalQuantile(1 - (1 - LEVEL) / 2);
  return estimated(kappa, n, error, clamped(kappa - z * error, kappa + z * error, -1, 1));
}

/** sqrt(po (1 - po) / (n (1 - pe)^2)): Cohen 1960, formula 7; kept to check against that paper, too wide or narrow elsewhere. */
export function cohenSimpleStandardError(table: AgreementTable): number {
  const { observed, expected } = agreementOf(table, unweighted);
  return Math.sqrt((observed * (1 - observed)) / (table.n * (1 - expected) ** 2));
}

/** Weighted agreement observed and expected by chance, 0 to 1. */
export function agreementOf(table: AgreementTable, weights: AgreementWeights): { observed: number; expected: number } {
  const { rows, columns } = marginals(table);
  const size = rows.length;
  let observed = 0;
  let expected = 0;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      observed += (table.counts[i]![j]! / table.n) * weights(i, j, size);
      expected += rows[i]! * columns[j]! * weights(i, j, size);
    }
  }
  return { observed, expected };
}
