import { describe, expect, test } from "vitest";
import { curveOf, fitLogistic } from "./logistic.ts";
import { fitMultinomial } from "./multinomial.ts";

/**
 * Lengths in metres and primary food of 59 alligators: F fish, I invertebrates, O other. Agresti, An Introduction to
 * Categorical Data Analysis, 2nd edition (2007), table 6.1. Data and results typed from memory; that they agree speaks for both.
 */
const ALLIGATORS = `1.24I 1.30I 1.30I 1.32F 1.32F 1.40F 1.42I 1.42F 1.45I 1.45O 1.47I 1.47F 1.50I 1.52I 1.55I 1.60I 1.63I 1.65O 1.65I 1.65F
1.65F 1.68F 1.70I 1.73O 1.78I 1.78I 1.78O 1.80I 1.80F 1.85F 1.88I 1.93I 1.98I 2.03F 2.03F 2.16F 2.26F 2.31F 2.31F 2.36F 2.36F 2.39F 2.41F
2.44F 2.46F 2.56O 2.67F 2.72I 2.79F 2.84F 3.25O 3.28O 3.33F 3.56F 3.58F 3.66F 3.68O 3.71F 3.89F`.split(/\s+/).map((one) => ({ length: Number(one.slice(0, -1)), food: one.at(-1)! }));

describe("multinomial logistic regression", () => {
  test("reproduces a published fit: fish and invertebrates against other food (Agresti 2007, section 6.1.2)", () => {
    const [fish, invertebrates] = fitMultinomial(ALLIGATORS.map(({ length }) => [length]), ALLIGATORS.map(({ food }) => ({ F: 0, I: 1 })[food] ?? null), 2, 0);
    expect(fish).toEqual({ intercept: expect.closeTo(1.618, 2) as number, signs: [expect.closeTo(-0.11, 2) as number] });
    expect(invertebrates).toEqual({ intercept: expect.closeTo(5.697, 2) as number, signs: [expect.closeTo(-2.465, 2) as number] });
  });

  test("of two outcomes is the logistic one", () => {
    const rows = ALLIGATORS.map(({ length }) => [length, length ** 2]);
    const isFish = ALLIGATORS.map(({ food }) => food === "F");
    expect(fitMultinomial(rows, isFish.map((is) => (is ? 0 : null)), 1, 2)).toEqual([curveOf(fitLogistic(rows, isFish, 2))]);
  });

  test("pulls the weights of figures towards nought, the more the higher the ridge", () => {
    const weight = (ridge: number) => Math.abs(fitMultinomial(ALLIGATORS.map(({ length }) => [length]), ALLIGATORS.map(({ food }) => (food === "I" ? 0 : null)), 1, ridge)[0]!.signs[0]!);
    expect(weight(1)).toBeLessThan(weight(0));
    expect(weight(100)).toBeLessThan(weight(1));
  });
});
