import { isPunctuated } from "./clauses.ts";
import { MARK, type Token } from "./token.ts";
import { CLASS } from "./word-class.ts";
import { HASH_BITS } from "./weight-blocks.mjs";

const HASH_MASK = (1 << HASH_BITS) - 1;

/** A sentence longer than this is taken as speech-to-text without punctuation: its end tells nothing. */
const LONGEST_SENTENCE = 45;
/** Only in a talk of so many words does the place in it tell something: it opens with questions and ends with advice. */
const LONG_TALK = 400;
const OUTSIDE = 0x5bd1e995;

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

/** The hash of a transition feature for one direction: 0 from candidate to patient, 1 back. */
export function directed(feature: number, direction: 0 | 1): number {
  return direction === 0 ? feature : (Math.imul(feature ^ 0x2c1b3c6d, 0x297a2d39) >>> 7) & HASH_MASK;
}

function mix(template: number, a: number, b = 0, c = 0): number {
  let hash = Math.imul(template + 0x9e3779b9, 0x85ebca6b);
  hash = Math.imul((hash ^ (hash >>> 15)) ^ a, 0xc2b2ae35);
  hash = Math.imul((hash ^ (hash >>> 13)) ^ b, 0x27d4eb2f);
  hash = Math.imul((hash ^ (hash >>> 16)) ^ c, 0x165667b1);
  return (hash ^ (hash >>> 15)) & HASH_MASK;
}

class Growing {
  data = new Int32Array(1 << 14);
  length = 0;
  /** @param apart is added to the number of every template. */
  constructor(private readonly apart = 0) {}
  push(value: number): void {
    if (this.length === this.data.length) {
      const wider = new Int32Array(this.data.length * 2);
      wider.set(this.data);
      this.data = wider;
    }
    this.data[this.length++] = value;
  }
  add(template: number, a: number, b = 0, c = 0): void {
    this.push(mix(this.apart + template, a, b, c));
  }
  whole(): Int32Array {
    return this.data.subarray(0, this.length);
  }
}

function bucket(length: number): number {
  return length < 5 ? length : length < 8 ? 5 : length < 13 ? 6 : length < 21 ? 7 : 8;
}

/** First and end token of every token's sentence, and the mark that closes it (none when too long to trust). */
function sentences(tokens: readonly Token[]): { first: Int32Array; end: Int32Array; closed: Int32Array } {
  const first = new Int32Array(tokens.length);
  const end = new Int32Array(tokens.length);
  const closed = new Int32Array(tokens.length);
  let from = 0;
  tokens.forEach((token, at) => {
    if (token.mark < MARK.stop && at < tokens.length - 1) return;
    const trusted = at + 1 - from <= LONGEST_SENTENCE ? token.mark : MARK.none;
    first.fill(from, from, at + 1);
    end.fill(at + 1, from, at + 1);
    closed.fill(trusted, from, at + 1);
    from = at + 1;
  });
  return { first, end, closed };
}

/** Running counts, so that a count over a window is a subtraction. */
function counts(classes: Int32Array, ...members: number[]): (from: number, end: number) => number {
  const sums = new Int32Array(classes.length + 1);
  for (let at = 0; at < classes.length; at++) sums[at + 1] = sums[at]! + (members.includes(classes[at]!) ? 1 : 0);
  const clamp = (at: number): number => Math.max(0, Math.min(classes.length, at));
  return (from, end) => sums[clamp(end)]! - sums[clamp(from)]!;
}

/** The nearest "do you", "any pain", "how is" to the left, as a hash of its two words, or 0. */
function questionOpeners(tokens: readonly Token[], classes: Int32Array): Int32Array {
  const REACH = 14;
  const openers = new Int32Array(tokens.length);
  let at = -REACH - 1;
  let opener = 0;
  for (let i = 1; i < tokens.length; i++) {
    const left = classes[i - 1]!;
    const here = classes[i]!;
    const asks = (left === CLASS.auxiliary && (here === CLASS.you || here === CLASS.your)) || left === CLASS.any || left === CLASS.wh;
    if (asks) {
      at = i;
      opener = mix(99, tokens[i - 1]!.hash, here);
    }
    openers[i] = i - at <= REACH ? opener : 0;
  }
  return openers;
}

/** How far back an echo ("On the left side." "Left side. Okay.") is looked for, in tokens. */
const ECHO_REACH = 16;

/**
 * Echoes: professionals repeat what they have just heard. For every token 0: its word was not said just before;
 * 1: an open-class word or number that was; 2: with the next word too.
 */
function echoes(tokens: readonly Token[], classes: Int32Array): Uint8Array {
  const found = new Uint8Array(tokens.length);
  for (let i = 1; i < tokens.length; i++) {
    const here = tokens[i]!.hash;
    const open = classes[i] === CLASS.other || classes[i] === CLASS.number;
    for (let at = i - 1; at >= Math.max(0, i - ECHO_REACH); at--) {
      if (tokens[at]!.hash !== here) continue;
      // Not a stammer: the pair must end before the token itself.
      const pair = at + 1 < i && tokens[at + 1]!.hash === tokens[i + 1]?.hash;
      if (pair && i - at > 2) found[i] = 2;
      else if (open && i - at > 2 && found[i] === 0) found[i] = 1;
    }
  }
  return found;
}

/** All that the templates look at, worked out once a transcript. */
interface View {
  tokens: readonly Token[];
  count: number;
  classes: Int32Array;
  first: Int32Array;
  end: Int32Array;
  closed: Int32Array;
  openers: Int32Array;
  echo: Uint8Array;
  selves: (from: number, end: number) => number;
  yous: (from: number, end: number) => number;
  echoed: (from: number, end: number) => number;
  /** Hashes of the words, three places of OUTSIDE before and after: word i is at i + EDGE. */
  words: Int32Array;
  /** Classes alike. */
  kinds: Int32Array;
}

const EDGE = 3;
const NO_CLASS = 31;

function viewOf(tokens: readonly Token[]): View {
  const count = tokens.length;
  const classes = new Int32Array(count);
  const words = new Int32Array(count + 2 * EDGE).fill(OUTSIDE);
  const kinds = new Int32Array(count + 2 * EDGE).fill(NO_CLASS);
  for (let at = 0; at < count; at++) {
    const token = tokens[at]!;
    classes[at] = token.wordClass;
    words[at + EDGE] = token.hash;
    kinds[at + EDGE] = token.wordClass;
  }
  const echo = echoes(tokens, classes);
  return {
    tokens,
    count,
    classes,
    ...sentences(tokens),
    openers: questionOpeners(tokens, classes),
    echo,
    selves: counts(classes, CLASS.i, CLASS.my),
    yous: counts(classes, CLASS.you, CLASS.your),
    echoed: counts(Int32Array.from(echo, (each) => (each > 0 ? 1 : 0)), 1),
    words,
    kinds,
  };
}

/** Who says word i? */
function addEmission(into: Growing, view: View, i: number): void {
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
function addBareEmission(into: Growing, view: View, i: number): void {
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
function addSentence(into: Growing, view: View, begin: number): void {
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
function addTransition(into: Growing, view: View, i: number): void {
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

export function roleFeatures(tokens: readonly Token[]): RoleFeatures {
  const view = viewOf(tokens);
  const { count, first, closed } = view;
  const bare = !isPunctuated(tokens);
  const emission = new Growing();
  const transition = new Growing(bare ? BARE_TRANSITIONS : 0);
  const sentence = new Growing();
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
