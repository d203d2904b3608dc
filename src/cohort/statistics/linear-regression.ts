import { tQuantile } from "./distributions.ts";
import { around, LEVEL, NO_VARIANCE, notMeasurable, type Estimated, type NotMeasurable } from "./estimate.ts";
import { mean, sumOfSquares } from "./moments.ts";

export interface LinearRegression {
  n: number;
  intercept: Estimated;
  slope: Estimated;
  /** Share of the variance of y that the line explains, 0 to 1; null when y does not vary. */
  rSquared: number | null;
  /** Residual standard deviation, n - 2 degrees of freedom, in y's unit. */
  residual: number;
  /** The line's height at x, with the standard error and interval of that mean. */
  at(x: number): Estimated;
}

/**
 * Ordinary least squares of y on x. Standard errors and the interval of the line's height, residual sqrt(1/n + (x -
 * mean)^2 / Sxx), as in N. R. Draper and H. Smith, Applied Regression Analysis, 3rd edition (1998), section 3.1.
 */
export function linearRegression(x: readonly number[], y: readonly number[]): LinearRegression | NotMeasurable {
  const n = x.length;
  if (n < 3) return notMeasurable(n, "fewer than three points");
  const spread = sumOfSquares(x);
  if (spread < NO_VARIANCE) return notMeasurable(n, "all points have the same value on the horizontal axis");
  const [middleX, middleY] = [mean(x), mean(y)];
  const product = x.reduce((sum, value, i) => sum + (value - middleX) * (y[i]! - middleY), 0);
  const slope = product / spread;
  const intercept = middleY - slope * middleX;
  const left = x.reduce((sum, value, i) => sum + (y[i]! - intercept - slope * value) ** 2, 0);
  const whole = sumOfSquares(y);
  const residual = Math.sqrt(left / (n - 2));
  const t = tQuantile(1 - (1 - LEVEL) / 2, n - 2);
  const errorAt = (at: number) => residual * Math.sqrt(1 / n + (at - middleX) ** 2 / spread);
  return {
    n,
    intercept: around(intercept, n, errorAt(0), t),
    slope: around(slope, n, residual / Math.sqrt(spread), t),
    rSquared: whole < NO_VARIANCE ? null : 1 - left / whole,
    residual,
    at: (at) => around(intercept + slope * at, n, errorAt(at), t),
  };
}
