/** So much of the weight must be the response's own words or sure synonyms; near ones only add to it. */
export const OWN_WORDS = { quality: 0.78, share: 0.5 } as const;

/** Sums of the same weights in another order differ in the last digits. */
export const ROUNDING = 1e-9;

/** The most that words of this weight could cover, times the response's weight. @param own what of it is said in the response's own words, of its `ownWeight` */
export function mostCoverage(possible: number, own: number, ownWeight: number): number {
  return possible * Math.min(1, own / ownWeight / OWN_WORDS.share);
}
