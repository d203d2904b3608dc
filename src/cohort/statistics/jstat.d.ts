/** The part of jstat that the statistics use; the package ships no types. */
declare module "jstat" {
  export const jStat: {
    normal: { inv(p: number, mean: number, sd: number): number; cdf(x: number, mean: number, sd: number): number };
    studentt: { inv(p: number, df: number): number };
    centralF: { inv(p: number, df1: number, df2: number): number };
    binomial: { cdf(successes: number, trials: number, p: number): number };
  };
}
