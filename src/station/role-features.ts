import { MARK, type Token } from "./token.ts";
import { CLASS, wordClass } from "./word-class.ts";

/** Features live in a space of 2^24 hashes: wide enough that a clash of two kept features is rare. */
export const HASH_BITS = 24;
const HASH_MASK = (1 << HASH_BITS) - 1;

/** A sentence longer than this is taken as speech-to-text without punctuation: its end tells nothing. */
const LONGEST_SENTENCE = 45;
/** Only in a talk of so many words does the place in it tell something: it opens with questions and ends with advice. */
const LONG_TALK = 400;
const OUTSIDE = 0x5bd1e995;

/**
 * What the model sees. Emission features of token i (who says this word?) are
 * `emission[emissionFrom[i]] .. emission[emissionFrom[i + 1] - 1]`, as hashes of HASH_BITS bits; transition
 * features (does the voice change before this word?) likewise. A transition hash stands for both
 * directions: see `directed`.
 */
export interface RoleFeatures {
  count: number;
  emission: Int32Array;
  emissionFrom: Int32Array;
  transition: Int32Array;
  transitionFrom: Int32Array;
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
  push(value: number): void {
    if (this.length === this.data.length) {
      const wider = new Int32Array(this.data.length * 2);
      wider.set(this.data);
      this.data = wider;
    }
    this.data[this.length++] = value;
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

/** Classes whose presence in a stretch tells most, one bit each; the small words of every sentence are left out. */
const TELLING = [CLASS.i, CLASS.my, CLASS.you, CLASS.your, CLASS.we, CLASS.they, CLASS.wh, CLASS.auxiliary, CLASS.any, CLASS.yes, CLASS.no, CLASS.okay, CLASS.thanks, CLASS.number];

/** Which of the telling classes occur from one token up to another, as bits. */
function classMasks(classes: Int32Array): (from: number, end: number) => number {
  const bits = classes.map((each) => (TELLING.includes(each as never) ? 1 << TELLING.indexOf(each as never) : 0));
  return (from, end) => {
    let mask = 0;
    for (let at = Math.max(0, from); at < Math.min(bits.length, end); at++) mask |= bits[at]!;
    return mask;
  };
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

export function roleFeatures(tokens: readonly Token[]): RoleFeatures {
  const count = tokens.length;
  const classes = Int32Array.from(tokens, (token) => wordClass(token.norm));
  const { first, end, closed } = sentences(tokens);
  const selves = counts(classes, CLASS.i, CLASS.my);
  const yous = counts(classes, CLASS.you, CLASS.your);
  const openers = questionOpeners(tokens, classes);
  const maskOf = classMasks(classes);
  const echo = echoes(tokens, classes);
  const echoed = counts(Int32Array.from(echo, (each) => (each > 0 ? 1 : 0)), 1);
  const word = (at: number): number => tokens[at]?.hash ?? OUTSIDE;
  const kind = (at: number): number => classes[at] ?? 31;
  const emission = new Growing();
  const transition = new Growing();
  const emissionFrom = new Int32Array(count + 1);
  const transitionFrom = new Int32Array(count + 1);

  for (let i = 0; i < count; i++) {
    const [w0, l1, l2, r1, r2] = [word(i), word(i - 1), word(i - 2), word(i + 1), word(i + 2)];
    const [c0, k1, k2, n1, n2] = [kind(i), kind(i - 1), kind(i - 2), kind(i + 1), kind(i + 2)];
    const token = tokens[i]!;
    emissionFrom[i] = emission.length;
    const say = (template: number, a: number, b = 0, c = 0): void => emission.push(mix(template, a, b, c));
    say(1, 0);
    say(2, w0);
    say(3, l1, w0);
    say(4, w0, r1);
    say(5, l1, w0, r1);
    say(6, l2, l1, w0);
    say(7, w0, r1, r2);
    say(8, l2, w0);
    say(9, w0, r2);
    say(10, (((k2 * 32 + k1) * 32 + c0) * 32 + n1) * 32 + n2);
    say(11, (k1 * 32 + c0) * 32 + n1);
    say(12, token.suffix);
    say(13, token.suffix, tokens[i + 1]?.suffix ?? 0);
    say(14, Math.min(selves(i - 4, i + 5), 3) * 4 + Math.min(yous(i - 4, i + 5), 3));
    say(15, Math.min(selves(i - 12, i + 13), 4) * 5 + Math.min(yous(i - 12, i + 13), 4));
    say(16, openers[i]!, c0);
    say(32, word(i - 3), w0);
    say(33, w0, word(i + 3));
    say(34, echo[i]! * 3 + (echo[i + 1] ?? 0), Math.min(echoed(i - 3, i + 4), 3));
    if (count > LONG_TALK) say(35, Math.floor((i * 8) / count));
    say(17, i < 4 ? i : i < 12 ? 5 : i < 40 ? 6 : 7);
    say(18, maskOf(i - 3, i + 4));
    say(19, c0, maskOf(i + 1, i + 6));
    const close = closed[i]!;
    const begin = first[i]!;
    const size = bucket(end[i]! - begin);
    if (close !== MARK.none) {
      const before = begin > 0 ? closed[begin - 1]! : 0;
      const starts = word(begin);
      say(20, w0, close);
      say(21, starts, close);
      say(22, starts, word(begin + 1), close);
      say(23, starts, word(begin + 1), word(begin + 2));
      say(24, size * 8 + close, before);
      say(25, starts, size * 8 + close, before);
      say(26, end[i]! < count ? word(end[i]!) : OUTSIDE, close);
      say(27, end[i]! < count ? bucket(end[end[i]!]! - end[i]!) * 8 + closed[end[i]!]! : 99, close);
      say(28, Math.min(selves(begin, end[i]!), 2) * 4 + Math.min(yous(begin, end[i]!), 2), close, size);
      say(29, word(end[i]! - 1), close);
      const senses = maskOf(begin, end[i]!);
      say(37, senses, close);
      say(38, senses, close, size);
      say(39, kind(begin) * 1024 + kind(begin + 1) * 32 + kind(begin + 2), close);
      say(36, Math.min(echoed(begin, end[i]!), 3), size, close);
      if (begin > 0) {
        say(30, word(first[begin - 1]!), before, starts);
        say(31, word(first[begin - 1]!), word(first[begin - 1]! + 1), before);
      }
    }

    transitionFrom[i] = transition.length;
    if (i === 0) continue;
    const turn = (template: number, a: number, b = 0, c = 0): void => transition.push(mix(template, a, b, c));
    const left = tokens[i - 1]!;
    const mark = left.mark;
    const place = mark * 2 + (token.opensSegment ? 1 : 0);
    const punctuated = closed[i - 1]! === MARK.none ? 0 : close === MARK.none ? 1 : 2;
    turn(40, place);
    turn(41, place, punctuated);
    turn(42, l1, mark);
    turn(43, w0, mark);
    turn(44, l1, w0);
    turn(45, w0, r1, mark);
    turn(46, l2, l1);
    turn(47, l2, l1, w0);
    turn(48, l1, w0, r1);
    turn(49, w0, r1, r2);
    turn(50, kind(i - 3) * 32768 + k2 * 1024 + k1 * 32 + c0, n1 * 32 + n2);
    turn(51, k2 * 32768 + k1 * 1024 + c0 * 32 + n1, mark);
    turn(52, k1 * 32 + c0, mark);
    turn(53, openers[i - 1]!, w0);
    turn(54, openers[i - 1]!, punctuated, openers[i - 1] === 0 ? 0 : c0);
    const pronouns = (Math.min(selves(i - 8, i), 1) * 2 + Math.min(yous(i - 8, i), 1)) * 4 + Math.min(selves(i, i + 6), 1) * 2 + Math.min(yous(i, i + 6), 1);
    turn(55, pronouns, place);
    turn(56, pronouns, w0);
    turn(57, l1);
    turn(58, w0);
    turn(59, w0, r1);
    const repeats = echo[i]! * 3 + (echo[i + 1] ?? 0);
    if (repeats > 0) {
      turn(61, repeats, mark);
      turn(62, repeats, k1 * 32 + c0);
    }
    turn(60, word(i - 3), l2, l1);
    turn(63, maskOf(i - 5, i), maskOf(i, i + 5));
    turn(64, maskOf(i - 5, i), c0, mark);
    turn(65, maskOf(i, i + 5), k1, mark);
    turn(66, left.suffix, token.suffix, mark);
    if (mark >= MARK.stop || token.opensSegment) {
      const from = first[i - 1]!;
      const leftSize = bucket(i - from);
      turn(70, word(from), mark);
      turn(71, word(from), word(from + 1), mark);
      turn(72, leftSize, size * 8 + close, mark);
      turn(73, w0, size * 8 + close, mark);
      turn(74, word(from), w0, mark * 8 + close);
      turn(75, leftSize * 16 + size, w0, mark);
      const sense = Math.min(selves(from, i), 1) * 2 + Math.min(yous(from, i), 1);
      const next = Math.min(selves(i, end[i]!), 1) * 2 + Math.min(yous(i, end[i]!), 1);
      turn(76, sense * 4 + next, mark * 8 + close, Math.min(size, 4));
      turn(77, l1, leftSize, w0);
      turn(79, maskOf(from, i), maskOf(i, end[i]!), mark * 8 + close);
      turn(80, maskOf(from, i), c0, mark);
      turn(78, Math.min(echoed(i, end[i]!), 3), Math.min(size, 6), mark * 8 + close);
    }
  }
  emissionFrom[count] = emission.length;
  transitionFrom[count] = transition.length;
  return {
    count,
    emission: emission.data.slice(0, emission.length),
    emissionFrom,
    transition: transition.data.slice(0, transition.length),
    transitionFrom,
  };
}
