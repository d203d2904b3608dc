import { clausesOf, type Clause } from "../language/clause.ts";
import { isFragment } from "../language/fragment.ts";
import { polarityOf, type Polarity } from "../language/polarity.ts";
import { findQuantities, type QuantityMention } from "../language/quantity.ts";
import { repairsIn } from "../language/repair.ts";
import { hesitationsIn } from "../language/hesitation.ts";
import { selfAsked } from "../language/self-asked.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { speechActs, type SpeechAct } from "../language/speech-act.ts";
import { smallWordsOf } from "../language/small-words.ts";
import { tokenise, type Token } from "../language/token.ts";
import { namesIn } from "./names.ts";
import { SHOWING } from "./showing.ts";
import type { Role, Station, WordSpan } from "../station/types.ts";

const REFERS_BACK = speechPhrases("refers_back");

/** All that one role (or several) said in the station, in order, with what each token does. */
export interface Stream {
  /** `token.word` is the position in `Transcript.words`. */
  tokens: Token[];
  clauses: Clause[];
  /** For each token the place of its clause. */
  clauseOf: number[];
  polarity: Polarity[];
  acts: SpeechAct[];
  quantities: QuantityMention[];
  /** For each token its place on a line where other people's talk and sentence ends take room: distances are measured on it. */
  position: number[];
  /** For each token how many sentences ended before it; turns without a verb end none. */
  sentencesBefore: number[];
  /** For each token the place of its turn among the turns of this stream. */
  turnOf: number[];
  /** Tokens that stand where somebody gives a name ("I'm Robin"). */
  names: Set<number>;
  /** Tokens behind which something could not be heard. */
  garbledAfter: Set<number>;
  /** Tokens that the speaker took back ("for five, sorry, ten seconds"): they say nothing. */
  withdrawn: Set<number>;
  /** Tokens that say nothing: taken back, taking back, filling a pause or said twice. */
  silent: Set<number>;
  /** Whether anything was unheard, doubted or shown rather than said. */
  hasDoubt: boolean;
  /** Tokens of words that the transcriber or the recogniser doubts. */
  doubtful: Set<number>;
  /** Of the tokens that the recogniser doubts: how sure it is of them, 0 to DOUBTED_CONFIDENCE. */
  heard: ReadonlyMap<number, number>;
}

/** What somebody else says in between parts two words, but "okay" and "sure" only a little. */
const OTHER_VOICE = { perWord: 0.5, most: 8 } as const;
const SENTENCE_END = 1;
/** What says nothing parts nothing. */
const SILENT = 0;
/** A recogniser's confidence below this is doubt. */
const DOUBTED_CONFIDENCE = 0.5;

/**
 * @param joined whether what several speakers said is put together as one's: then nobody asks themselves.
 * @param through words of the transcript behind which no sentence ends: an answer goes on with its question.
 */
