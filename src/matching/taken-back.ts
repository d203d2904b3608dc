import { wordWeight } from "../language/lexicon.ts";
import repairData from "../language/lexicon/repairs.yaml";
import type { LexiconFile } from "../language/lexicon/schema.ts";
import { phraseList } from "../language/phrase-set.ts";
import type { Token } from "../language/token.ts";
import { denies, type Response } from "./response.ts";
import type { Stream } from "./stream.ts";

const LEXICON = repairData as LexiconFile<"repairs">;
const WAITS = new Set(LEXICON.waits);
const EDITING = exactly(LEXICON.editing.filter((phrase) => !WAITS.has(phrase)));
const TAKES_BACK = exactly(LEXICON.takes_back);
const MEANT = phraseList(LEXICON.meant_after, { by: "text" });

/** Who takes a statement back does so within so many tokens, and within the sentences behind it. */
const REACH = { tokens: 24, sentences: 2 } as const;
/** "Sorry" and its like belong to what was said just before them. */
const EDITING_REACH = 12;

/** The phrases as written: "forget that" takes back, "forget the date" does not. */
function exactly(phrases: readonly string[]): (tokens: readonly Token[], place: number) => boolean {
  const set = phraseList(phrases, { by: "text" });
  const written = new Set(phrases);
  return (tokens, place) => set.allAt(tokens, place).some(({ end }) => written.has(textOf(tokens, place, end)));
}

const textOf = (tokens: readonly Token[], first: number, end: number) => tokens.slice(first, end).map(({ text }) => text).join(" ");

/** What a statement speaks of: stems and sets of words. */
export type Topic = ReadonlySet<string>;

/** What a response says may be done; of one that denies something there is no telling by a denial. */
export function topicOf(response: Response): Topic {
  return new Set(denies(response) ? [] : response.terms.flatMap(({ keys }) => keys.filter(({ quality }) => quality === 1).map(({ key }) => key)));
}

/**
 * Where the speaker takes back what was said up to a token: in so many words ("that's not right"), or by forbidding the
 * same thing, with nothing else in it ("no you can't", "please never share it", "it's only for you").
 * @param topic of what was said: a denial of something else takes nothing back.
 * @param editing whether "sorry" and "I mean" take it back too; behind a mere "yes" they often fill.
 * @returns tokens, end exclusive; null where it stands.
 */
export function takenBackBehind(stream: Stream, from: number, topic: Topic, { editing = true } = {}): { first: number; end: number } | null {
  const { tokens } = stream;
  const end = reachFrom(stream, from);
  for (let place = from; place < Math.min(end, from + EDITING_REACH); place += 1) {
    if (MEANT.at(tokens, place) === null && (TAKES_BACK(tokens, place) || (editing && EDITING(tokens, place) && !(tokens[place]!.text === "well" && tokens[place - 1]?.text === "as")))) return { first: from, end: Math.min(end, from + EDITING_REACH) };
  }
  for (let first = from; first < end; first = partEnd(tokens, first, end)) {
    const last = partEnd(tokens, first, end);
    if (topic.size > 0 && forbids(tokens, first, last, topic)) return { first, end: last };
  }
  return null;
}

function reachFrom(stream: Stream, from: number): number {
  const last = Math.max(0, from - 1);
  let end = from;
  while (end < stream.tokens.length && end - from < REACH.tokens && stream.sentencesBefore[end]! - stream.sentencesBefore[last]! <= REACH.sentences && stream.turnOf[end] === stream.turnOf[last]) end += 1;
  return end;
}

/** Behind a "no" these open a denial of what was said before it. */
const DENIES_AFTER_NO = /^(never|do|you|please|absolutely)$/;

/** Behind the last token of what is said up to the next comma, full stop or "but", or in speech without punctuation to the "no" of "two the next night no never do that". */
function partEnd(tokens: readonly Token[], first: number, end: number): number {
  const opensDenial = (at: number) => tokens[at]!.text === "but" || (tokens[at]!.text === "no" && DENIES_AFTER_NO.test(tokens[at + 1]?.text ?? ""));
  let place = first + 1;
  while (place < end && tokens[place - 1]!.after === "" && !opensDenial(place)) place += 1;
  return place;
}

/** Stand before a denial of what somebody does: "no you really must not", "please never". What opens with "so" or "and" goes on. */
const LEADS_TO_DENIAL = /^(no|nope|nah|well|but|sorry|actually|really|please|absolutely|just|you|oh|um|uh|er|definitely|of|course|better|certainly)$/;
const OF_DOING = /^(do|can|could|should|must|may|would|shall|ought|had)$/;
/** A word of what is said to be done carries at least so much. */
const SOME_WEIGHT = 0.3;
/** What may stand beside it in the denial and names nothing else. */
const ANYBODY = /^(any|some|no)(one|body)$|^(else|him|her|them|that|this|it|any|either|do|ever)$/;
/** "It's only for you", "just yours": nobody else's, nothing else. */
const ONLY_YOURS = /^(no |well |but |and |so |actually |because )*(it|this|that|they|these|one|bottle|inhaler|spray|pen)? ?(is|are) (meant |prescribed |really |strictly )*(only|just|strictly|purely) (meant |prescribed )?(for you|yours|your own|for your own)\b/;

/** Whether a part of a sentence forbids what the topic is about and says nothing else. */
function forbids(tokens: readonly Token[], first: number, end: number, topic: Topic): boolean {
  if (ONLY_YOURS.test(textOf(tokens, first, end))) return true;
  const at = (place: number) => (place < end ? tokens[place]!.text : "");
  let place = first;
  while (LEADS_TO_DENIAL.test(at(place))) place += 1;
  if (OF_DOING.test(at(place)) && /^(not|never)$/.test(at(place + 1))) place += 2;
  else if (/^(never|cannot)$/.test(at(place))) place += 1;
  else return false;
  while (/^(ever|please|never|do|that|it|so)$/.test(at(place))) place += 1;
  if (place >= end) return true;
  // "You don't have to" allows it still.
  if (/^(have|need|got)$/.test(at(place))) return false;
  let named = false;
  for (; place < end; place += 1) {
    const { stem, text } = tokens[place]!;
    const weight = wordWeight(stem);
    if (topic.has(stem)) named ||= weight >= SOME_WEIGHT;
    else if (weight >= SOME_WEIGHT && !ANYBODY.test(text)) return false;
  }
  return named;
}
