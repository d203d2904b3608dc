import { fQuantile } from "./distributions.ts";
import { estimated, LEVEL, NO_VARIANCE, notMeasurable, type Estimate } from "./estimate.ts";
import { standardDeviation, variance } from "./moments.ts";

/**
 * Cronbach's alpha of a complete table: k / (k - 1) (1 - sum of item variances / variance of totals). L. J. Cronbach,
 * Psychometrika 16 (1951) 297-334. Where every mark is 0 or full it is KR-20 (Kuder and Richardson, Psychometrika 2
 * (1937) 151-160, formula 20). Interval by F: L. S. Feldt, Psychometrika 30 (1965) 357-370.
 * @param marks `marks[candidate][item]`
 */
export function cronbachAlpha(marks: readonly (readonly number[])[]): Estimate {
  const n = marks.length;
  const k = marks[0]?.length ?? 0;
  if (n < 2) return notMeasurable(n, "fewer than two candidates");
  if (k < 2) return notMeasurable(n, "fewer than two items");
  const totals = marks.map((row) => row.reduce((sum, mark) => sum + mark, 0));
  const whole = variance(totals);
  if (whole < NO_VARIANCE) return notMeasurable(n, "all candidates have the same total");
  const parts = marks[0]!.reduce((sum, _, item) => sum + variance(marks.map((row) => row[item]!)), 0);
  const alpha = (k / (k - 1)) * (1 - parts / whole);
  const tail = (1 - LEVEL) / 2;
  const [df1, df2] = [n - 1, (n - 1) * (k - 1)];
  const low = 1 - (1 - alpha) * fQuantile(1 - tail, df1, df2);
  const high = 1 - (1 - alpha) * fQuantile(tail, df1, df2);
  return estimated(alpha, n, null, { low, high, level: LEVEL });
}

/** Whether alpha is KR-20: no mark between nothing and full. */
export function isDichotomous(marks: readonly (readonly number[])[], full: readonly number[]): boolean {
  return marks.every((row) => row.every((mark, item) => mark === 0 || mark === full[item]));
}

/**
 * Standard error of measurement: sd of totals sqrt(1 - reliability), in the totals' unit (Lord and Novick, Statistical
 * Theories of Mental Test Scores, 1968, section 3.8). A reliability below nought counts as nought.
 */
export function standardErrorOfMeasurement(totals: readonly number[], reliability: Estimate): Estimate {
  if (reliability.value === null) return notMeasurable(totals.length, `its reliability is not measurable: ${reliability.why}`);
  return estimated(standardDeviation(totals) * Math.sqrt(1 - Math.min(1, Math.max(0, reliability.value))), totals.length);
}
