import { wordWeight } from "../../language/lexicon.ts";
import type { Stream } from "../stream.ts";
import { isNumber, stretchWords, type StretchWords } from "./stretch-words.ts";

/** Tokens, end exclusive. */
interface Stretch {
  first: number;
  end: number;
}

/** A stretch of a stream that is read as one saying. */
export interface Saying extends Stretch {
  /** How many of its words carry something by themselves. */
  weighty: number;
  wording: Record<"numbers" | "numberless", StretchWords>;
}

/** Sayings that people marked are seldom longer, and a sentence longer than this has lost its punctuation. */
const LONGEST = 32;
/** Windows over such a sentence, half of each in the next. */
const WINDOW = 20;
/** A turn of several sentences, no longer than this, is read whole as well. */
const LONGEST_TURN = 45;
/** Fewer words say nothing by themselves. */
const SHORTEST = 3;

/** Each sentence of the stream, two that follow each other in one turn, and windows over what has no sentence ends. */
export function sayingsOf(stream: Stream): Saying[] {
  const sentences = sentencesOf(stream);
  const spans: Stretch[] = [];
  sentences.forEach((sentence, place) => {
    const { first, end } = sentence;
    if (end - first > LONGEST) {
      for (let from = first; from < end - WINDOW / 2; from += WINDOW / 2) spans.push({ first: from, end: Math.min(end, from + WINDOW) });
      return;
    }
    spans.push(sentence);
    const next = sentences[place + 1];
    if (next !== undefined && stream.turnOf[next.first] === stream.turnOf[first] && next.end - first <= LONGEST) spans.push({ first, end: next.end });
  });
  for (const turn of turnsOf(sentences, stream)) if (turn.sentences > 2 && turn.end - turn.first <= LONGEST_TURN) spans.push(turn);
  return spans.flatMap(({ first, end }) => {
    const saying = sayingAt(stream, first, end);
    return saying === null ? [] : [saying];
  });
}

function turnsOf(sentences: readonly Stretch[], { turnOf }: Stream): (Stretch & { sentences: number })[] {
  const turns: (Stretch & { sentences: number })[] = [];
  for (const { first, end } of sentences) {
    const last = turns.at(-1);
    if (last !== undefined && turnOf[last.first] === turnOf[first]) {
      last.end = end;
      last.sentences += 1;
    } else turns.push({ first, end, sentences: 1 });
  }
  return turns;
}

/** How many tokens two stretches have in common. */
export function inCommon(one: Stretch, other: Stretch): number {
  return Math.min(one.end, other.end) - Math.max(one.first, other.first);
}

/** Whether a saying holds a passage, at least by half. */
export function holdsHalf(saying: Stretch, passage: Stretch): boolean {
  return inCommon(saying, passage) >= (passage.end - passage.first) / 2;
}

/** @returns null where too little is said. */
export function sayingAt({ tokens, polarity, silent }: Stream, first: number, end: number): Saying | null {
  const places: number[] = [];
  for (let place = first; place < end; place += 1) if (!silent.has(place)) places.push(place);
  if (places.length < SHORTEST) return null;
  const said = places.map((place) => tokens[place]!);
  const denied = places.map((place) => polarity[place]!.negated);
  const numbers = stretchWords(said, denied, true);
  return { first, end, weighty: said.filter(({ stem }) => wordWeight(stem) > 0).length, wording: { numbers, numberless: said.some(isNumber) ? stretchWords(said, denied, false) : numbers } };
}

function sentencesOf({ tokens, sentencesBefore, turnOf }: Stream): Stretch[] {
  const found: Stretch[] = [];
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    if (place < tokens.length && sentencesBefore[place] === sentencesBefore[place - 1] && turnOf[place] === turnOf[place - 1]) continue;
    if (place > first) found.push({ first, end: place });
    first = place;
  }
  return found;
}
