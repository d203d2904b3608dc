import type { Curve } from "../../src/matching/curve.ts";

/** A logistic regression with a ridge penalty, fitted by Newton's method (McCullagh and Nelder 1989, section 4.4). */
export interface Logistic {
  weights: number[];
  mean: number[];
  scale: number[];
}

/** The curve of the figures as they are, to three digits behind the point: what the program ships. */
export function curveOf({ weights, mean, scale }: Logistic): Curve {
  const raw = weights.slice(1).map((weight, k) => weight / scale[k]!);
  const rounded = (value: number) => Math.round(value * 1000) / 1000;
  return { intercept: rounded(weights[0]! - raw.reduce((sum, weight, k) => sum + weight * mean[k]!, 0)), signs: raw.map(rounded) };
}

const STEPS = 25;

/**
 * @param rows one row of figures a case, all of one length.
 * @param ridge penalty on each weight of the standardised figures; the first weight, the intercept, has none.
 */
export function fitLogistic(rows: readonly number[][], truths: readonly boolean[], ridge = 1): Logistic {
  const { data, mean, scale } = standardised(rows);
  let weights = new Array<number>(data[0]!.length).fill(0);
  for (let step = 0; step < STEPS; step += 1) {
    const gradient = weights.map((weight, k) => (k === 0 ? 0 : -ridge * weight));
    const curvature = weights.map((_, k) => weights.map((__, j) => (k === j ? (k === 0 ? 1e-9 : ridge) : 0)));
    data.forEach((row, place) => {
      const chance = logistic(dot(row, weights));
      const miss = (truths[place] ? 1 : 0) - chance;
      const spread = chance * (1 - chance);
      for (let k = 0; k < row.length; k += 1) {
        gradient[k]! += miss * row[k]!;
        for (let j = 0; j < row.length; j += 1) curvature[k]![j]! += spread * row[k]! * row[j]!;
      }
    });
    const change = solve(curvature, gradient);
    weights = weights.map((weight, k) => weight + change[k]!);
    if (Math.max(...change.map(Math.abs)) < 1e-7) break;
  }
  return { weights, mean, scale };
}

/** The rows with means of nought and spreads of one, a one before each for the intercept. */
export function standardised(rows: readonly number[][]): { data: number[][]; mean: number[]; scale: number[] } {
  const mean = rows[0]!.map((_, k) => rows.reduce((sum, row) => sum + row[k]!, 0) / rows.length);
  const scale = mean.map((middle, k) => Math.sqrt(rows.reduce((sum, row) => sum + (row[k]! - middle) ** 2, 0) / rows.length) || 1);
  return { data: rows.map((row) => [1, ...row.map((value, k) => (value - mean[k]!) / scale[k]!)]), mean, scale };
}

export function chanceOf({ weights, mean, scale }: Logistic, row: readonly number[]): number {
  return logistic(dot([1, ...row.map((value, k) => (value - mean[k]!) / scale[k]!)], weights));
}

const logistic = (value: number) => 1 / (1 + Math.exp(-value));
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, k) => sum + value * b[k]!, 0);

/** Gaussian elimination with partial pivoting. */
export function solve(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, k) => [...row, right[k]!]);
  for (let column = 0; column < rows.length; column += 1) {
    let pivot = column;
    for (let k = column + 1; k < rows.length; k += 1) if (Math.abs(rows[k]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = k;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let k = column + 1; k < rows.length; k += 1) {
      const factor = rows[k]![column]! / rows[column]![column]!;
      for (let j = column; j <= rows.length; j += 1) rows[k]![j]! -= factor * rows[column]![j]!;
    }
  }
  const result = new Array<number>(rows.length).fill(0);
  for (let k = rows.length - 1; k >= 0; k -= 1) {
    let value = rows[k]![rows.length]!;
    for (let j = k + 1; j < rows.length; j += 1) value -= rows[k]![j]! * result[j]!;
    result[k] = value / rows[k]![k]!;
  }
  return result;
}
