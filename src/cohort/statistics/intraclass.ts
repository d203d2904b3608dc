import { fQuantile } from "./distributions.ts";
import { estimated, LEVEL, NO_VARIANCE, notMeasurable, type Estimate, type Interval } from "./estimate.ts";
import { meanSquares } from "./mean-squares.ts";

/** The six forms of Shrout and Fleiss: case 1, 2 or 3; one marker's total, or the mean of all k markers'. */
export type IntraclassForm = "ICC(1,1)" | "ICC(2,1)" | "ICC(3,1)" | "ICC(1,k)" | "ICC(2,k)" | "ICC(3,k)";

export const INTRACLASS_MODEL: Record<IntraclassForm, string> = {
  "ICC(1,1)": "one-way random effects, one marker: every candidate may have other markers",
  "ICC(2,1)": "two-way random effects, absolute agreement, one marker: the markers stand for others like them",
  "ICC(3,1)": "two-way mixed effects, consistency, one marker: these very markers, a constant difference between them allowed",
  "ICC(1,k)": "one-way random effects, mean of all markers",
  "ICC(2,k)": "two-way random effects, absolute agreement, mean of all markers",
  "ICC(3,k)": "two-way mixed effects, consistency, mean of all markers",
};

/**
 * Intraclass correlations with intervals by F: P. E. Shrout and J. L. Fleiss, Psychological Bulletin 86 (1979)
 * 420-428; formulas of case 2's interval on page 424.
 * @param totals `totals[candidate][marker]`, complete, in any unit
 */
export function intraclassCorrelations(totals: readonly (readonly number[])[]): Record<IntraclassForm, Estimate> {
  const forms = Object.keys(INTRACLASS_MODEL) as IntraclassForm[];
  const all = (why: string) => Object.fromEntries(forms.map((form) => [form, notMeasurable(totals.length, why)])) as Record<IntraclassForm, Estimate>;
  const n = totals.length;
  const k = totals[0]?.length ?? 0;
  if (n < 2) return all("fewer than two candidates");
  if (k < 2) return all("fewer than two markers");
  const { between, within, columns, error } = meanSquares(totals);
  if (between < NO_VARIANCE && within < NO_VARIANCE) return all("all totals are the same");
  if (between + (k - 1) * error < NO_VARIANCE) return all("the candidates do not differ");
  const tail = (1 - LEVEL) / 2;
  const oneWay = single(between / within, n - 1, n * (k - 1), k, tail);
  const consistent = single(between / error, n - 1, (n - 1) * (k - 1), k, tail);
  const icc1 = (between - within) / (between + (k - 1) * within);
  const icc2 = (between - error) / (between + (k - 1) * error + (k * (columns - error)) / n);
  const icc3 = (between - error) / (between + (k - 1) * error);
  const absolute = absoluteInterval(icc2, between, columns, error, n, k, tail);
  const averaged = (interval: Interval | null) => interval && { ...interval, low: spearmanBrown(interval.low, k), high: spearmanBrown(interval.high, k) };
  return {
    "ICC(1,1)": estimated(icc1, n, null, oneWay),
    "ICC(2,1)": estimated(icc2, n, null, absolute),
    "ICC(3,1)": estimated(icc3, n, null, consistent),
    "ICC(1,k)": withoutBelow(between, (between - within) / between, n, averaged(oneWay)),
    "ICC(2,k)": withoutBelow(between + (columns - error) / n, (between - error) / (between + (columns - error) / n), n, averaged(absolute)),
    "ICC(3,k)": withoutBelow(between, (between - error) / between, n, averaged(consistent)),
  };
}

function withoutBelow(divisor: number, value: number, n: number, interval: Interval | null): Estimate {
  return divisor < NO_VARIANCE ? notMeasurable(n, "the candidates do not differ") : estimated(value, n, null, interval);
}

/** Reliability of the mean of k from that of one. */
function spearmanBrown(one: number, k: number): number {
  return (k * one) / (1 + (k - 1) * one);
}

/** Cases 1 and 3, by the F of the candidates' mean square over the error's. Full agreement has no interval by this. */
function single(f: number, df1: number, df2: number, k: number, tail: number): Interval | null {
  if (!Number.isFinite(f) || f > 1 / NO_VARIANCE) return null;
  const low = f / fQuantile(1 - tail, df1, df2);
  const high = f * fQuantile(1 - tail, df2, df1);
  return { low: (low - 1) / (low + k - 1), high: (high - 1) / (high + k - 1), level: LEVEL };
}

/** Case 2: degrees of freedom by Satterthwaite, Shrout and Fleiss 1979, page 424. */
function absoluteInterval(icc: number, between: number, columns: number, error: number, n: number, k: number, tail: number): Interval | null {
  if (error < NO_VARIANCE) return null;
  const f = columns / error;
  const top = (k - 1) * (n - 1) * (k * icc * f + n * (1 + (k - 1) * icc) - k * icc) ** 2;
  const bottom = (n - 1) * k ** 2 * icc ** 2 * f ** 2 + (n * (1 + (k - 1) * icc) - k * icc) ** 2;
  const df = top / bottom;
  if (!(df > 0)) return null;
  const upper = fQuantile(1 - tail, n - 1, df);
  const lower = fQuantile(1 - tail, df, n - 1);
  const low = (n * (between - upper * error)) / (upper * (k * columns + (k * n - k - n) * error) + n * between);
  const high = (n * (lower * between - error)) / (k * columns + (k * n - k - n) * error + n * lower * between);
  return { low, high, level: LEVEL };
}
