import type { Estimate, Interval, NotMeasurable } from "../../cohort/statistics/estimate.ts";
import { number } from "../figures.ts";

/** A coefficient to two decimals: more would claim a precision that no cohort has. */
export function coefficient(value: number): string {
  return value.toFixed(2).replace(/^-0\.00$/, "0.00");
}

/** A share, 0 to 1, as per cent. */
export function share(value: number): string {
  return `${number(100 * value)}%`;
}

/** `0.49 (0.38 to 0.60)`, or "not measurable" and why; without an interval, the value alone. */
export function estimate(figure: Estimate, show: (value: number) => string = coefficient): string {
  if (figure.value === null) return `not measurable: ${figure.why}`;
  return figure.interval === null ? show(figure.value) : `${show(figure.value)} (${range(figure.interval, show)})`;
}

/** For a narrow column: `0.49 (0.38 to 0.60)` or `n.m.`. */
export function briefly(figure: Estimate, show: (value: number) => string = coefficient): string {
  return figure.value === null ? "n.m." : estimate(figure, show);
}

export function range({ low, high }: Interval, show: (value: number) => string = coefficient): string {
  return `${show(low)} to ${show(high)}`;
}

export function unmeasured<T extends object>(figure: T | NotMeasurable): figure is NotMeasurable {
  return "value" in figure && figure.value === null;
}

/** Explains the brackets once, at the end of a report. */
export const INTERVAL_NOTE = "In brackets: 95% confidence intervals. n.m.: not measurable; the JSON form says why.";
