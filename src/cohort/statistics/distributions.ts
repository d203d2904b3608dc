import { jStat } from "jstat";

/*
 * Quantiles of the normal, t and F distributions, by the package jstat. It was taken because its values agree with
 * published tables (tests/cohort/statistics/distributions.test.ts); another common package's normal quantile is off
 * in the third digit.
 */

/** @param p 0 to 1, both excluded */
export function normalQuantile(p: number): number {
  return jStat.normal.inv(p, 0, 1);
}

/** Student's t. @param df degrees of freedom, above 0 */
export function tQuantile(p: number, df: number): number {
  return jStat.studentt.inv(p, df);
}

/** Fisher's F. @param df1 @param df2 degrees of freedom of numerator and denominator, above 0, not necessarily whole */
export function fQuantile(p: number, df1: number, df2: number): number {
  return jStat.centralF.inv(p, df1, df2);
}

/** The chance of at most `successes` in `trials` independent tries. */
export function binomialAtMost(successes: number, trials: number, p: number): number {
  return jStat.binomial.cdf(successes, trials, p);
}
