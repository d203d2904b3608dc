import { LEVEL, NO_VARIANCE, type Interval } from "./estimate.ts";
import { standardDeviation } from "./moments.ts";
import { seededRandom } from "./random.ts";

/** Percentiles of 1,000 draws are steady to about a hundredth. */
const DRAWS = 1000;

export interface DrawnInterval {
  /** Standard deviation of the statistic over the draws. */
  standardError: number;
  interval: Interval;
}

/**
 * How a statistic varies when whole units are drawn with replacement: A. C. Davison and D. V. Hinkley, Bootstrap
 * Methods and their Application (1997), section 3.8; percentile interval. The draws are seeded, so the same data give
 * the same interval.
 * @param units the counts of each unit, all of one length
 * @param statistic of the counts of a draw, summed; null where it cannot be had
 * @returns null where less than half of the draws have a value, and where all have the same: units that are all alike
 * give it in every draw, which is no certainty
 */
export function drawnInterval(units: readonly Float64Array[], statistic: (sum: Float64Array) => number | null): DrawnInterval | null {
  const random = seededRandom(units.length);
  const drawn: number[] = [];
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const value = statistic(drawnSum(units, random));
    if (value !== null) drawn.push(value);
  }
  if (drawn.length < DRAWS / 2) return null;
  drawn.sort((a, b) => a - b);
  const at = (share: number) => drawn[Math.round(share * (drawn.length - 1))]!;
  const tail = (1 - LEVEL) / 2;
  if (at(1) - at(0) < NO_VARIANCE) return null;
  return { standardError: standardDeviation(drawn), interval: { low: at(tail), high: at(1 - tail), level: LEVEL } };
}

/** The sum of as many units as there are. Flat arrays, because this is all the time it takes. */
function drawnSum(units: readonly Float64Array[], random: () => number): Float64Array {
  const total = new Float64Array(units[0]!.length);
  for (let place = 0; place < units.length; place += 1) {
    const unit = units[Math.floor(random() * units.length)]!;
    for (let cell = 0; cell < total.length; cell += 1) total[cell]! += unit[cell]!;
  }
  return total;
}

/** The rows of a square table that is held flat. */
export function rowsOfSquare(flat: Float64Array): number[][] {
  const size = Math.sqrt(flat.length);
  return Array.from({ length: size }, (_, row) => [...flat.subarray(row * size, (row + 1) * size)]);
}
