// Fits the role model: a conditional random field over words, by AdaGrad (Duchi, Hazan, Singer 2011)
// on the log-likelihood, one consultation a step. Deterministic: fixed seed, fixed order.
import { marginals, type ChainScores } from "../../../src/station/chain.ts";
import { directed } from "../../../src/station/feature-hash.ts";
import { roleFeatures, type RoleFeatures } from "../../../src/station/role-features.ts";
import { HASH_BITS } from "../../../src/station/weight-blocks.mjs";
import { tokenise } from "../../../src/station/token.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";
import { shuffle } from "./random.ts";
import type { Stripped } from "./strip.ts";

export interface Example {
  features: RoleFeatures;
  /** 0 candidate, 1 patient, by token. */
  labels: Uint8Array;
  /** How much one pass counts this example. */
  weight: number;
}

export function example(stripped: Stripped, weight = 1): Example {
  const tokens = tokenise(stripped.transcript);
  return {
    features: roleFeatures(tokens),
    labels: Uint8Array.from(tokens, (token) => (stripped.sides[token.word] === "candidate" ? 0 : 1)),
    weight,
  };
}

export interface TrainOptions {
  epochs: number;
  rate: number;
  /** L2 penalty, per step and active feature. */
  decay: number;
  /** A feature must occur in so many examples. */
  least: number;
  /** Share of features left out at random in a step, against co-adaptation. */
  dropout: number;
  seed: number;
  /** Passes over all features, to choose those kept. */
  scoutEpochs: number;
  /** Keep so many features. */
  keep: number;
}

interface Packed {
  count: number;
  labels: Uint8Array;
  weight: number;
  emission: Int32Array;
  emissionFrom: Int32Array;
  out: Int32Array;
  outFrom: Int32Array;
  back: Int32Array;
  backFrom: Int32Array;
  sentence: Int32Array;
  sentenceFrom: Int32Array;
  sentenceOf: Int32Array;
  share: Float64Array;
}

function countFeatures(examples: Example[]): Uint16Array {
  const seen = new Uint16Array(1 << HASH_BITS);
  const last = new Int32Array(1 << HASH_BITS).fill(-1);
  examples.forEach(({ features }, at) => {
    const see = (hash: number): void => {
      if (last[hash] === at) return;
      last[hash] = at;
      if (seen[hash]! < 65535) seen[hash]!++;
    };
    for (const hash of features.emission) see(hash);
    for (const hash of features.sentence) see(hash);
    for (const hash of features.transition) {
      see(directed(hash, 0));
      see(directed(hash, 1));
    }
  });
  return seen;
}

function compact(from: Int32Array, values: Int32Array, count: number, id: (hash: number) => number): [Int32Array, Int32Array] {
  const kept = new Int32Array(values.length);
  const starts = new Int32Array(count + 1);
  let length = 0;
  for (let i = 0; i < count; i++) {
    starts[i] = length;
    for (let at = from[i]!; at < from[i + 1]!; at++) {
      const place = id(values[at]!);
      if (place >= 0) kept[length++] = place;
    }
  }
  starts[count] = length;
  return [kept.slice(0, length), starts];
}

function pack(each: Example, ids: Int32Array): Packed {
  const { features: f, labels, weight } = each;
  const [emission, emissionFrom] = compact(f.emissionFrom, f.emission, f.count, (hash) => ids[hash]!);
  const [out, outFrom] = compact(f.transitionFrom, f.transition, f.count, (hash) => ids[directed(hash, 0)]!);
  const [back, backFrom] = compact(f.transitionFrom, f.transition, f.count, (hash) => ids[directed(hash, 1)]!);
  const [sentence, sentenceFrom] = compact(f.sentenceFrom, f.sentence, f.share.length, (hash) => ids[hash]!);
  return { count: f.count, labels, weight, emission, emissionFrom, out, outFrom, back, backFrom, sentence, sentenceFrom, sentenceOf: f.sentenceOf, share: f.share };
}

/** Weights by feature hash. */
export type Weights = Map<number, number>;

interface Features {
  /** Place of each hash among the weights, -1 where it has none. */
  ids: Int32Array;
  hashes: Int32Array;
}

function index(hashes: Int32Array): Features {
  const ids = new Int32Array(1 << HASH_BITS).fill(-1);
  hashes.forEach((hash, id) => {
    ids[hash] = id;
  });
  return { ids, hashes };
}

/**
 * Fits in two passes: over all features first; then over those alone that carry most (weight by the root of how
 * often they occur), so that the kept ones take up the work of the dropped ones.
 */
