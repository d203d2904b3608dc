import type { ChainScores } from "./chain.ts";
import { directed, type RoleFeatures } from "./role-features.ts";

/** A weight for every feature hash (2 to the HASH_BITS places, nearly all zero), to be multiplied by the scale. */
export interface RoleWeights {
  table: Int8Array | Float32Array;
  scale: number;
}

/**
 * How the scores are weighed when roles are read off. Features of one word back each other up, in punctuated text
 * (where whole sentences share features) more than in bare text; and the corpora's professionals speak more than
 * candidates may. Chosen on held-out folds by the training script, see README.md.
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
function wholeSentences({ sentence, sentenceFrom, share }: RoleFeatures, table: RoleWeights["table"]): Float64Array {
  return share.map((part, which) => {
    let say = 0;
    for (let at = sentenceFrom[which]!; at < sentenceFrom[which + 1]!; at++) say += table[sentence[at]!]!;
    return say * part;
  });
}

/** Log-odds at every token: who says it, and whether the voice changes before it. */
export function chainScores(features: RoleFeatures, weights: RoleWeights): ChainScores {
  const { count, emission, emissionFrom, transition, transitionFrom } = features;
  const { table, scale } = weights;
  const whole = wholeSentences(features, table);
  const scores = { emission: new Float64Array(count), toPatient: new Float64Array(count), toCandidate: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const of = features.sentenceOf[i]!;
    let say = of < 0 ? 0 : whole[of]!;
    for (let at = emissionFrom[i]!; at < emissionFrom[i + 1]!; at++) say += table[emission[at]!]!;
    let out = 0;
    let back = 0;
    for (let at = transitionFrom[i]!; at < transitionFrom[i + 1]!; at++) {
      out += table[directed(transition[at]!, 0)]!;
      back += table[directed(transition[at]!, 1)]!;
    }
    scores.emission[i] = say * scale;
    scores.toPatient[i] = out * scale;
    scores.toCandidate[i] = back * scale;
  }
  return scores;
}
