import { FEWEST_CLUSTERS } from "./clustered-interval.ts";
import { tQuantile } from "./distributions.ts";
import { clamped, estimated, LEVEL, NO_VARIANCE, notMeasurable, type Estimate } from "./estimate.ts";

/** How likely chance agreement is held to be, from the categories' shares; `unitExpected` holds one unit's own shares against those of all. */
export interface ChanceModel {
  expected(shares: readonly number[]): number;
  unitExpected(unitShares: readonly number[], shares: readonly number[]): number;
}

/**
 * The frame of chance-corrected coefficients for two or more markers, missing marks allowed, with the linearised
 * standard error that treats the units as a sample (and the markers as given): K. L. Gwet, Handbook of Inter-Rater
 * Reliability, 4th edition (2014), chapters 2 and 5; British Journal of Mathematical and Statistical Psychology 61
 * (2008) 29-48. Interval by t, degrees of freedom one less than
 * units or clusters.
 * @param counts `counts[unit][category]`: how many markers put the unit there; every unit has at least one mark
 * @param clusters of each unit, where units hang together (items of one rehearsal): then whole clusters are the sample
 */
export function chanceCorrected(counts: readonly (readonly number[])[], model: ChanceModel, clusters?: readonly number[]): Estimate {
  const n = counts.length;
  const totals = counts.map((unit) => unit.reduce((sum, count) => sum + count, 0));
  const paired = totals.filter((total) => total >= 2).length;
  if (paired === 0) return notMeasurable(n, "no unit was marked by two or more");
  if (paired === 1) return notMeasurable(n, "only one unit was marked by two or more");
  const size = counts[0]!.length;
  if (size < 2) return notMeasurable(n, "only one category was used: agreement beyond chance has no meaning");
  const unitShares = counts.map((unit, i) => unit.map((count) => count / totals[i]!));
  const shares = Array.from({ length: size }, (_, k) => unitShares.reduce((sum, unit) => sum + unit[k]!, 0) / n);
  const unitAgreement = counts.map((unit, i) => {
    const total = totals[i]!;
    return total < 2 ? null : unit.reduce((sum, count) => sum + count * (count - 1), 0) / (total * (total - 1));
  });
  const observed = unitAgreement.reduce<number>((sum, share) => sum + (share ?? 0), 0) / paired;
  const expected = model.expected(shares);
  if (1 - expected < NO_VARIANCE) return notMeasurable(n, "all used one and the same category throughout: agreement beyond chance has no meaning");
  const value = (observed - expected) / (1 - expected);
  const leverage = unitAgreement.map((share, i) => {
    const own = share === null ? 0 : ((n / paired) * (share - expected)) / (1 - expected);
    const chance = model.unitExpected(unitShares[i]!, shares);
    return own - (2 * (1 - value) * (chance - expected)) / (1 - expected) - value;
  });
  const sampled = clusters === undefined ? leverage : sumsBy(leverage, clusters);
  const samples = sampled.length;
  if (samples < 2 || (clusters !== undefined && samples < FEWEST_CLUSTERS)) return estimated(value, n);
  const error = Math.sqrt(((samples / (samples - 1)) * sampled.reduce((sum, part) => sum + part ** 2, 0)) / n ** 2);
  if (error < NO_VARIANCE) return estimated(value, n);
  const t = tQuantile(1 - (1 - LEVEL) / 2, samples - 1);
  return estimated(value, n, error, clamped(value - t * error, value + t * error, -1, 1));
}

function sumsBy(values: readonly number[], clusters: readonly number[]): number[] {
  const sums = new Map<number, number>();
  values.forEach((value, place) => sums.set(clusters[place]!, (sums.get(clusters[place]!) ?? 0) + value));
  return [...sums.values()];
}
