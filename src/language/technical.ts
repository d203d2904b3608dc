import technicalData from "./lexicon/technical.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { stem } from "./stem.ts";
import { tokenise, type Token } from "./token.ts";

interface TechnicalWord {
  word: string;
  plain: string;
  /** Weighty stems of the plain words: heard nearby, the word was explained. */
  plainStems: string[];
}

const SMALL = new Set(["a", "the", "of", "to", "in", "it", "by", "or", "that", "at", "on", "for", "your", "be", "is", "with", "as"]);
const words = new Map<string, TechnicalWord>();
for (const { word, also = [], plain } of technicalData as LexiconFile<"technical">) {
  const plainStems = tokenise(plain.split(" ")).filter(({ text }) => !SMALL.has(text)).map((token) => token.stem);
  for (const form of [word, ...also]) words.set(form, { word, plain, plainStems });
}

/** Words behind a technical word that open an explanation. */
const EXPLAINS = /\b(which means|that means|this means|that is|in other words|meaning|means|basically|or your|also known|is when|is where)\b/;
/** Words before it that close one: "fatty lumps called ...", "this is what we call ...". */
const NAMES = /\b(called|known as|what we call|we call|what we call a|medical (word|name|term)( is| for it is)?)( an?| the)?$/;
/** "which means", "that is" come at once. */
const OPENS_WITHIN = 4;
const NAMED_WITHIN = 6;
/** The plain words stand within so many tokens, before or behind: the next sentence will do. */
const EXPLAINED_WITHIN = 12;
/** Anywhere in the same sentence too; a longer one is speech without stops. */
const SENTENCE_WITHIN = 30;

export interface TechnicalUse {
  /** Token that says it. */
  place: number;
  word: string;
  plain: string;
}

/**
 * First uses of technical words that were not explained at once.
 * @param heard stems the patient had used first: whoever uses a word knows it.
 */
export function unexplained(tokens: readonly Token[], heard: (place: number, stemmed: string) => boolean): TechnicalUse[] {
  const uses: TechnicalUse[] = [];
  const seen = new Set<string>();
  tokens.forEach((token, place) => {
    const known = words.get(token.text);
    if (known === undefined || seen.has(known.word)) return;
    seen.add(known.word);
    if (heard(place, stem(token.text)) || explainedNear(tokens, place, known)) return;
    uses.push({ place, word: token.text, plain: known.plain });
  });
  return uses;
}

function explainedNear(tokens: readonly Token[], place: number, { plainStems }: TechnicalWord): boolean {
  const { first, end } = sentenceAround(tokens, place);
  const near = tokens.slice(Math.max(0, Math.min(first, place - EXPLAINED_WITHIN)), Math.max(end, place + EXPLAINED_WITHIN + 1));
  const stems = new Set(near.map((token) => token.stem));
  if (plainStems.length > 0 && plainStems.every((stemmed) => stems.has(stemmed))) return true;
  const text = (from: number, end: number) => tokens.slice(Math.max(0, from), end).map((token) => token.text).join(" ");
  return EXPLAINS.test(text(place + 1, place + 1 + OPENS_WITHIN)) || NAMES.test(text(place - NAMED_WITHIN, place));
}

const ENDS_SENTENCE = /[.?!]/;

/** Tokens of the sentence that a token stands in; nothing where no sentence ends near by. */
function sentenceAround(tokens: readonly Token[], place: number): { first: number; end: number } {
  let first = place;
  while (first > 0 && place - first < SENTENCE_WITHIN && !ENDS_SENTENCE.test(tokens[first - 1]!.after)) first -= 1;
  let end = place + 1;
  while (end < tokens.length && end - place <= SENTENCE_WITHIN && !ENDS_SENTENCE.test(tokens[end - 1]!.after)) end += 1;
  const stops = (first === 0 || ENDS_SENTENCE.test(tokens[first - 1]!.after)) && (end === tokens.length || ENDS_SENTENCE.test(tokens[end - 1]!.after));
  return stops ? { first, end } : { first: place, end: place + 1 };
}
