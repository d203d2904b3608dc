import { isPunctuated } from "./clauses.ts";
import { FeatureHashes } from "./feature-hash.ts";
import { EDGE, viewOf, type RoleView } from "./role-view.ts";
import { MARK, type Token } from "./token.ts";

/** Only in a talk of so many words does the place in it tell something: it opens with questions and ends with advice. */
const LONG_TALK = 400;

/**
 * The evidence of a sentence's features is shared out over its words: each word gets this power of the number of
 * words. At 0 a long sentence counts its own features once a word, and shouts everything else down; at -1 it counts
 * them once in all. Compared on held-out folds, see tests/bench/results/roles.md.
 */
const SHARING_POWER = -0.5;

/**
 * Added to the number of every transition template in bare speech-to-text. Where punctuation stands it tells most of
 * where a voice may change, and words little; without it the words must tell all, so their weights are held apart.
 */
const BARE_TRANSITIONS = 200;

/**
 * What the model sees. Emission features of token i (who says this word?) are
 * `emission[emissionFrom[i]] .. emission[emissionFrom[i + 1] - 1]`, as hashes of HASH_BITS bits; transition
 * features (does the voice change before this word?) likewise. A transition hash stands for both
 * directions: see `directed`. Features of the sentence that a token stands in are held once a sentence:
 * those of sentence `sentenceOf[i]` (-1: none that punctuation closes) count `share` times for each of its words.
 */
export interface RoleFeatures {
  count: number;
  emission: Int32Array;
  emissionFrom: Int32Array;
  transition: Int32Array;
  transitionFrom: Int32Array;
  sentence: Int32Array;
  sentenceFrom: Int32Array;
  sentenceOf: Int32Array;
  /** By sentence. */
  share: Float64Array;
}

/** The features of every word and sentence of a transcript. */
export function roleFeatures(tokens: readonly Token[]): RoleFeatures {
  const view = viewOf(tokens);
  const { count, first, closed } = view;
  const bare = !isPunctuated(tokens);
  const emission = new FeatureHashes();
  const transition = new FeatureHashes(bare ? BARE_TRANSITIONS : 0);
  const sentence = new FeatureHashes();
  const emissionFrom = new Int32Array(count + 1);
  const transitionFrom = new Int32Array(count + 1);
  const sentenceOf = new Int32Array(count).fill(-1);
  const sentenceFrom = [0];
  const share: number[] = [];
  for (let i = 0; i < count; i++) {
    addEmission(emission, view, i);
    if (bare) addBareEmission(emission, view, i);
    emissionFrom[i + 1] = emission.length;
    if (i > 0) addTransition(transition, view, i);
    transitionFrom[i + 1] = transition.length;
    if (closed[i] === MARK.none) continue;
    if (first[i] === i) {
      addSentence(sentence, view, i);
      sentenceFrom.push(sentence.length);
      share.push((view.end[i]! - i) ** SHARING_POWER);
    }
    sentenceOf[i] = share.length - 1;
  }
  return {
    count,
    emission: emission.whole(),
    emissionFrom,
    transition: transition.whole(),
    transitionFrom,
    sentence: sentence.whole(),
    sentenceFrom: Int32Array.from(sentenceFrom),
    sentenceOf,
    share: Float64Array.from(share),
  };
}

function bucket(length: number): number {
  return length < 5 ? length : length < 8 ? 5 : length < 13 ? 6 : length < 21 ? 7 : 8;
}

/** Who says word i? */
function addEmission(into: FeatureHashes, view: RoleView, i: number): void {
  const { tokens, count, words, kinds, selves, yous, echo } = view;
  const at = i + EDGE;
  const w0 = words[at]!;
  const l1 = words[at - 1]!;
  const l2 = words[at - 2]!;
  const r1 = words[at + 1]!;
  const r2 = words[at + 2]!;
  const c0 = kinds[at]!;
  const near = (kinds[at - 1]! * 32 + c0) * 32 + kinds[at + 1]!;
  const { suffix } = tokens[i]!;
  into.add(1, 0);
  into.add(2, w0);
  into.add(3, l1, w0);
  into.add(4, w0, r1);
  into.add(5, l1, w0, r1);
  into.add(6, l2, l1, w0);
  into.add(7, w0, r1, r2);
  into.add(8, l2, w0);
  into.add(9, w0, r2);
  into.add(10, (kinds[at - 2]! * 32768 + near) * 32 + kinds[at + 2]!);
  into.add(11, near);
  into.add(12, suffix);
  into.add(13, suffix, tokens[i + 1]?.suffix ?? 0);
  into.add(14, Math.min(selves(i - 4, i + 5), 3) * 4 + Math.min(yous(i - 4, i + 5), 3));
  into.add(15, Math.min(selves(i - 12, i + 13), 4) * 5 + Math.min(yous(i - 12, i + 13), 4));
  into.add(16, view.openers[i]!, c0);
  into.add(32, words[at - 3]!, w0);
  into.add(33, w0, words[at + 3]!);
  into.add(34, echo[i]! * 3 + (echo[i + 1] ?? 0), Math.min(view.echoed(i - 3, i + 4), 3));
  if (count > LONG_TALK) into.add(35, Math.floor((i * 8) / count));
  into.add(17, i < 4 ? i : i < 12 ? 5 : i < 40 ? 6 : 7);
  if (view.closed[i] !== MARK.none) into.add(20, w0, view.closed[i]!);
}

