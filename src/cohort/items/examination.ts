import { firstAttempts } from "../first-attempts.ts";
import { compareNatural } from "../result.ts";
import type { SheetRecord } from "../record.ts";
import { generalizability, type Generalizability } from "../statistics/generalizability.ts";
import type { NotMeasurable } from "../statistics/estimate.ts";

export interface ExaminationReliability {
  stations: string[];
  /** Candidates with a total at every station; each by the first attempt. */
  candidates: number;
  /** Candidates who are not in it, because a station is missing or has no total. */
  leftOut: number;
  study: Generalizability | NotMeasurable;
}

/**
 * Reliability of the examination, candidates by stations, from per cent totals. Of several attempts the first counts,
 * as in an examination.
 */
export function examinationReliability(records: readonly SheetRecord[]): ExaminationReliability {
  const stations = [...new Set(records.map(({ key }) => key.station))].sort(compareNatural);
  const first = new Map<string, Map<string, SheetRecord>>();
  for (const record of firstAttempts(records)) {
    const { candidate, station } = record.key;
    first.set(candidate, (first.get(candidate) ?? new Map<string, SheetRecord>()).set(station, record));
  }
  const rows = [...first.values()].flatMap((own) => {
    const row = stations.map((station) => own.get(station)?.percent ?? null);
    return row.every((percent) => percent !== null) ? [row] : [];
  });
  return { stations, candidates: rows.length, leftOut: first.size - rows.length, study: generalizability(rows) };
}
