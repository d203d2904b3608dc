import type { Curve } from "../../src/matching/curve.ts";
import { curveOf, solve, standardised } from "./logistic.ts";

/**
 * A multinomial logistic regression with a ridge penalty, fitted by Newton's method (McCullagh and Nelder 1989,
 * section 5.2.4). One outcome has no curve: the others' log-odds are against it.
 */

const STEPS = 30;

/**
 * @param rows one row of figures a case, all of one length.
 * @param outcomes of each case the place of its curve among those returned, or null for the outcome that has none.
 * @param count of curves.
 * @param ridge penalty on each weight of the standardised figures; the intercepts have none.
 * @returns a curve of log-odds for each outcome, of the figures as they are, to three digits behind the point.
 */
export function fitMultinomial(rows: readonly number[][], outcomes: readonly (number | null)[], count: number, ridge: number): Curve[] {
  const { data, mean, scale } = standardised(rows);
  const size = data[0]!.length;
  let weights = new Float64Array(count * size);
  for (let step = 0; step < STEPS; step += 1) {
    const gradient = Array.from(weights, (weight, at) => (at % size === 0 ? 0 : -ridge * weight));
    const curvature = Array.from(weights, (_, at) => {
      const row = new Array<number>(weights.length).fill(0);
      row[at] = at % size === 0 ? 1e-9 : ridge;
      return row;
    });
    data.forEach((row, place) => {
      const chances = chancesOf(row, weights, count);
      for (let one = 0; one < count; one += 1) {
        const miss = (outcomes[place] === one ? 1 : 0) - chances[one]!;
        for (let k = 0; k < size; k += 1) gradient[one * size + k]! += miss * row[k]!;
        for (let other = 0; other <= one; other += 1) {
          const spread = chances[one]! * ((one === other ? 1 : 0) - chances[other]!);
          for (let k = 0; k < size; k += 1) {
            const line = curvature[one * size + k]!;
            const share = spread * row[k]!;
            for (let j = 0; j < size; j += 1) line[other * size + j]! += share * row[j]!;
          }
        }
      }
    });
    for (let k = 0; k < weights.length; k += 1) for (let j = 0; j < k; j += 1) if (Math.floor(j / size) < Math.floor(k / size)) curvature[j]![k] = curvature[k]![j]!;
    const change = solve(curvature, gradient);
    weights = weights.map((weight, at) => weight + change[at]!);
    if (Math.max(...change.map(Math.abs)) < 1e-6) break;
  }
  return Array.from({ length: count }, (_, one) => curveOf({ weights: Array.from(weights.subarray(one * size, (one + 1) * size)), mean, scale }));
}

/** How likely each outcome with a curve is. */
function chancesOf(row: readonly number[], weights: Float64Array, count: number): number[] {
  const odds = Array.from({ length: count }, (_, one) => {
    let sum = 0;
    for (let k = 0; k < row.length; k += 1) sum += weights[one * row.length + k]! * row[k]!;
    return sum;
  });
  const most = Math.max(0, ...odds);
  const shares = odds.map((value) => Math.exp(value - most));
  const whole = Math.exp(-most) + shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / whole);
}
