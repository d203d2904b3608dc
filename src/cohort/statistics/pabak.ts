import { agreed, type AgreementTable } from "./agreement-table.ts";
import { clamped, estimated, notMeasurable, ONE_UNIT, type Estimate } from "./estimate.ts";
import { wilsonInterval } from "./proportion.ts";

/**
 * Prevalence-adjusted and bias-adjusted kappa: what kappa would be if every category were equally common for both
 * markers. Two categories: 2 po - 1 (Byrt, Bishop and Carlin, Journal of Clinical Epidemiology 46 (1993) 423-429);
 * k categories: (k po - 1) / (k - 1) (Brennan and Prediger, Educational and Psychological Measurement 41 (1981)
 * 687-699). The interval is Wilson's of po, carried over.
 */
export function pabak(table: AgreementTable): Estimate {
  const { n } = table;
  const size = table.counts.length;
  if (n === 0) return notMeasurable(0, "nothing was marked by both");
  if (n === 1) return notMeasurable(1, ONE_UNIT);
  if (size < 2) return notMeasurable(n, "only one category was used: agreement beyond chance has no meaning");
  const adjusted = (share: number) => (size * share - 1) / (size - 1);
  const share = agreed(table) / n;
  const { low, high } = wilsonInterval(agreed(table), n);
  const error = (size / (size - 1)) * Math.sqrt((share * (1 - share)) / n);
  return estimated(adjusted(share), n, error, clamped(adjusted(low), adjusted(high), -1, 1));
}
