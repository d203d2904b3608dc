/** A logistic curve over signs. */
export interface Curve {
  intercept: number;
  /** One for each of SIGNS. */
  signs: readonly number[];
}

export function likelihoodOf(curve: Curve, signs: readonly number[]): number {
  return 1 / (1 + Math.exp(-oddsBy(curve, signs)));
}

/** The log-odds by a curve. */
export function oddsBy({ intercept, signs: weight }: Curve, signs: readonly number[]): number {
  let sum = intercept;
  for (let place = 0; place < signs.length; place += 1) sum += weight[place]! * signs[place]!;
  return sum;
}

/** @param most beyond these log-odds nothing is less sure or surer. */
export function logOddsOf(chance: number, most: number): number {
  return within(Math.log(chance / (1 - chance)), most);
}

/** A value no further from nought than `most`. */
export function within(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}
