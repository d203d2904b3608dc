import type { Polarity } from "../language/polarity.ts";
import { stem } from "../language/stem.ts";
import { readUnit } from "../language/unit-words.ts";
import type { Token } from "../language/token.ts";
import type { Unit } from "../language/units.ts";
import { beginsIn } from "../station/span.ts";
import type { Sentence, Station, WordSpan } from "../station/types.ts";
import type { Passage } from "./passages.ts";
import { streamOf, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * A question read with its answer: what the one said, the other leaves out ("How long does it last?" "Four weeks.").
 */

/** A passage with the stream that it stands in, where that is not the station's own. */
export interface PlacedPassage {
  passage: Passage;
  stream: Stream;
}

/** All from the start of a span to a word, whoever said it, as one person's talk. @param through words behind which no sentence ends. */
export function joinedStream(station: Station, { first: from }: WordSpan, end: number, through?: ReadonlySet<number>): Stream {
  const sentences = station.sentences.flatMap((sentence): Sentence[] => {
    const first = Math.max(sentence.first, from);
    const stop = Math.min(sentence.end, end);
    return first < stop ? [{ ...sentence, first, end: stop, role: "candidate" }] : [];
  });
  return streamOf({ ...station, sentences }, ["candidate"], { joined: true, ...(through !== undefined && { through }) });
}

/** The same, all of it told. */
export function toldStream(station: Station, span: WordSpan, end: number, through?: ReadonlySet<number>): Stream {
  const stream = joinedStream(station, span, end, through);
  stream.acts.fill("tell");
  return stream;
}

/** What is asked, as it is told: nothing of it is supposed any more, and all of it denied where the answer is no. */
export function polarityTold(own: Polarity, isDenied: boolean): Polarity {
  return { ...own, hypothetical: false, negated: own.negated !== isDenied };
}

/** What the patient says of themselves, as the candidate would say it to them. */
const AS_TOLD: Readonly<Record<string, string>> = { i: "you", me: "you", my: "your", mine: "yours", myself: "yourself", am: "are" };

/** "She could borrow mine", as what the candidate would have told: "she could borrow yours". */
export function toldToThem(station: Station, span: WordSpan, through?: ReadonlySet<number>): Stream {
  const stream = toldStream(station, span, span.end, through);
  const proposing = stream.tokens.flatMap((_, place) => proposedAt(stream.tokens, place) ?? []);
  const toldAs = (token: Token, place: number): Token => {
    const text = proposing.includes(place) ? NO_DENIAL_THEN : AS_TOLD[token.text];
    return text === undefined ? token : { ...token, text, stem: stem(text) };
  };
  const tokens = stream.tokens.map(toldAs);
  if (proposing.length === 0) return { ...stream, tokens };
  const { clauseOf } = stream;
  const polarity = stream.polarity.map((own, place) => (own.negated && proposing.some((denial) => place > denial && clauseOf[place] === clauseOf[denial]) ? { ...own, negated: false } : own));
  return { ...stream, tokens, polarity };
}

const MAY = /^(can|could|may|might|should|would|will)$/;
/** "Should I not have it with milk?" asks what is forbidden; "shouldn't I" and "can I not" ask whether one may. */
const MAY_NOT = /^(can|could)$/;
const WHO_MAY = /^(i|we|you|he|she|they|it)$/;
/** What stands for a denial that denies nothing. */
const NO_DENIAL_THEN = "just";

/** "Can I not just put it in his milk?", "couldn't I use a spoon?" ask whether one may: the denial in it, which denies nothing; null where none is. */
function proposedAt(tokens: readonly Token[], place: number): number | null {
  if (!MAY.test(tokens[place]!.text)) return null;
  const [next, behind] = [tokens[place + 1]?.text ?? "", tokens[place + 2]?.text ?? ""];
  if (next === "not" && WHO_MAY.test(behind)) return place + 1;
  return MAY_NOT.test(tokens[place]!.text) && WHO_MAY.test(next) && behind === "not" ? place + 2 : null;
}

/** A question and its answer as one sentence that is told; a bare number counts what was asked for. */
export function answeredStream(station: Station, question: WordSpan, answer: WordSpan): Stream {
  const stream = toldStream(station, question, answer.end, new Set([question.end - 1]));
  const { tokens } = stream;
  let counted: ReturnType<typeof countedAt> = null;
  for (let place = 0; counted === null && place < tokens.length && tokens[place]!.word < question.end; place += 1) counted = countedAt(tokens, place);
  if (counted === null) return stream;
  const { unit } = counted;
  return { ...stream, quantities: stream.quantities.map((mention) => (mention.unit === null && tokens[mention.first]!.word >= answer.first ? { ...mention, unit, firm: true } : mention)) };
}

/** "How many units": what is counted, and the token behind it; null where these tokens do not ask so. */
export function countedAt(tokens: readonly Token[], place: number): { unit: Unit; end: number } | null {
  if (tokens[place]?.text !== "how" || tokens[place + 1]?.text !== "many") return null;
  // "How many of the tablets".
  const from = tokens[place + 2]?.text === "of" && /^(the|these|those|your|my)$/.test(tokens[place + 3]?.text ?? "") ? place + 4 : place + 2;
  const counted = readUnit(tokens, from, false);
  return counted === null || counted.factor !== 1 ? null : { unit: counted.unit, end: counted.end };
}

/** So much of the question is taken with its answer. Words. */
const LONGEST_QUESTION = 30;

/** The sentence that a question ends in. */
export function lastSentence(station: Station, question: WordSpan): WordSpan {
  const last = station.sentences.filter((sentence) => beginsIn(sentence, question)).at(-1);
  return { first: Math.max(last?.first ?? question.first, question.end - LONGEST_QUESTION), end: question.end };
}

/** Share of what a window found, by weight, that stands in some of the tokens, 0 to 1. */
export function shareOf({ aligned, response }: Window, inside: (token: number) => boolean): number {
  const weightOf = (places: Window["aligned"]) => places.reduce((sum, { term }) => sum + response.terms[term]!.weight, 0);
  const all = weightOf(aligned);
  return all === 0 ? 0 : weightOf(aligned.filter(({ hit }) => inside(hit.first))) / all;
}

/** So much of what is found must be the answer's own: the question alone tells nothing. */
export const OWN_SHARE = 0.25;

/** Whether the answer says enough of it: its number, or a share of its words. */
export function isAnswers({ window, quantity }: Passage, { tokens }: Stream, answer: WordSpan): boolean {
  const inAnswer = (token: number) => tokens[token]!.word >= answer.first;
  return quantity === undefined ? shareOf(window, inAnswer) >= OWN_SHARE : inAnswer(quantity.first);
}
