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
  const random = seeded(20261125);
  const values = Array.from({ length: DRAWS }, () => scoresOf(Array.from({ length: pairs.length }, () => pairs[Math.floor(random() * pairs.length)]!).flat()).f1).sort((a, b) => a - b);
  return [values[Math.floor(0.025 * DRAWS)]!, values[Math.ceil(0.975 * DRAWS) - 1]!];
}

function groups(decisions: readonly Decision[]): Decision[][] {
  const byPair = new Map<string, Decision[]>();
  for (const decision of decisions) byPair.set(decision.pair, [...(byPair.get(decision.pair) ?? []), decision]);
  return [...byPair.values()];
}

/** Numbers in 0 to 1, the same for the same seed: mulberry32, public domain. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Cohen's kappa (Cohen 1960, Educational and Psychological Measurement 20): agreement beyond what the margins give by chance. */
export function kappaOf(pairs: readonly (readonly [string, string])[]): number {
  const size = pairs.length;
  const labels = new Set(pairs.flat());
  let chance = 0;
  for (const label of labels) chance += (pairs.filter(([a]) => a === label).length / size) * (pairs.filter(([, b]) => b === label).length / size);
  const observed = pairs.filter(([a, b]) => a === b).length / size;
  return chance === 1 ? 1 : (observed - chance) / (1 - chance);
}
