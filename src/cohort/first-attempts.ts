import type { SheetRecord } from "./record.ts";
import { compareNatural } from "./result.ts";

/**
 * One rehearsal a candidate and station: of several attempts the first, as in an examination. Attempts of one candidate
 * hang together, so whatever takes its rows for independent (reliability, correlations, cut scores, intervals) must not
 * count a candidate twice. In the order of the records.
 */
export function firstAttempts(records: readonly SheetRecord[]): SheetRecord[] {
  const first = new Map<string, SheetRecord>();
  for (const record of records) {
    const name = JSON.stringify([record.key.candidate, record.key.station]);
    const before = first.get(name);
    if (before === undefined || compareNatural(record.key.attempt, before.key.attempt) < 0) first.set(name, record);
  }
  return [...first.values()];
}
