import { meaningsOf, wordWeight } from "../language/lexicon.ts";
import { speechPhrases } from "../language/speech-phrases.ts";
import { stem } from "../language/stem.ts";
import { compareQuantity, dimensionOf, isAnotherMatter } from "../language/quantity-compare.ts";
import { ONE, type ExpectedQuantity, type QuantityMention } from "../language/quantity-mention.ts";
import type { Unit } from "../language/units.ts";
import { countedAt } from "./answered.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { notWithHolds } from "./must-words.ts";
import { withReason } from "./held-passages.ts";
import type { Passage } from "./passages.ts";
import type { Postings } from "./postings.ts";
import type { Response } from "./response.ts";
import { inOneSentence, type Stream } from "./stream.ts";

/** A number that was asked for says its element as surely as most of its words would. */
const ANSWERED = 0.8;

/**
 * "How often do I use it?" "Twice a day.": a number that answers a question for one. What it is the number of was asked,
 * and is left out of the reply; the rubric must have one element only that it could be of.
 * @param stream the question and the reply as one stretch of telling.
 * @param from token at which the reply starts.
 */
export function numberReplies(rubric: CompiledRubric, postings: Postings, stream: Stream, from: number): Passage[] {
  const asked = askedFor(stream, from);
  const said = asked === null ? null : answerIn(stream, from);
  if (asked === null || said === null) return [];
  const counts = said.unit === null || (said.unit === "time" && asked.unit === "time-per-day");
  const mention = counts ? { ...said, unit: asked.unit, firm: true } : said;
  const element = elementAsked(rubric, asked, mention, stream, from);
  if (element === null) return [];
  const response = element.say.find((one) => placeOfNumber(one) >= 0);
  const reading = compareQuantity(mention, element.quantity!);
  if (response === undefined || reading === "other-dimension" || isAnotherMatter(mention, element.quantity!)) return [];
  // "How often?" alone asks about what was spoken of before, whatever that was.
  if (reading === "wrong" && !asked.inWords) return [];
  const { first, end } = said;
  const term = placeOfNumber(response);
  const window = { first, end, response, aligned: [{ term, hit: { first, end, quality: 1 }, quality: 1 }], coverage: ANSWERED };
  if (!notWithHolds(element.notWith, postings, stream, { ...window, first: asked.first })) return [];
  const passage: Passage = { element, window, first, end, coverage: ANSWERED, verdict: reading, closed: [], quantity: mention };
  return [reading === "wrong" ? withReason(passage, stream) : passage];
}

const placeOfNumber = ({ terms }: Response): number => terms.findIndex(({ text }) => text === "{quantity}");

interface Asked {
  /** Tokens that ask, exclusive: "how many times a day", and what is asked for. */
  first: number;
  end: number;
  /** What a bare number counts; null where that is left open. */
  unit: Unit | null;
  /** The kind of number that answers; null where this one does not. */
  dimensionOf: (mention: QuantityMention) => string | null;
  /** Whether the question must name what it asks about: there is more than one thing that lasts. */
  ofSomething: boolean;
  /** Whether more is asked than that: "how often do I use it?". */
  inWords: boolean;
}

/** What a medicine is measured in; "how much time do I have?" asks for no dose. */
const MEASURES: ReadonlySet<Unit> = new Set<Unit>(["puff", "spray", "drop", "dose", "unit", "millilitre", "milligram", "microgram", "gram", "capsule", "tablet", "patch"]);

/** "How many are left in it?" asks what there is, not what to take. */
const THERE_IS = /^(left|there|contain|contains)$/;

/** What the question asks the number of, in its last words that do; null where it asks for none. */
function askedFor(stream: Stream, from: number): Asked | null {
  const asked = kindAsked(stream, from);
  if (asked === null) return null;
  const inWords = stream.tokens.slice(asked.end, from).some((_, place) => inOneSentence(stream, asked.first, asked.end + place));
  return { ...asked, inWords };
}