export function streamOf(station: Station, roles: readonly Role[], { joined = false, through }: { joined?: boolean; through?: ReadonlySet<number> } = {}): Stream {
  const { words } = station.transcript;
  // An examiner's interruption is set apart from the marked talk, but it may be a prompt.
  const prompts = roles.includes("examiner");
  const excluded = prompts ? [] : station.excluded;
  const spoken: number[] = [];
  const turnOfWord: number[] = [];
  const gapBefore: number[] = [];
  const othersBefore: string[][] = [];
  const garbled = new Set<number>();
  let turn = -1;
  let others: string[] = [];
  let inTurn = false;
  for (const sentence of station.sentences) {
    const inside = sentence.inStation || (prompts && sentence.first >= station.start.word && sentence.end <= station.end.word);
    const ours = inside && roles.includes(sentence.role);
    for (let index = sentence.first; index < sentence.end; index += 1) {
      const word = words[index]!;
      const out = !ours || excluded.some((span) => index >= span.first && index < span.end);
      if (out) {
        if (word.kind === "word") others.push(word.text);
        inTurn = false;
        continue;
      }
      if (word.kind !== "word") {
        if (word.kind === "unintelligible") garbled.add(spoken.length - 1);
        continue;
      }
      if (!inTurn) turn += 1;
      inTurn = true;
      spoken.push(index);
      turnOfWord.push(turn);
      gapBefore.push(Math.min(OTHER_VOICE.most, others.length * OTHER_VOICE.perWord));
      othersBefore.push(others);
      others = [];
    }
  }
  const small = smallWordsOf(spoken.map((index) => words[index]!.text), turnOfWord);
  const written = tokenise(spoken.map((index, place) => small[place]?.text ?? words[index]!.text));
  const breaks = new Set<number>();
  written.forEach((token, place) => {
    const before = written[place - 1];
    if (before !== undefined && turnOfWord[before.word] !== turnOfWord[token.word] && !goesOn(before, othersBefore[token.word]!)) breaks.add(place);
  });
  // "Missed one? Take it when you remember" is one sentence, and what is missed is supposed.
  const supposed = joined ? [] : selfAsked(written, breaks);
  const refersBack = (place: number) => /[.!]/.test(written[place]!.after) && !breaks.has(place + 1) && REFERS_BACK.at(written, place + 1) !== null;
  const referred = joined ? new Set<number>() : new Set(written.flatMap((_, place) => (refersBack(place) ? [place] : [])));
  const goesThrough = (place: number) => referred.has(place) || supposed.some(({ end }) => end - 1 === place) || (through?.has(spoken[written[place]!.word]!) === true && written[place]!.after !== "");
  const local = supposed.length === 0 && referred.size === 0 && through === undefined ? written : written.map((token, place) => (goesThrough(place) ? { ...token, after: "," as const } : token));
  const numbers = findQuantities(local);
  const { withdrawn, editing, restated } = repairsIn(local, numbers, breaks);
  for (const place of editing) withdrawn.add(place);
  const silent = hesitationsIn(local, withdrawn, breaks);
  const position: number[] = [];
  const sentencesBefore: number[] = [];
  let sentences = 0;
  const turnOf: number[] = [];
  const garbledAfter = new Set<number>();
  const doubtful = new Set<number>();
  const heard = new Map<number, number>();
  const together = besideFragments(local, ({ word }) => turnOfWord[word]!, ({ word }) => gapBefore[word]!);
  let at = 0;
  local.forEach((token, place) => {
    const before = local[place - 1];
    const newWord = before === undefined || before.word !== token.word;
    const sentenceEnds = before !== undefined && /[.?!]/.test(before.after);
    if (sentenceEnds && !together.has(place)) sentences += 1;
    sentencesBefore.push(sentences);
    at += (silent.has(place) ? SILENT : 1) + (newWord ? gapBefore[token.word]! : 0) + (sentenceEnds ? SENTENCE_END : 0);
    position.push(at);
    turnOf.push(turnOfWord[token.word]!);
    const word = words[spoken[token.word]!]!;
    if (word.doubtful === true || small[token.word]?.denies === true || (word.confidence ?? 1) < DOUBTED_CONFIDENCE) doubtful.add(place);
    if ((word.confidence ?? 1) < DOUBTED_CONFIDENCE) heard.set(place, word.confidence!);
    if (garbled.has(token.word) && local[place + 1]?.word !== token.word) garbledAfter.add(place);
  });
  const clauses = clausesOf(local, breaks);
  const clauseOf: number[] = [];
  clauses.forEach((clause, index) => {
    for (let k = clause.first; k < clause.end; k += 1) clauseOf.push(index);
  });
  const polarity = polarityOf(local, clauses);
  for (const { first, end } of supposed) for (let place = first; place < end; place += 1) polarity[place]!.hypothetical = true;
  const asWritten = (place: number) => words[spoken[local[place]!.word]!]!.text;
  const { names, asked } = namesIn(local, asWritten);
  const acts = speechActs(local, breaks);
  for (const place of asked) acts[place] = "ask-closed";
  return {
    tokens: local.map((token) => ({ ...token, word: spoken[token.word]! })),
    clauses,
    clauseOf,
    polarity,
    acts,
    quantities: numbersMeant(numbers, withdrawn, restated),
    withdrawn,
    silent,
    position,
    sentencesBefore,
    turnOf,
    names,
    garbledAfter,
    hasDoubt: garbledAfter.size > 0 || doubtful.size > 0 || SHOWING.find(local).length > 0,
    doubtful,
    heard,
  };
}

