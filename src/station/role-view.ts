import { mix } from "./feature-hash.ts";
import { MARK, type Token } from "./token.ts";
import { CLASS } from "./word-class.ts";

/** A sentence longer than this is taken as speech-to-text without punctuation: its end tells nothing. */
const LONGEST_SENTENCE = 45;
const OUTSIDE = 0x5bd1e995;

/** All that the templates look at, worked out once a transcript. */
export interface RoleView {
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

/** Places before the first word and behind the last that a template may look at. */
export const EDGE = 3;
const NO_CLASS = 31;

/** The view of a whole transcript. */
export function viewOf(tokens: readonly Token[]): RoleView {
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
