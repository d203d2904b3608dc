import { isDecided } from "../../scoring/content.ts";
import type { Content } from "../../scoring/types.ts";
import { agreementTable, type AgreementTable } from "../statistics/agreement-table.ts";
import { clusteredInterval } from "../statistics/clustered-interval.ts";
import { cohenKappa, linearWeights, quadraticWeights } from "../statistics/cohen-kappa.ts";
import { notMeasurable, type Estimate } from "../statistics/estimate.ts";
import { fleissKappa } from "../statistics/fleiss-kappa.ts";
import { gwetAc1, gwetAc1OfTable } from "../statistics/gwet-ac1.ts";
import { krippendorffAlpha } from "../statistics/krippendorff-alpha.ts";
import { pabak } from "../statistics/pabak.ts";
import { percentAgreement } from "../statistics/percent-agreement.ts";
import { categoryCounts } from "../statistics/ratings.ts";

/** What an item can be when somebody has decided. "Cannot tell" is no decision and is counted apart. */
export const DECISIONS = ["incorrect", "absent", "partial", "complete"] as const;
/** The same by what it is worth, in order: nothing, part, all. */
export const CREDIT = ["none", "partial", "complete"] as const;
const CREDIT_VALUE = [0, 0.5, 1];

export function creditOf(content: Content): (typeof CREDIT)[number] {
  return content === "complete" ? "complete" : content === "partial" ? "partial" : "none";
}

/** Two markers, one unit each line; `cluster` numbers the rehearsal, whose marks hang together. */
export interface Pair {
  first: Content;
  second: Content;
  cluster: number;
}

export interface PairMeasures {
  /** Marks on which both decided. */
  n: number;
  /** Marks on which one or both did not decide (cannot tell, not offered, not applicable): outside all figures. */
  undecided: { first: number; second: number };
  percent: Estimate;
  kappa: Estimate;
  pabak: Estimate;
  ac1: Estimate;
  /** On credit: none, part, all. */
  linearKappa: Estimate;
  quadraticKappa: Estimate;
  alphaNominal: Estimate;
  alphaOrdinal: Estimate;
}

/**
 * All figures of two markers. Over many items of a rehearsal the intervals of per cent, kappa, PABAK, AC1 and weighted
 * kappa come from drawing whole rehearsals, because marks of one rehearsal hang together and the textbook intervals
 * would be too narrow.
 * @param clustered false for one item, where every mark is of another rehearsal
 */
export function pairMeasures(pairs: readonly Pair[], clustered: boolean): PairMeasures {
  const both = pairs.filter(({ first, second }) => isDecided(first) && isDecided(second));
  const nominal = (some: readonly Pair[]) => agreementTable(some.map(({ first, second }) => [first, second] as const), DECISIONS);
  const credit = (some: readonly Pair[]) => agreementTable(some.map(({ first, second }) => [creditOf(first), creditOf(second)] as const), CREDIT);
  const figure = (table: (some: readonly Pair[]) => AgreementTable, statistic: (table: AgreementTable) => Estimate) =>
    clustered ? clusteredInterval(grouped(both).map(table), statistic) : statistic(table(both));
  const nominalCounts = categoryCounts(both.map(({ first, second }) => [first, second]), DECISIONS);
  const creditCounts = categoryCounts(both.map(({ first, second }) => [creditOf(first), creditOf(second)]), CREDIT);
  const alphaOptions = clustered ? { clusters: both.map(({ cluster }) => cluster) } : { interval: false };
  return {
    n: both.length,
    undecided: { first: pairs.filter(({ first }) => !isDecided(first)).length, second: pairs.filter(({ second }) => !isDecided(second)).length },
    percent: figure(nominal, percentAgreement),
    kappa: figure(nominal, cohenKappa),
    pabak: figure(nominal, pabak),
    ac1: clustered ? figure(nominal, gwetAc1OfTable) : both.length === 0 ? notMeasurable(0, "nothing was marked by both") : gwetAc1(nominalCounts),
    linearKappa: figure(credit, (table) => cohenKappa(table, linearWeights)),
    quadraticKappa: figure(credit, (table) => cohenKappa(table, quadraticWeights)),
    alphaNominal: krippendorffAlpha(nominalCounts, "nominal", alphaOptions),
    alphaOrdinal: krippendorffAlpha(creditCounts, "ordinal", alphaOptions),
  };
}

function grouped(pairs: readonly Pair[]): Pair[][] {
  const clusters = new Map<number, Pair[]>();
  for (const pair of pairs) clusters.set(pair.cluster, [...(clusters.get(pair.cluster) ?? []), pair]);
  return [...clusters.values()];
}

export interface GroupMeasures {
  markers: string[];
  /** Marks that two or more of them decided. */
  n: number;
  /** Mean share of pairs that agree. */
  percent: number | null;
  fleiss: Estimate;
  ac1: Estimate;
  alphaNominal: Estimate;
  alphaOrdinal: Estimate;
  /** none 0, part 0.5, all 1. */
  alphaInterval: Estimate;
}

/**
 * @param rows `rows[unit][marker]`, null where that marker did not mark it; undecided marks count as missing
 * @param clusters the rehearsal of each unit, or null where every unit is of another one
 */
export function groupMeasures(markers: readonly string[], rows: readonly (readonly (Content | null)[])[], clusters: readonly number[] | null): GroupMeasures {
  const known = rows.map((row) => row.map((mark) => (mark !== null && isDecided(mark) ? mark : null)));
  const usable = known.map((row) => row.filter((mark) => mark !== null).length >= 2);
  const paired = known.filter((_, place) => usable[place]);
  const own = clusters?.filter((_, place) => usable[place]);
  const alpha = own === undefined ? { interval: false } : { clusters: own };
  const nominal = categoryCounts(paired, DECISIONS);
  const credit = categoryCounts(paired.map((row) => row.map((mark) => (mark === null ? null : creditOf(mark)))), CREDIT);
  const none = notMeasurable(0, "nothing was marked by two or more");
  const agreeing = nominal.map((unit) => {
    const total = unit.reduce((sum, count) => sum + count, 0);
    return unit.reduce((sum, count) => sum + count * (count - 1), 0) / (total * (total - 1));
  });
  const some = paired.length > 0;
  return {
    markers: [...markers],
    n: paired.length,
    percent: some ? agreeing.reduce((sum, share) => sum + share, 0) / agreeing.length : null,
    fleiss: some ? fleissKappa(nominal, own) : none,
    ac1: some ? gwetAc1(nominal, own) : none,
    alphaNominal: krippendorffAlpha(nominal, "nominal", alpha),
    alphaOrdinal: krippendorffAlpha(credit, "ordinal", alpha),
    alphaInterval: krippendorffAlpha(credit, "interval", { ...alpha, values: CREDIT_VALUE }),
  };
}