/** Numbers that stand, in the order of speech. */
function numbersMeant(numbers: readonly QuantityMention[], withdrawn: ReadonlySet<number>, restated: readonly QuantityMention[]): QuantityMention[] {
  const left = numbers.filter(({ first }) => !withdrawn.has(first));
  return restated.length === 0 ? left : [...left, ...restated].sort((a, b) => a.first - b.first);
}

/** Nobody stops at these: a turn that ends so goes on behind the listener's "sure". */
const LEFT_OPEN = /^(not|never|ever|avoid|without|do|does|to|the|a|an|your|my|this|should|must|can|could|will|would|shall|may|might|and|or|of|for|with|into|in|at|is|are)$/;
/** What listeners put in while somebody speaks (Yngve 1970, "On getting a word in edgewise", calls it the back channel). */
const BACK_CHANNEL = /^(okay|ok|right|sure|yeah|yes|yep|mm|mhm|hmm|mm-hm|mm-hmm|mhmm|uh-huh|uh|huh|ah|oh|aha|alright|fine|gotcha)$/;

/** "You should never" | "Sure." | "share it with anybody" is one clause of one speaker. */
function goesOn(before: Token, between: readonly string[]): boolean {
  return LEFT_OPEN.test(before.text) && !/[.?!]/.test(before.after) && between.every((word) => BACK_CHANNEL.test(word.toLowerCase().replace(/[^a-z-]/g, "")));
}

/** The listener's "okay", and a word or two taken up again ("twenty, okay"), take no more room than this. */
const LISTENS = 2;

/**
 * "Once it's open the clock starts." | "Right." | "Four months." | "Okay." | "Then it goes in the bin.": turns without a verb,
 * parted by the listener alone, make one sentence with the turns beside them.
 * @returns places at which a turn opens and no sentence begins.
 */
function besideFragments(tokens: readonly Token[], turnOf: (token: Token) => number, gapBefore: (token: Token) => number): Set<number> {
  const together = new Set<number>();
  let first = 0;
  let open = -1;
  for (let place = 1; place <= tokens.length; place += 1) {
    if (place < tokens.length && turnOf(tokens[place]!) === turnOf(tokens[place - 1]!)) continue;
    const fragment = isFragment(tokens, first, place);
    if (first > 0 && (fragment || open === first) && tokens[first - 1]!.after !== "?" && gapBefore(tokens[first]!) <= LISTENS) together.add(first);
    if (fragment) open = place;
    first = place;
  }
  return together;
}

/** Whether no sentence ends between two tokens. */
export function inOneSentence({ sentencesBefore }: Stream, one: number, other: number): boolean {
  return sentencesBefore[one] === sentencesBefore[other];
}

/** Where the sentence of a token begins, not before `least`. */
export function sentenceFrom(stream: Stream, place: number, least: number): number {
  let from = place;
  while (from > least && inOneSentence(stream, from - 1, place)) from -= 1;
  return from;
}

/** How far the sentence of the token before `end` goes on behind it, so many tokens at most; exclusive. */
export function sentenceUpTo(stream: Stream, end: number, most: number): number {
  let to = Math.min(stream.tokens.length, end + most);
  while (to > end && !inOneSentence(stream, end - 1, to - 1)) to -= 1;
  return to;
}

/** Transcript words from the first to the last token of a window. */
export function wordsOf(stream: Stream, first: number, end: number): WordSpan {
  return { first: stream.tokens[first]!.word, end: stream.tokens[end - 1]!.word + 1 };
}

/** Tokens of the whole clauses that a window stands in. */
export function clausesAround({ clauses, clauseOf }: Stream, { first, end }: { first: number; end: number }): Clause {
  return { first: clauses[clauseOf[first]!]!.first, end: clauses[clauseOf[end - 1]!]!.end };
}

/** Transcript words of the whole clauses that a window stands in. */
export function clauseSpan(stream: Stream, first: number, end: number): WordSpan {
  const around = clausesAround(stream, { first, end });
  return wordsOf(stream, around.first, around.end);
}