export function train(examples: Example[], options: TrainOptions, log: (line: string) => void = () => {}): Weights {
  const seen = countFeatures(examples);
  const often = Int32Array.from(seen.keys()).filter((hash) => seen[hash]! >= options.least);
  const wide = descend(examples, index(often), { ...options, epochs: options.scoutEpochs }, log);
  const worth = wide.map((weight, id) => Math.abs(weight) * Math.sqrt(seen[often[id]!]!));
  const order = Int32Array.from(often.keys()).sort((a, b) => worth[b]! - worth[a]! || a - b);
  const kept = order.slice(0, options.keep).sort();
  const narrow = index(kept.map((id) => often[id]!));
  const weights = descend(examples, narrow, options, log);
  return new Map([...narrow.hashes].map((hash, id) => [hash, weights[id]!]));
}

function descend(examples: Example[], { ids, hashes }: Features, options: TrainOptions, log: (line: string) => void): Float32Array {
  const packed = examples.map((each) => pack(each, ids));
  const weights = new Float32Array(hashes.length);
  const squares = new Float32Array(hashes.length).fill(1e-3);
  const average = new Float32Array(hashes.length);
  let averaged = 0;
  const next = seededRandom(options.seed);
  const order = packed.map((_, at) => at);

  for (let epoch = 0; epoch < options.epochs; epoch++) {
    let loss = 0;
    let total = 0;
    for (const at of shuffle(order, next)) {
      const each = packed[at]!;
      const dropSeed = Math.floor(next() * 0x7fffffff) | 1;
      const limit = Math.floor(options.dropout * 256);
      // A hash of feature and step, so that the same features are dropped when scores and when gradients are made.
      const live = (id: number, i: number): boolean => ((Math.imul(Math.imul(id ^ dropSeed, 0x9e3779b1) ^ i, 0x85ebca6b) >>> 16) & 255) >= limit;
      const sum = (list: Int32Array, from: Int32Array, i: number): number => {
        let score = 0;
        for (let k = from[i]!; k < from[i + 1]!; k++) if (live(list[k]!, i)) score += weights[list[k]!]!;
        return score;
      };
      const scores: ChainScores = {
        emission: new Float64Array(each.count),
        toPatient: new Float64Array(each.count),
        toCandidate: new Float64Array(each.count),
      };
      const whole = each.share.map((share, which) => share * sum(each.sentence, each.sentenceFrom, which));
      /** By sentence: the errors of its words together. */
      const missed = new Float64Array(whole.length);
      for (let i = 0; i < each.count; i++) {
        const of = each.sentenceOf[i]!;
        scores.emission[i] = sum(each.emission, each.emissionFrom, i) + (of < 0 ? 0 : whole[of]!);
        scores.toPatient[i] = sum(each.out, each.outFrom, i);
        scores.toCandidate[i] = sum(each.back, each.backFrom, i);
      }
      const beliefs = marginals(scores);
      let gold = 0;
      const push = (list: Int32Array, from: Int32Array, i: number, error: number): void => {
        const gradient = error * each.weight;
        if (Math.abs(gradient) < 1e-4) return;
        for (let k = from[i]!; k < from[i + 1]!; k++) {
          const id = list[k]!;
          if (!live(id, i)) continue;
          const slope = gradient - options.decay * weights[id]!;
          squares[id]! += slope * slope;
          weights[id]! += (options.rate * slope) / Math.sqrt(squares[id]!);
        }
      };
      for (let i = 0; i < each.count; i++) {
        const label = each.labels[i]!;
        const before = i === 0 ? label : each.labels[i - 1]!;
        const went = i > 0 && before === 0 && label === 1 ? 1 : 0;
        const came = i > 0 && before === 1 && label === 0 ? 1 : 0;
        if (label === 0) gold += scores.emission[i]!;
        if (went) gold += scores.toPatient[i]!;
        if (came) gold += scores.toCandidate[i]!;
        const error = (label === 0 ? 1 : 0) - beliefs.candidate[i]!;
        push(each.emission, each.emissionFrom, i, error);
        const of = each.sentenceOf[i]!;
        if (of >= 0) missed[of]! += error;
        if (i === 0) continue;
        push(each.out, each.outFrom, i, went - beliefs.toPatient[i]!);
        push(each.back, each.backFrom, i, came - beliefs.toCandidate[i]!);
      }
      // One step a sentence, however many words it has.
      for (let which = 0; which < whole.length; which++) push(each.sentence, each.sentenceFrom, which, missed[which]! * each.share[which]!);
      loss += beliefs.logTotal - gold;
      total += each.count;
    }
    log(`epoch ${epoch + 1}: loss per word ${(loss / total).toFixed(4)}, ${hashes.length} features`);
    // The mean of the later epochs' weights is steadier than the last.
    if (epoch >= options.epochs / 2) {
      averaged++;
      for (let id = 0; id < weights.length; id++) average[id]! += weights[id]!;
    }
  }
  return average.map((sum) => sum / Math.max(1, averaged));
}
