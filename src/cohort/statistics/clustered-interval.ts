import type { AgreementTable } from "./agreement-table.ts";
import { drawnInterval, rowsOfSquare } from "./drawn-interval.ts";
import { estimated, type Estimate } from "./estimate.ts";

/** With fewer whole rehearsals to draw from, the draws say nothing of the next rehearsal. */
export const FEWEST_CLUSTERS = 10;

/**
 * A statistic of all marks, with standard error and interval from drawing whole clusters (rehearsals) with
 * replacement. Below ten clusters there is none.
 */
export function clusteredInterval(clusters: readonly AgreementTable[], statistic: (table: AgreementTable) => Estimate): Estimate {
  const whole = statistic(sum(clusters));
  if (whole.value === null) return whole;
  if (clusters.length < FEWEST_CLUSTERS) return estimated(whole.value, whole.n);
  const { categories } = clusters[0]!;
  const drawn = drawnInterval(clusters.map(({ counts }) => Float64Array.from(counts.flat())), (sum) => statistic(tableFrom(sum, categories)).value);
  return drawn === null ? estimated(whole.value, whole.n) : estimated(whole.value, whole.n, drawn.standardError, drawn.interval);
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

function tableFrom(flat: Float64Array, categories: string[]): AgreementTable {
  return { categories, counts: rowsOfSquare(flat), n: flat.reduce((sum, count) => sum + count, 0) };
}
