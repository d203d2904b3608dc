import { FEWEST_CLUSTERS } from "./clustered-interval.ts";
import { drawnInterval, rowsOfSquare } from "./drawn-interval.ts";
import { clamped, estimated, NO_VARIANCE, notMeasurable, type Estimate, type Interval } from "./estimate.ts";

/** nominal: same or not; ordinal: ranks apart; interval: squared difference of the categories' values. */
export type Measurement = "nominal" | "ordinal" | "interval";

/** Below this resampling says little: with few units most draws are alike. */
const FEWEST_UNITS = 5;

export interface AlphaOptions {
  /** Of the categories, for `interval`. */
  values?: readonly number[];
  /** Of each unit, where units hang together: whole clusters are drawn. */
  clusters?: readonly number[];
  /** False leaves out the draws, which take time. */
  interval?: boolean;
}

/**
 * Krippendorff's alpha: 1 - disagreement observed over disagreement expected, for any number of markers, missing marks
 * allowed. K. Krippendorff, Computing Krippendorff's alpha-reliability (University of Pennsylvania, 2011); Content
 * Analysis, 4th edition (2019), chapter 12. Interval: percentiles of alpha over units drawn with replacement, as
 * Zapf et al., BMC Medical Research Methodology 16 (2016) 93, found fit (from memory); the draws are seeded, so the
 * same data give the same interval.
 * @param counts `counts[unit][category]`: how many markers put the unit there
 * (the order of the columns is that of the categories, for `ordinal`)
 */
export function krippendorffAlpha(counts: readonly (readonly number[])[], measurement: Measurement, { values = [], clusters, interval = true }: AlphaOptions = {}): Estimate {
  const usable = counts.map((unit) => unit.reduce((sum, count) => sum + count, 0) >= 2);
  const units = counts.filter((_, place) => usable[place]);
  const n = units.length;
  if (n === 0) return notMeasurable(0, "no unit was marked by two or more");
  if (n === 1) return notMeasurable(1, "only one unit was marked by two or more");
  const own = units.map(coincidences);
  const alpha = alphaOf(total(own), measurement, values);
  if (alpha === null) return notMeasurable(n, "all used one and the same category throughout: agreement beyond chance has no meaning");
  if (!interval) return estimated(alpha, n);
  const samples = clusters === undefined ? own : together(own, clusters.filter((_, place) => usable[place]));
  const fewest = clusters === undefined ? FEWEST_UNITS : FEWEST_CLUSTERS;
  return estimated(alpha, n, null, samples.length < fewest ? null : resampled(samples, measurement, values));
}

/** Pairs of marks of one unit, each pair weighted so that the unit counts by its marks. */
function coincidences(unit: readonly number[]): number[][] {
  const marks = unit.reduce((sum, count) => sum + count, 0);
  return unit.map((first, i) => unit.map((second, j) => (first * (i === j ? second - 1 : second)) / (marks - 1)));
}

function together(own: readonly number[][][], clusters: readonly number[]): number[][][] {
  const groups = new Map<number, number[][][]>();
  own.forEach((table, place) => groups.set(clusters[place]!, [...(groups.get(clusters[place]!) ?? []), table]));
  return [...groups.values()].map(total);
}

function total(tables: readonly (readonly (readonly number[])[])[]): number[][] {
  return tables[0]!.map((row, i) => row.map((_, j) => tables.reduce((sum, table) => sum + table[i]![j]!, 0)));
}

function alphaOf(pairs: readonly (readonly number[])[], measurement: Measurement, values: readonly number[]): number | null {
  const sums = pairs.map((row) => row.reduce((sum, value) => sum + value, 0));
  const marks = sums.reduce((sum, value) => sum + value, 0);
  let observed = 0;
  let expected = 0;
  for (let i = 0; i < sums.length; i += 1) {
    for (let j = 0; j < sums.length; j += 1) {
      const apart = distance(i, j, measurement, sums, values);
      observed += pairs[i]![j]! * apart;
      expected += (sums[i]! * sums[j]! * apart) / (marks - 1);
    }
  }
  return expected < NO_VARIANCE ? null : 1 - observed / expected;
}

/** The squared difference function of Krippendorff 2011, section E. */
function distance(i: number, j: number, measurement: Measurement, sums: readonly number[], values: readonly number[]): number {
  if (i === j) return 0;
  if (measurement === "nominal") return 1;
  if (measurement === "interval") return (values[i]! - values[j]!) ** 2;
  const [low, high] = i < j ? [i, j] : [j, i];
  const between = sums.slice(low, high + 1).reduce((sum, value) => sum + value, 0);
  return (between - (sums[low]! + sums[high]!) / 2) ** 2;
}

function resampled(own: readonly number[][][], measurement: Measurement, values: readonly number[]): Interval | null {
  const drawn = drawnInterval(own.map((table) => Float64Array.from(table.flat())), (sum) => alphaOf(rowsOfSquare(sum), measurement, values));
  return drawn === null ? null : clamped(drawn.interval.low, drawn.interval.high, -1, 1);
}
