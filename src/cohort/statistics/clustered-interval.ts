import type { AgreementTable } from "./agreement-table.ts";
import { estimated, LEVEL, NO_VARIANCE, type Estimate } from "./estimate.ts";
import { standardDeviation } from "./moments.ts";
import { seededRandom } from "./random.ts";

const DRAWS = 1000;
/** With fewer whole rehearsals to draw from, the draws say nothing of the next rehearsal. */
export const FEWEST_CLUSTERS = 10;

/**
 * A statistic of all marks, with standard error and interval from drawing whole clusters (rehearsals) with
 * replacement: A. C. Davison and D. V. Hinkley, Bootstrap Methods and their Application (1997), section 3.8;
 * percentile interval. The draws are seeded: the same data give the same interval. Below ten clusters there is none.
 */
export function clusteredInterval(clusters: readonly AgreementTable[], statistic: (table: AgreementTable) => Estimate): Estimate {
  const whole = statistic(sum(clusters));
  if (whole.value === null) return whole;
  if (clusters.length < FEWEST_CLUSTERS) return estimated(whole.value, whole.n);
  const size = clusters[0]!.counts.length;
  const flat = clusters.map(({ counts }) => Float64Array.from(counts.flat()));
  const random = seededRandom(clusters.length);
  const drawn: number[] = [];
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const { value } = statistic(tableFrom(drawnSum(flat, random), clusters[0]!.categories, size));
    if (value !== null) drawn.push(value);
  }
  if (drawn.length < DRAWS / 2) return estimated(whole.value, whole.n);
  drawn.sort((a, b) => a - b);
  const at = (share: number) => drawn[Math.round(share * (drawn.length - 1))]!;
  const tail = (1 - LEVEL) / 2;
  // Rehearsals that are all alike give the same in every draw, which is no certainty.
  if (at(1) - at(0) < NO_VARIANCE) return estimated(whole.value, whole.n);
  return estimated(whole.value, whole.n, standardDeviation(drawn), { low: at(tail), high: at(1 - tail), level: LEVEL });
}

function sum(tables: readonly AgreementTable[]): AgreementTable {
  const first = tables[0];
  if (first === undefined) return { categories: [], counts: [], n: 0 };
  const counts = first.counts.map((row) => row.map(() => 0));
  let n = 0;
  for (const table of tables) {
    n += table.n;
    for (let i = 0; i < counts.length; i += 1) for (let j = 0; j < counts.length; j += 1) counts[i]![j]! += table.counts[i]![j]!;
  }
  return { categories: first.categories, counts, n };
}

/** The sum of as many tables as there are, drawn with replacement. Flat arrays, because this is all the time it takes. */
export function drawnSum(flat: readonly Float64Array[], random: () => number): Float64Array {
  const total = new Float64Array(flat[0]!.length);
  for (let place = 0; place < flat.length; place += 1) {
    const table = flat[Math.floor(random() * flat.length)]!;
    for (let cell = 0; cell < total.length; cell += 1) total[cell]! += table[cell]!;
  }
  return total;
}

function tableFrom(flat: Float64Array, categories: string[], size: number): AgreementTable {
  const counts = Array.from({ length: size }, (_, row) => [...flat.subarray(row * size, (row + 1) * size)]);
  return { categories, counts, n: flat.reduce((sum, count) => sum + count, 0) };
}