function kindAsked({ tokens }: Stream, from: number): Omit<Asked, "inWords"> | null {
  for (let first = from - 2; first >= 0; first -= 1) {
    if (tokens[first]!.text !== "how") continue;
    const kind = tokens[first + 1]!.text;
    const among = (units: (unit: Unit) => boolean) => ({ unit }: QuantityMention) => (unit !== null && units(unit) ? dimensionOf(unit) : null);
    if (kind === "often") return { first, end: first + 2, unit: "time-per-day", dimensionOf: () => "time-per-day", ofSomething: false };
    if (kind === "much") return { first, end: first + 2, unit: null, dimensionOf: among((unit) => MEASURES.has(unit)), ofSomething: false };
    if (kind === "long") return { first, end: first + 2, unit: null, dimensionOf: among((unit) => dimensionOf(unit) === "duration"), ofSomething: true };
    const counted = countedAt(tokens, first);
    if (counted === null || counted.end > from) continue;
    const { unit, end } = counted;
    const behind = tokens.slice(end, from);
    if (unit !== "time") return behind.some(({ text }, place) => THERE_IS.test(text) || (text === "in" && /^(is|are)$/.test(behind[place - 1]?.text ?? ""))) ? null : { first, end, unit, dimensionOf: among((other) => dimensionOf(other) === dimensionOf(unit)), ofSomething: false };
    const aDay = behind.findIndex(({ text }) => text === "day");
    return aDay < 0 ? null : { first, end: end + aDay + 1, unit: "time-per-day", dimensionOf: () => "time-per-day", ofSomething: false };
  }
  return null;
}

/** The one element of which the question can ask; where it can be of several, the one that the number is right for. */
function elementAsked(rubric: CompiledRubric, asked: Asked, mention: QuantityMention, stream: Stream, from: number): CompiledElement | null {
  const dimension = asked.dimensionOf(mention);
  const topic = topicAsked(asked, stream, from);
  if (dimension === null || (asked.ofSomething && topic.length === 0)) return null;
  const counting = rubric.elements.filter(({ kind, quantity }) => kind === "tell" && quantity !== null && dimensionOf(quantity.unit) === dimension && (dimension !== "time-per-day" || isDose(quantity)));
  const uses = ({ vocabulary }: CompiledElement, word: string) => vocabulary.has(word) || meaningsOf(word).some((set) => vocabulary.has(set));
  // "How often do I clean the nozzle?" is not about the dose.
  const those = counting.filter((element) => topic.every((word) => uses(element, word)));
  if (those.length === 1 && (topic.length > 0 || counting.length === 1)) return those[0]!;
  const right = those.filter(({ quantity }) => compareQuantity(mention, quantity!) === "right");
  if (right.length < 2) return right[0] ?? null;
  // Several have that number: it is of the one that the word asked about is mostly said of, if of one.
  const naming = ({ say }: CompiledElement) => say.filter(({ terms }) => terms.some(({ keys }) => keys.some(({ key }) => topic.includes(key)))).length;
  const [most, next] = right.toSorted((one, other) => naming(other) - naming(one));
  return naming(most!) > naming(next!) ? most! : null;
}

/** How often a medicine is taken is one number; from one to another is when it is taken too often. */
const isDose = ({ value }: ExpectedQuantity) => typeof value === "number";

/** A word that tells what is asked about weighs so much. */
const TELLING = 1;

/** What "how long am I on it?" asks the length of, as rubrics name it. */
const TREATMENT = stem("course");
const LENGTH_OF_TREATMENT = speechPhrases("length_of_treatment");

/** Stems of the weighty words of the question, those that ask left out. */
function topicAsked({ first, end, ofSomething }: Asked, stream: Stream, from: number): string[] {
  const words: string[] = [];
  for (let place = from - 1; place >= 0 && inOneSentence(stream, place, from - 1); place -= 1) {
    const word = stream.tokens[place]!.stem;
    if ((place < first || place >= end) && wordWeight(word) >= TELLING) words.push(word);
  }
  if (words.length === 0 && ofSomething && LENGTH_OF_TREATMENT.find(stream.tokens, end, from).length > 0) words.push(TREATMENT);
  return words;
}

/** A number that answers stands so near to the start of the reply: "well, it's once a day". Tokens. */
const ANSWER_WITHIN = 6;
/** Deny the number, or put it off: "not twice", "it depends, some have two". */
const NOT_THE_NUMBER = /^(not|no|never|or|if|unless|depends|until|than|used|was|were)$/;

function answerIn(stream: Stream, from: number): QuantityMention | null {
  const { tokens, quantities, withdrawn } = stream;
  const said = quantities.find(({ first }) => first >= from) ?? justOne(stream, from);
  if (said === null || said.first - from > ANSWER_WITHIN || withdrawn.has(said.first)) return null;
  for (let place = from; place < said.first; place += 1) if (NOT_THE_NUMBER.test(tokens[place]!.text)) return null;
  return said;
}

/** "Just the one.": a pronoun elsewhere, and the number where one was asked for. */
function justOne({ tokens }: Stream, from: number): QuantityMention | null {
  let place = from;
  while (place < from + ANSWER_WITHIN && /^(well|oh|it|is|just|only|the|a|single)$/.test(tokens[place]?.text ?? "")) place += 1;
  const token = tokens[place];
  if (token?.text !== "one" || (token.after === "" && place + 1 < tokens.length)) return null;
  return { ...ONE, first: place, end: place + 1, firm: true };
}