/** What who says word i goes by in bare speech-to-text besides: the plainest of the features above, with weights of their own. */
function addBareEmission(into: FeatureHashes, view: RoleView, i: number): void {
  const { words, kinds, selves, yous } = view;
  const at = i + EDGE;
  const w0 = words[at]!;
  into.add(101, 0);
  into.add(102, w0);
  into.add(103, words[at - 1]!, w0);
  into.add(104, w0, words[at + 1]!);
  into.add(111, (kinds[at - 1]! * 32 + kinds[at]!) * 32 + kinds[at + 1]!);
  into.add(114, Math.min(selves(i - 4, i + 5), 3) * 4 + Math.min(yous(i - 4, i + 5), 3));
  into.add(116, view.openers[i]!, kinds[at]!);
}

/** Who says the sentence that token `begin` opens and punctuation closes? */
function addSentence(into: FeatureHashes, view: RoleView, begin: number): void {
  const { count, words, first, closed, selves, yous } = view;
  const end = view.end[begin]!;
  const close = closed[begin]!;
  const size = bucket(end - begin);
  const before = begin > 0 ? closed[begin - 1]! : 0;
  const starts = words[begin + EDGE]!;
  const second = words[begin + 1 + EDGE]!;
  into.add(21, starts, close);
  into.add(22, starts, second, close);
  into.add(23, starts, second, words[begin + 2 + EDGE]!);
  into.add(24, size * 8 + close, before);
  into.add(25, starts, size * 8 + close, before);
  into.add(26, words[end + EDGE]!, close);
  into.add(27, end < count ? bucket(view.end[end]! - end) * 8 + closed[end]! : 99, close);
  into.add(28, Math.min(selves(begin, end), 2) * 4 + Math.min(yous(begin, end), 2), close, size);
  into.add(29, words[end - 1 + EDGE]!, close);
  into.add(36, Math.min(view.echoed(begin, end), 3), size, close);
  if (begin > 0) {
    const left = words[first[begin - 1]! + EDGE]!;
    into.add(30, left, before, starts);
    into.add(31, left, words[first[begin - 1]! + 1 + EDGE]!, before);
  }
}

/** Does the voice change before word i (i > 0)? */
function addTransition(into: FeatureHashes, view: RoleView, i: number): void {
  const { tokens, words, kinds, first, closed, openers, echo, selves, yous } = view;
  const at = i + EDGE;
  const w0 = words[at]!;
  const l1 = words[at - 1]!;
  const l2 = words[at - 2]!;
  const r1 = words[at + 1]!;
  const c0 = kinds[at]!;
  const k1 = kinds[at - 1]!;
  const left = kinds[at - 2]! * 1024 + k1 * 32 + c0;
  const { mark } = tokens[i - 1]!;
  const { opensSegment } = tokens[i]!;
  const close = closed[i]!;
  const place = mark * 2 + (opensSegment ? 1 : 0);
  const punctuated = closed[i - 1] === MARK.none ? 0 : close === MARK.none ? 1 : 2;
  into.add(40, place);
  into.add(41, place, punctuated);
  into.add(42, l1, mark);
  into.add(43, w0, mark);
  into.add(44, l1, w0);
  into.add(45, w0, r1, mark);
  into.add(46, l2, l1);
  into.add(47, l2, l1, w0);
  into.add(48, l1, w0, r1);
  into.add(49, w0, r1, words[at + 2]!);
  into.add(50, kinds[at - 3]! * 32768 + left, kinds[at + 1]! * 32 + kinds[at + 2]!);
  into.add(51, left * 32 + kinds[at + 1]!, mark);
  into.add(52, k1 * 32 + c0, mark);
  into.add(53, openers[i - 1]!, w0);
  into.add(54, openers[i - 1]!, punctuated, openers[i - 1] === 0 ? 0 : c0);
  const pronouns = (Math.min(selves(i - 8, i), 1) * 2 + Math.min(yous(i - 8, i), 1)) * 4 + Math.min(selves(i, i + 6), 1) * 2 + Math.min(yous(i, i + 6), 1);
  into.add(55, pronouns, place);
  into.add(56, pronouns, w0);
  into.add(57, l1);
  into.add(58, w0);
  into.add(59, w0, r1);
  into.add(60, words[at - 3]!, l2, l1);
  const repeats = echo[i]! * 3 + (echo[i + 1] ?? 0);
  if (repeats > 0) {
    into.add(61, repeats, mark);
    into.add(62, repeats, k1 * 32 + c0);
  }
  if (mark < MARK.stop && !opensSegment) return;
  const from = first[i - 1]!;
  const begin = first[i]!;
  const end = view.end[i]!;
  const starts = words[from + EDGE]!;
  const leftSize = bucket(i - from);
  const size = bucket(end - begin);
  into.add(70, starts, mark);
  into.add(71, starts, words[from + 1 + EDGE]!, mark);
  into.add(72, leftSize, size * 8 + close, mark);
  into.add(73, w0, size * 8 + close, mark);
  into.add(74, starts, w0, mark * 8 + close);
  into.add(75, leftSize * 16 + size, w0, mark);
  const sense = Math.min(selves(from, i), 1) * 2 + Math.min(yous(from, i), 1);
  const next = Math.min(selves(i, end), 1) * 2 + Math.min(yous(i, end), 1);
  into.add(76, sense * 4 + next, mark * 8 + close, Math.min(size, 4));
  into.add(77, l1, leftSize, w0);
  into.add(78, Math.min(view.echoed(i, end), 3), Math.min(size, 6), mark * 8 + close);
}
