import { heardPhrases, meaningsOf, wordWeight } from "../language/lexicon.ts";
import { dimensionOf } from "../language/quantity-compare.ts";
import { homophonesOf } from "../language/sound.ts";
import { stem } from "../language/stem.ts";
import type { CompiledRubric } from "./compile.ts";
import { NAME } from "./phrase.ts";
import { splitBySoundCodes } from "./split-words.ts";
import type { Stream } from "./stream.ts";
import { TermHits } from "./term-hits.ts";
import type { TermIndex } from "./term-index.ts";

/** Tokens `first` up to, not including, `end` of a stream that carry a key, and how surely. */
export interface Hit {
  first: number;
  end: number;
  quality: number;
}

/** For each key (stem, lexicon set, "#dimension" of a number) where the stream has it, in order. */
export class Postings extends Map<string, Hit[]> {
  private readonly of: TermIndex;
  /** How many the stream has. */
  readonly tokens: number;
  private known: TermHits | undefined;

  /** @param tokens how many the stream has. */
  constructor(of: TermIndex, tokens: number) {
    super();
    this.of = of;
    this.tokens = tokens;
  }

  /** The same by the rubric's terms. Only of postings that are complete. */
  get terms(): TermHits {
    return (this.known ??= new TermHits(this.of, this, this.tokens));
  }
}

/** How surely a word stands for the rubric word behind it when it is not written alike. */
const QUALITY = { homophone: 0.86, sound: 0.8, joined: 0.92, parted: 0.88 } as const;
/** Pieces of words shorter than this are everyday words. */
const SHORTEST_PART = 3;
const SHORTEST_JOINED = 6;

/** What the very words of a set phrase are found by, beside the sets that the phrase is in. */
export function phraseKey(tokens: readonly { stem: string }[]): string {
  return `=${tokens.map(({ stem: each }) => each).join(" ")}`;
}

/** Looks every word of the stream up once, so that responses only read where their terms stand. */
export function postingsOf(stream: Stream, rubric: CompiledRubric): Postings {
  const postings = new Postings(rubric.terms, stream.tokens.length);
  const add = (key: string, first: number, end: number, quality: number) => {
    const list = postings.get(key);
    if (list === undefined) postings.set(key, [{ first, end, quality }]);
    else if (list[list.length - 1]!.first !== first) list.push({ first, end, quality });
  };
  const addStem = (stemmed: string, first: number, end: number, quality: number) => {
    add(stemmed, first, end, quality);
    for (const set of meaningsOf(stemmed)) add(set, first, end, quality);
  };
  const { tokens } = stream;
  const addPhrases = (stemmed: string, place: number, parts: number) => {
    for (const { value, first, end } of phrasesWith(stemmed, tokens, place, parts)) if (!postings.get(value)?.some((known) => known.first === first)) add(value, first, end, QUALITY.sound);
  };
  tokens.forEach((token, place) => {
    if (stream.withdrawn.has(place)) return;
    for (const hit of heardPhrases.allAt(tokens, place)) {
      // "Breathe out, sorry, in": no word of a set phrase may be taken back.
      if (stream.withdrawn.size > 0 && isTakenBack(hit, stream)) continue;
      add(hit.value, hit.first, hit.end, 1);
      add(phraseKey(hit.parted ? [token, tokens[hit.end - 1]!] : tokens.slice(hit.first, hit.end)), hit.first, hit.end, 1);
    }
    addStem(token.stem, place, place + 1, 1);
    const next = tokens[place + 1];
    if (next !== undefined) {
      const joined = token.text + next.text;
      if (joined.length >= SHORTEST_JOINED && rubric.vocabulary.has(joined)) addStem(stem(joined), place, place + 2, QUALITY.joined);
      else {
        for (const word of splitBySoundCodes(tokens, place, rubric.sounds)) addStem(stem(word.text), place, place + word.parts, QUALITY.sound);
        for (const word of rubric.splits.at(tokens, place)) {
          addStem(stem(word.text), place, place + word.parts, QUALITY.sound);
          addPhrases(stem(word.text), place, word.parts);
        }
      }
    }
    if (token.text.length === 1 && next?.text.length === 1 && LETTER.test(token.text)) {
      const word = spelledOut(tokens, place, rubric);
      if (word !== null) addStem(stem(word), place, place + word.length, QUALITY.joined);
    }
    if (rubric.vocabulary.has(token.text)) return;
    for (const word of homophonesOf(token.text)) if (rubric.vocabulary.has(word)) addStem(stem(word), place, place + 1, QUALITY.homophone);
    if (wordWeight(token.stem) < 1) return;
    const alike = misheard(token.text, rubric);
    for (const word of alike) addStem(stem(word), place, place + 1, QUALITY.sound);
    if (alike.length > 0) addPhrases(stem(alike[0]!), place, 1);
    for (const part of partsOf(token.text, rubric.vocabulary)) addStem(stem(part), place, place + 1, QUALITY.parted);
  });
  for (const place of stream.names) add(NAME, place, place + 1, 1);
  for (const mention of stream.quantities) {
    add(mention.unit === null ? "#bare" : `#${dimensionOf(mention.unit)}`, mention.first, mention.end, 1);
    if (mention.perDay !== undefined && mention.unit !== "time-per-day") add("#time-per-day", mention.first, mention.end, 1);
  }
  for (const list of postings.values()) list.sort((a, b) => a.first - b.first || b.quality - a.quality);
  return postings;
}

