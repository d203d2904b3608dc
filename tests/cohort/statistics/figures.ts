import type { Estimate } from "../../../src/cohort/statistics/estimate.ts";

/** To the digits a paper prints. */
export function printed(figure: Estimate | number, digits: number): string {
  const value = typeof figure === "number" ? figure : figure.value;
  if (value === null) throw new Error(`not measurable: ${(figure as { why: string }).why}`);
  return value.toFixed(digits);
}

export function error(figure: Estimate, digits: number): string {
  if (figure.value === null || figure.standardError === null) throw new Error("no standard error");
  return figure.standardError.toFixed(digits);
}

export function interval(figure: Estimate, digits: number): [string, string] {
  if (figure.value === null || figure.interval === null) throw new Error("no interval");
  return [figure.interval.low.toFixed(digits), figure.interval.high.toFixed(digits)];
}

/** A table of counts as the statistics take it. */
export function tableOf(counts: number[][]) {
  return { categories: counts.map((_, index) => String(index + 1)), counts, n: counts.flat().reduce((sum, count) => sum + count, 0) };
}

/** `counts[unit][category]` from rows of marks 1 to k, null for a missing one. */
export function countsOf(rows: (number | null)[][], categories: number): number[][] {
  return rows.map((row) => Array.from({ length: categories }, (_, k) => row.filter((mark) => mark === k + 1).length));
}
