import type { Finding } from "../problem/problem.ts";
import { stands } from "../scoring/standing.ts";
import type { Outcome } from "../scoring/types.ts";
import { doubtedOf } from "./record.ts";
import { isMarked, type CohortResult } from "./result.ts";
import { mean, median } from "./statistics/moments.ts";

export interface StationSummary {
  station: string;
  /** Titles and versions of the rubrics that marked it; more than one is worth a look. */
  rubrics: string[];
  marked: number;
  failed: number;
  outcomes: Record<Outcome, number>;
  /** Of the coverage in per cent; null when nothing was measurable. */
  coverage: { mean: number; lowest: number; median: number; highest: number } | null;
  /** Rehearsals with at least one unsafe statement that stands. */
  unsafe: number;
  /** Rehearsals that ended after the limit, of those with times. */
  overLimit: { count: number; timed: number };
  /** Marks that somebody should listen to. */
  toListen: number;
  /** What people overruled: marks, and rehearsals with at least one. The figures above are computed from what then holds. */
  overruled: { marks: number; rehearsals: number };
  /** Critical items by how many missed them, most first; none that nobody missed. `toConfirm` of them listening may well find said. */
  criticalMissed: { item: string; label: string; missed: number; toConfirm: number }[];
}

/** No times of the run itself: the same results give the same summary. */
export interface CohortSummary {
  form: "saidwell/cohort-summary@1";
  version: string;
  candidates: number;
  rehearsals: number;
  marked: number;
  stations: StationSummary[];
  /** Transcripts of the folder that the plan does not name, and that were passed over therefore. */
  unplanned: string[];
  /** Every file that could not be marked, with all its reasons. */
  failed: { file: string; candidate: string; station: string; attempt: string; errors: Finding[] }[];
}

interface Tally extends Omit<StationSummary, "rubrics" | "coverage" | "criticalMissed"> {
  rubrics: Set<string>;
  percents: number[];
  missed: Map<string, { label: string; missed: number; toConfirm: number }>;
}

/** Sums results up one at a time, so that never more than one sheet is held. Results must come sorted. */
export class SummaryTally {
  readonly #stations = new Map<string, Tally>();
  readonly #failed: CohortSummary["failed"] = [];
  readonly #candidates = new Set<string>();
  #rehearsals = 0;

  add(result: CohortResult): void {
    this.#rehearsals += 1;
    if (result.key.candidate !== "") this.#candidates.add(result.key.candidate);
    const tally = this.#tallyOf(result.key.station);
    if (isMarked(result)) {
      addSheet(tally, result.sheet);
      return;
    }
    tally.failed += 1;
    this.#failed.push({ file: result.file, ...result.key, errors: result.errors });
  }

  done(version: string, unplanned: readonly string[] = []): CohortSummary {
    return {
      form: "saidwell/cohort-summary@1",
      version,
      candidates: this.#candidates.size,
      rehearsals: this.#rehearsals,
      marked: this.#rehearsals - this.#failed.length,
      stations: [...this.#stations.values()].sort((a, b) => (a.station < b.station ? -1 : 1)).map(stationSummary),
      unplanned: [...unplanned],
      failed: this.#failed,
    };
  }

  #tallyOf(station: string): Tally {
    let tally = this.#stations.get(station);
    if (tally === undefined) {
      tally = { station, rubrics: new Set(), marked: 0, failed: 0, outcomes: { pass: 0, fail: 0, provisional: 0, "not-decided": 0 }, unsafe: 0, overLimit: { count: 0, timed: 0 }, toListen: 0, overruled: { marks: 0, rehearsals: 0 }, percents: [], missed: new Map() };
      this.#stations.set(station, tally);
    }
    return tally;
  }
}

function addSheet(tally: Tally, sheet: NonNullable<CohortResult["sheet"]>): void {
  tally.marked += 1;
  tally.rubrics.add(`${sheet.rubric.title}, version ${sheet.rubric.version}`);
  tally.outcomes[sheet.result.outcome] += 1;
  if (sheet.total.percent !== null) tally.percents.push(sheet.total.percent);
  if (sheet.unsafe.found.some(stands)) tally.unsafe += 1;
  const over = sheet.time.overLimit.value;
  if (over !== null) tally.overLimit = { count: tally.overLimit.count + Number(over > 0), timed: tally.overLimit.timed + 1 };
  tally.toListen += sheet.items.filter(({ listen }) => listen).length;
  // Sheets of earlier versions have no corrections.
  const overruled = (sheet.corrections ?? null)?.applied.length ?? 0;
  if (overruled > 0) tally.overruled = { marks: tally.overruled.marks + overruled, rehearsals: tally.overruled.rehearsals + 1 };
  const doubted = doubtedOf(sheet);
  for (const id of sheet.critical.missed) {
    const known = tally.missed.get(id) ?? { label: sheet.items.find((item) => item.id === id)?.label ?? id, missed: 0, toConfirm: 0 };
    tally.missed.set(id, { ...known, missed: known.missed + 1, toConfirm: known.toConfirm + Number(doubted.includes(id)) });
  }
}

function stationSummary({ percents, missed, rubrics, ...counts }: Tally): StationSummary {
  const sorted = percents.sort((a, b) => a - b);
  return {
    ...counts,
    rubrics: [...rubrics].sort(),
    coverage:
      sorted.length === 0
        ? null
        : {
            mean: mean(sorted),
            lowest: sorted[0]!,
            median: median(sorted),
            highest: sorted.at(-1)!,
          },
    criticalMissed: [...missed].map(([item, rest]) => ({ item, ...rest })).sort((a, b) => b.missed - a.missed || (a.item < b.item ? -1 : 1)),
  };
}
