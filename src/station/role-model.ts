import type { ChainScores } from "./chain.ts";
import { directed } from "./feature-hash.ts";
import type { RoleFeatures } from "./role-features.ts";
import { BLOCK_BITS } from "./weight-blocks.mjs";

/** The weights of the features that have one, found by their hash; all others weigh nothing. */
export interface RoleWeights {
  /** Where the features begin whose hashes share all but their last BLOCK_BITS bits, by those shared bits; and where the last end. */
  starts: Uint32Array;
  /** The last bits of each feature's hash, features in rising order of their hashes. */
  ends: Uint8Array;
  /** One a feature, to be multiplied by the scale. */
  values: Int8Array;
  scale: number;
}

const BLOCK_MASK = (1 << BLOCK_BITS) - 1;

/** The weight of one feature, before the scale. */
export function weightOf({ starts, ends, values }: RoleWeights, hash: number): number {
  const block = hash >> BLOCK_BITS;
  const end = hash & BLOCK_MASK;
  for (let at = starts[block]!; at < starts[block + 1]!; at++) if (ends[at] === end) return values[at]!;
  return 0;
}

/**
 * How the scores are weighed when roles are read off. Features of one word back each other up, in punctuated text
 * (where whole sentences share features) more than in bare text; and the corpora's professionals speak more than
 * candidates may. Chosen on held-out folds by `npm run train:roles`, see tests/bench/results/roles.md.
 */
export interface Decoding {
  /** Multiplies the score of who says a word. */
  trust: number;
  /** Log-odds taken off the candidate's side at every word, before that. */
  lean: number;
}

export function weigh(scores: ChainScores, { trust, lean }: Decoding): ChainScores {
  return { ...scores, emission: scores.emission.map((score) => (score - lean) * trust) };
}

/** By sentence: what each of its words gets from the features of the whole. */
function wholeSentences({ sentence, sentenceFrom, share }: RoleFeatures, weights: RoleWeights): Float64Array {
  return share.map((part, which) => {
    let say = 0;
    for (let at = sentenceFrom[which]!; at < sentenceFrom[which + 1]!; at++) say += weightOf(weights, sentence[at]!);
    return say * part;
  });
}

/** Log-odds at every token: who says it, and whether the voice changes before it. */
export function chainScores(features: RoleFeatures, weights: RoleWeights): ChainScores {
  const { count, emission, emissionFrom, transition, transitionFrom } = features;
  const { scale } = weights;
  const whole = wholeSentences(features, weights);
  const scores = { emission: new Float64Array(count), toPatient: new Float64Array(count), toCandidate: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const of = features.sentenceOf[i]!;
    let say = of < 0 ? 0 : whole[of]!;
    for (let at = emissionFrom[i]!; at < emissionFrom[i + 1]!; at++) say += weightOf(weights, emission[at]!);
    let out = 0;
    let back = 0;
    for (let at = transitionFrom[i]!; at < transitionFrom[i + 1]!; at++) {
      out += weightOf(weights, directed(transition[at]!, 0));
      back += weightOf(weights, directed(transition[at]!, 1));
    }
    scores.emission[i] = say * scale;
    scores.toPatient[i] = out * scale;
    scores.toCandidate[i] = back * scale;
  }
  return scores;
}
