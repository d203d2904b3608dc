import { agreed, type AgreementTable } from "./agreement-table.ts";
import type { Estimate } from "./estimate.ts";
import { proportion } from "./proportion.ts";

/** Share of units on which two markers agree, 0 to 1, with Wilson's interval. Says nothing of agreement by chance. */
export function percentAgreement(table: AgreementTable): Estimate {
  return proportion(agreed(table), table.n);
}