/** Whether any of the words that a set phrase is said in was taken back. */
function isTakenBack({ first, end, parted }: { first: number; end: number; parted: boolean }, { withdrawn }: Stream): boolean {
  for (let place = parted ? end - 1 : first; place < end; place += 1) if (withdrawn.has(place)) return true;
  return false;
}

/** A set phrase seldom has more words before one that was mis-heard. */
const PHRASE_BEFORE = 3;

/** Set phrases that the words about a mis-heard one, of so many pieces, make with the word that it may have been: "in the frij", "fo lick acid". */
function phrasesWith(stemmed: string, tokens: Stream["tokens"], place: number, parts: number): { value: string; first: number; end: number }[] {
  const from = Math.max(0, place - PHRASE_BEFORE);
  const mended = [...tokens.slice(from, place), { ...tokens[place]!, stem: stemmed, after: tokens[place + parts - 1]!.after }, ...tokens.slice(place + parts, place + parts + PHRASE_BEFORE)];
  const hits: { value: string; first: number; end: number }[] = [];
  for (let first = 0; first <= place - from; first += 1) {
    for (const hit of heardPhrases.allAt(mended, first)) if (!hit.parted && hit.end > place - from && hit.end - hit.first > 1) hits.push({ value: hit.value, first: hit.first + from, end: hit.end + from + parts - 1 });
  }
  return hits;
}

const LETTER = /^[a-z]$/;

/** A short form said letter by letter ("the I.N.R.", "your g p"): the longest that the rubric has. */
function spelledOut(tokens: Stream["tokens"], place: number, rubric: CompiledRubric): string | null {
  let letters = tokens[place]!.text;
  let longest: string | null = null;
  for (let next = place + 1; tokens[next]?.text.length === 1; next += 1) {
    letters += tokens[next]!.text;
    if (rubric.vocabulary.has(letters)) longest = letters;
  }
  return longest;
}

function misheard(heard: string, rubric: CompiledRubric): readonly string[] {
  return rubric.sounds.alike(heard);
}

/** "pushdown", "intheeye": two rubric words written as one. */
function partsOf(text: string, vocabulary: ReadonlySet<string>): string[] {
  if (text.length < 2 * SHORTEST_PART + 1) return [];
  for (let cut = SHORTEST_PART; cut <= text.length - SHORTEST_PART; cut += 1) {
    const [left, right] = [text.slice(0, cut), text.slice(cut)];
    if (vocabulary.has(left) && vocabulary.has(right)) return [left, right];
  }
  return [];
}

/** Of a list in order of its first tokens, the place of the first that starts at this token or later. */
export function firstFrom(list: readonly { first: number }[], token: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]!.first < token) low = middle + 1;
    else high = middle;
  }
  return low;
}
