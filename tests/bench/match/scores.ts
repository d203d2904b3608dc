import { agreementTable } from "../../../src/cohort/statistics/agreement-table.ts";
import { agreementOf, type AgreementWeights } from "../../../src/cohort/statistics/cohen-kappa.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";

/** Of a set of decisions whether something was said rightly. */
export interface Decision {
  truth: boolean;
  given: boolean;
  /** Decisions of one mirrored pair are drawn together. */
  pair: string;
}

export interface Scores {
  precision: number;
  recall: number;
  /** Harmonic mean of the two (van Rijsbergen 1979, Information Retrieval, chapter 7). */
  f1: number;
  errors: number;
  size: number;
}

export function scoresOf(decisions: readonly Decision[]): Scores {
  let hit = 0;
  let falseAlarm = 0;
  let missed = 0;
  for (const { truth, given } of decisions) {
    if (truth && given) hit += 1;
    else if (given) falseAlarm += 1;
    else if (truth) missed += 1;
  }
  const precision = hit + falseAlarm === 0 ? 0 : hit / (hit + falseAlarm);
  const recall = hit + missed === 0 ? 0 : hit / (hit + missed);
  return { precision, recall, f1: precision + recall === 0 ? 0 : (2 * precision * recall) / (precision + recall), errors: falseAlarm + missed, size: decisions.length };
}

const DRAWS = 1000;

/** 95% interval of F1 by the percentile bootstrap over pairs (Efron and Tibshirani 1993, chapter 13). Same draws each run. */
export function intervalOfF1(decisions: readonly Decision[]): [number, number] {
  const pairs = groups(decisions);
  const random = seededRandom(20261125);
  const values = Array.from({ length: DRAWS }, () => scoresOf(Array.from({ length: pairs.length }, () => pairs[Math.floor(random() * pairs.length)]!).flat()).f1).sort((a, b) => a - b);
  return [values[Math.floor(0.025 * DRAWS)]!, values[Math.ceil(0.975 * DRAWS) - 1]!];
}

function groups(decisions: readonly Decision[]): Decision[][] {
  const byPair = new Map<string, Decision[]>();
  for (const decision of decisions) byPair.set(decision.pair, [...(byPair.get(decision.pair) ?? []), decision]);
  return [...byPair.values()];
}

/** Cohen's kappa (Cohen 1960); 1 where everybody gives everything the one label, which the statistic calls undefined. */
export function kappaOf(pairs: readonly (readonly [string, string])[]): number {
  const { observed, expected } = agreementOf(agreementTable(pairs, [...new Set(pairs.flat())]), unweighted);
  return expected === 1 ? 1 : (observed - expected) / (1 - expected);
}

const unweighted: AgreementWeights = (i, j) => (i === j ? 1 : 0);
