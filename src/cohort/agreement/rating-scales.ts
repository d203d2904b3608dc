import type { Whole } from "../marks.ts";
import { agreementTable } from "../statistics/agreement-table.ts";
import { cohenKappa, squaredValueWeights } from "../statistics/cohen-kappa.ts";
import { correlation } from "../statistics/correlation.ts";
import { notMeasurable, type Estimate } from "../statistics/estimate.ts";
import { intraclassCorrelations } from "../statistics/intraclass.ts";
import { krippendorffAlpha } from "../statistics/krippendorff-alpha.ts";
import { mean } from "../statistics/moments.ts";
import { categoryCounts } from "../statistics/ratings.ts";
import type { JoinedRecord } from "./join.ts";
import { pairsOf } from "./totals.ts";

export interface RatingReport {
  what: Exclude<Whole, "total">;
  /** Rehearsals that at least one person rated. */
  n: number;
  people: string[];
  /** Between people, each two: the tool rates nothing. */
  pairs: { first: string; second: string; quadraticKappa: Estimate; absolute: Estimate }[];
  alphaOrdinal: Estimate;
  /** Of the mean rating with the tool's per cent total. */
  withTotal: Estimate;
}

/** Agreement of people's global and communication ratings among themselves, and how they go with the tool's total. */
export function ratingReport(records: readonly JoinedRecord[], people: readonly string[], what: Exclude<Whole, "total">): RatingReport | null {
  const rated = records.filter(({ people: sheets }) => [...sheets.values()].some(({ whole }) => whole[what] !== undefined));
  if (rated.length === 0) return null;
  const rows = rated.map(({ people: sheets }) => people.map((name) => sheets.get(name)?.whole[what] ?? null));
  const scale = [...new Set(rows.flat().filter((value) => value !== null))].sort((a, b) => a - b);
  const names = scale.map(String);
  const known = rated.flatMap(({ record: { percent } }, i) => {
    const own = rows[i]!.filter((value) => value !== null);
    return percent === null ? [] : [[mean(own), percent] as const];
  });
  return {
    what,
    n: rated.length,
    people: people.filter((_, place) => rows.some((row) => row[place] !== null)),
    pairs: pairsOf(people).flatMap(([a, b]) => {
      const both = rows.flatMap((row) => (row[a] == null || row[b] == null ? [] : [[row[a], row[b]] as const]));
      if (both.length === 0) return [];
      return [{
        first: people[a]!,
        second: people[b]!,
        // By the numbers themselves: a step that nobody used still lies between its neighbours.
        quadraticKappa: cohenKappa(agreementTable(both.map(([x, y]) => [String(x), String(y)] as const), names), squaredValueWeights(scale)),
        absolute: intraclassCorrelations(both)["ICC(2,1)"],
      }];
    }),
    alphaOrdinal: people.length < 2 ? notMeasurable(rated.length, "only one person rated") : krippendorffAlpha(categoryCounts(rows.map((row) => row.map((value) => (value === null ? null : String(value)))), names), "ordinal"),
    withTotal: correlation(known.map(([rating]) => rating), known.map(([, percent]) => percent)),
  };
}
