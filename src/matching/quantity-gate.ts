import { compareQuantity, isAnotherMatter, rangeOf } from "../language/quantity-compare.ts";
import { soundAlikeNumbers, type QuantityMention } from "../language/quantity.ts";
import type { CompiledElement } from "./compile.ts";
import { around } from "./must-words.ts";
import type { ExpectedQuantity } from "./response.ts";
import { inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** A number belongs to the words it stands this near to. */
const QUANTITY_REACH = 7;

/** Responses that ask how far apart, not how long. */
const ASKS_INTERVAL = /\b(every|each|apart|between|once|a day|a week|a month|daily|weekly)\b/;

/** "You can have a second" counts; it is no wrong time. "Press for a second" is one. */
const SECOND_ONE = "a second";
const LASTS = /^(for|after|about|in|within)$/;

export type QuantityReading = { reading: "right" | "wrong" | "misheard"; mention: QuantityMention } | { reading: "none" };

/** Reads the number that belongs to the passage against the one expected. */
export function readQuantity(stream: Stream, window: Window, expected: ExpectedQuantity): QuantityReading {
  const { first, end } = around(stream, window, QUANTITY_REACH);
  const aligned = window.aligned.filter(({ term }) => window.response.terms[term]!.text === "{quantity}").map(({ hit }) => hit.first);
  const mentions = stream.quantities.filter((mention) => mention.first >= first && mention.end <= end);
  let wrong: QuantityMention | null = null;
  for (const mention of mentions) {
    if (isDeniedItself(stream, mention) || isTooFew(stream, mention)) continue;
    const rate = otherPeriod(stream, mention, expected);
    const compared = rate === null ? compareQuantity(mention, expected) : "wrong";
    const reading = compared === "other-dimension" && aligned.includes(mention.first) && isBareCount(stream, window, mention, expected) ? "wrong" : compared;
    const inside = mention.first >= window.first && mention.end <= window.end;
    const sameClause = stream.clauseOf[mention.first] === stream.clauseOf[window.end - 1] || stream.clauseOf[mention.first] === stream.clauseOf[window.first];
    // "One spray each, children two": a bare number beside it puts no number of the passage right.
    if (reading === "right" && (inside || sameClause) && !(wrong !== null && ((wrong.unit !== null && mention.unit === null) || isEndOf(mention, wrong)))) {
      const other = numberOfTheSentence(stream, window, mention, mentions, expected);
      return other === null ? { reading: "right", mention } : { reading: "wrong", mention: other };
    }
    if (reading === "wrong" && (isSecondOne(stream, mention) || isOfSomethingElse(stream, window, mention, expected) || isStepUpTo(stream, mention, expected))) continue;
    if (reading === "wrong" && (aligned.includes(mention.first) || (aligned.length === 0 && sameClause)) && wrong === null) wrong = rate ?? mention;
  }
  if (wrong === null) return { reading: "none" };
  const total = totalBehind(stream, wrong);
  if (total !== null) {
    const compared = compareQuantity(total, expected);
    if (compared === "right") return { reading: "right", mention: total };
    if (compared === "wrong") wrong = total;
  }
  return { reading: mayBeMisheard(wrong, expected) ? "misheard" : "wrong", mention: wrong };
}

/** Whether a number sounds like the expected one ("fifty", "fifteen"): then a person must listen. */
export function mayBeMisheard({ low, high }: QuantityMention, expected: ExpectedQuantity): boolean {
  return rangeOf(expected).some((value) => soundAlikeNumbers(value, low) || soundAlikeNumbers(value, high));
}

/** So far behind its first step the number that it goes up to is named, in tokens. */
const STEPS_WITHIN = 16;

/** "One puff every thirty to sixty seconds, up to ten": the first number is a step on the way to the expected one. */
function isStepUpTo(stream: Stream, step: QuantityMention, expected: ExpectedQuantity): boolean {
  if (step.bound === "at-most" || step.high >= rangeOf(expected)[0]) return false;
  const to = sentenceUpTo(stream, step.end, STEPS_WITHIN);
  return stream.quantities.some((limit) => limit.bound === "at-most" && limit.first >= step.end && limit.end <= to && !isDeniedItself(stream, limit) && compareQuantity(limit, expected) === "right");
}

/** What is taken of several strengths is added up; of puffs and drops each side has its own. */
const ADDED_UP: ReadonlySet<ExpectedQuantity["unit"]> = new Set<ExpectedQuantity["unit"]>(["milligram", "microgram", "gram", "millilitre", "unit"]);
/** So soon behind its first part the sum is named, in tokens. */
const SUM_WITHIN = 16;
/** Behind a sum, and before one. */
const IN_ALL = /^(altogether|in all|all told|all in|in total|all up|all together|as a total|for the day)\b/;
const MAKES = /^(makes?|making|equals?|totals?|is)$/;
/** "It comes to four" and "adds up to four" make a sum; "three on weekdays and so to four at weekends" is another dose. */
const COMES_TO = /\b(comes?|coming|adds?|adding|brings?|goes) (it |you |that )?(up )?to$/;
/** So many tokens before the sum. */
const COMES_TO_WITHIN = 4;
const ADDS = /^(and|plus|so)$/;

/** "Three milligrams in the blue, one in the brown, so four in all": the sum of what is counted before it, in the unit of its first part; null where none is named. */
function totalBehind(stream: Stream, part: QuantityMention): QuantityMention | null {
  const { tokens, quantities } = stream;
  if (part.unit === null || !ADDED_UP.has(part.unit)) return null;
  const to = sentenceUpTo(stream, part.end, SUM_WITHIN);
  for (const mention of quantities) {
    if (mention.first < part.end || mention.end > to || (mention.unit !== null && mention.unit !== part.unit) || mention.low <= part.high || isDeniedItself(stream, mention)) continue;
    const behind = tokens.slice(mention.end, mention.end + 2).map(({ text }) => text).join(" ");
    const added = /^(times|of)$/.test(tokens[part.first - 1]?.text ?? "") || tokens.slice(part.end, mention.first).some(({ text }) => ADDS.test(text));
    const makes = added && (MAKES.test(tokens[mention.first - 1]!.text) || COMES_TO.test(tokens.slice(Math.max(part.end, mention.first - COMES_TO_WITHIN), mention.first).map(({ text }) => text).join(" ")));
    if (IN_ALL.test(behind) || makes) return { ...mention, unit: part.unit, firm: true };
  }
  return null;
}

const isSecondOne = ({ tokens }: Stream, { text, first }: QuantityMention): boolean => text === SECOND_ONE && !LASTS.test(tokens[first - 1]?.text ?? "");

/** "Between two and a half and three and a half." "Two and a half and three and a half?": a range taken up again end by end stays that range. */
function isEndOf(mention: QuantityMention, range: QuantityMention): boolean {
  return range.low < range.high && mention.low === mention.high && mention.unit === range.unit && (mention.low === range.low || mention.low === range.high);
}

/** Days in a period, and how much longer or shorter than that is another one. */
const PERIOD_DAYS = { day: 1, week: 7 } as const;
const ANOTHER_PERIOD = 3;

/** The form of a medicine, between how much of it and how often: "a five milligram tablet every day". */
const RATED = /^(tablets?|pills?|capsules?|dose)$/;

/** The right number, told for another period than the element's: "fourteen units a day", where they are for a week. Null where it is for none, or for that one. */
function otherPeriod({ quantities, tokens }: Stream, mention: QuantityMention, expected: ExpectedQuantity): QuantityMention | null {
  if (expected.per === undefined || compareQuantity(mention, expected) !== "right") return null;
  // "Two units a day" is within "up to fourteen a week" and says nothing against it.
  if (expected.bound !== "exact" && Math.abs(mention.high - rangeOf(expected)[1]) > expected.tolerance) return null;
  // "Four milligrams. Once a week you have a blood test": another thing. "A single five milligram tablet, every day": the same.
  const behind = RATED.test(tokens[mention.end]?.text ?? "") && tokens[mention.end - 1]!.after === "" ? mention.end + 1 : mention.end;
  const after = tokens[behind - 1]!.after;
  const rate = quantities.find(({ first, kind }) => first === behind && kind !== "amount");
  if (!(after === "" || (after === "," && /^every|^once/.test(rate?.text ?? "")))) return null;
  // "One or two puffs, up to four times a day" tells how often, for no other period.
  if (rate?.perDay === undefined || rate.perDay[0] > 1) return null;
  const times = 1 / rate.perDay[0] / PERIOD_DAYS[expected.per];
  return times >= ANOTHER_PERIOD || times <= 1 / ANOTHER_PERIOD ? { ...mention, end: rate.end, text: `${mention.text} ${rate.text}` } : null;
}

/**
 * "Before food you want four to seven. Two hours after, under ten": a number of another sentence puts none right where the
 * sentence that says more of the response has a number of its own, and a wrong one.
 */
function numberOfTheSentence(stream: Stream, window: Window, right: QuantityMention, mentions: readonly QuantityMention[], expected: ExpectedQuantity): QuantityMention | null {
  const { aligned, response } = window;
  const others = mentions.filter(({ first }) => !inOneSentence(stream, first, right.first));
  if (others.length === 0) return null;
  const saidBeside = ({ first }: QuantityMention) => aligned.reduce((sum, { term, hit }) => (response.terms[term]!.text !== "{quantity}" && inOneSentence(stream, hit.first, first) ? sum + response.terms[term]!.weight : sum), 0);
  const own = saidBeside(right);
  return others.find((other) => saidBeside(other) > own && !isDeniedItself(stream, other) && compareQuantity(other, expected) === "wrong" && !isOfSomethingElse(stream, window, other, expected)) ?? null;
}

/** Whether a number that is not the expected one is no wrong one either: "every four hours" says how often, not how long; one that is quite another size, or is called too many, tells something else. */
function isOfSomethingElse(stream: Stream, window: Window, mention: QuantityMention, expected: ExpectedQuantity): boolean {
  if (mention.perDay !== undefined && expected.unit !== "time-per-day" && !(expected.apart === true && !asksForNumber(window)) && !ASKS_INTERVAL.test(window.response.text)) return true;
  return isAnotherMatter(mention, expected) || isTooMany(stream, mention);
}

/** Whether the response leaves a number to the rubric. */
export const asksForNumber = ({ response }: Window): boolean => response.terms.some(({ text }) => text === "{quantity}");

/** A number this near to a passage whose response names none still belongs to it: "hold that breath | while you count to a hundred". */
const BESIDE = 6;

/**
 * A number that is plainly not the element's, said with a response that names none: "chew a seventy five milligram
 * aspirin" is no "chew an aspirin" where the element wants three hundred. A number that the response itself has as words
 * is its own, and where the right number stands beside it another is spoken of as well.
 */
export function wrongNumberBeside(stream: Stream, window: Window, expected: ExpectedQuantity): QuantityMention | null {
  const { first, end } = around(stream, window, BESIDE);
  let wrong: QuantityMention | null = null;
  for (const mention of stream.quantities) {
    if (mention.first < first || mention.end > end || !mention.firm || isDeniedItself(stream, mention)) continue;
    const clause = stream.clauseOf[mention.first]!;
    if (clause !== stream.clauseOf[window.first] && clause !== stream.clauseOf[window.end - 1]) continue;
    const rate = otherPeriod(stream, mention, expected);
    const reading = rate === null ? compareQuantity(mention, expected) : "wrong";
    if (reading === "right") return null;
    if (reading !== "wrong" || isOfSomethingElse(stream, window, mention, expected)) continue;
    // Its unit may be a word of the response all the same ("full strength").
    if (window.aligned.some(({ hit }) => hit.first < mention.end - 1 && mention.first < hit.end)) continue;
    wrong ??= rate ?? mention;
  }
  return wrong;
}

/**
 * The number that a stretch tells and that is not the one expected, whatever responses say: null where it names that too,
 * or one that is right somewhere else. Where several are wrong a limit ("up to four") goes before its steps.
 * @param element its number, and those that hold in another country.
 */
export function wrongNumberIn(stream: Stream, { first, end }: { first: number; end: number }, { quantity: expected, elsewhere }: Pick<CompiledElement, "quantity" | "elsewhere">): QuantityMention | null {
  if (expected === null) return null;
  let wrong: QuantityMention | null = null;
  for (const mention of stream.quantities) {
    if (mention.first < first || mention.end > end || isDeniedItself(stream, mention) || isTooFew(stream, mention) || isTooMany(stream, mention)) continue;
    const rate = otherPeriod(stream, mention, expected);
    const compared = rate === null ? compareQuantity(mention, expected) : "wrong";
    if (compared === "right" || elsewhere.some(({ quantity }) => quantity !== null && compareQuantity(mention, quantity) === "right")) return null;
    if (compared !== "wrong" || !mention.firm || isSecondOne(stream, mention) || isAnotherMatter(mention, expected)) continue;
    if (mention.perDay !== undefined && expected.unit !== "time-per-day" && expected.apart !== true) continue;
    if (wrong === null || (wrong.bound !== "at-most" && mention.bound === "at-most")) wrong = rate ?? mention;
  }
  return wrong;
}

/** What people count without naming it: "dial it to twenty", "two in each eye". Of a length of time they name the unit. */
const COUNTED = new Set<ExpectedQuantity["unit"]>(["unit", "puff", "spray", "drop", "breath", "tablet", "capsule", "patch", "dose"]);
/** Behind a number that counts what is spoken of. Behind anything else it may count that. */
const GOES_ON_BEHIND = /^(in|into|up|on|each|every|at|to|a|per|twice|once|daily|and|then|for)$/;

/** "Two of them", "two of the little yellow ones". */
const ADJECTIVES = 3;
function isOutOfThem(tokens: Stream["tokens"], at: number): boolean {
  if (tokens[at]?.text !== "of") return false;
  const next = tokens[at + 1]?.text ?? "";
  if (/^(them|those|these)$/.test(next)) return true;
  return next === "the" && tokens.slice(at + 2, at + 3 + ADJECTIVES).some(({ text }) => text === "ones");
}

/** What is said beside a bare number must weigh so much: "take three" says of what as little as "three". */
const BARE_TELLING = 0.25;
/** Of the response's words beside its number, those heavier than this share of the heaviest must be said. */
const BARE_SHARE = 0.5;

/** Whether a bare number stands for the element's: what else weighs in the response is told with it in so many words, and nothing else is counted. */
function isBareCount({ tokens, polarity, clauseOf }: Stream, { aligned, response }: Window, { first, end, unit, kind, bound }: QuantityMention, expected: ExpectedQuantity): boolean {
  if (unit !== null || kind !== "amount" || bound !== "exact" || !isCounted(expected) || polarity[first]!.hypothetical) return false;
  if (tokens[end - 1]!.after === "" && end < tokens.length && !GOES_ON_BEHIND.test(tokens[end]!.text) && !isOutOfThem(tokens, end)) return false;
  let heaviest = 0;
  for (const { plain, text, weight } of response.terms) if (!plain && text !== "{quantity}") heaviest = Math.max(heaviest, weight);
  let telling = 0;
  for (const { term, quality, hit } of aligned) {
    const { plain, text, weight } = response.terms[term]!;
    if (plain || text === "{quantity}" || quality < IN_SO_MANY_WORDS) continue;
    if (clauseOf[hit.first] !== clauseOf[first]) return false;
    telling += weight;
  }
  return telling >= BARE_TELLING && response.terms.every(({ plain, weight, text }, place) => plain || text === "{quantity}" || weight <= BARE_SHARE * heaviest || aligned.some(({ term, quality }) => term === place && quality >= IN_SO_MANY_WORDS));
}

/** Whether the element's number counts what people leave out, so that a bare number may be held against somebody. */
export const isCounted = ({ unit }: ExpectedQuantity): boolean => COUNTED.has(unit);

const IN_SO_MANY_WORDS = 0.9;

/** "Twenty units, not twelve": a number that is denied itself confirms nothing, and contradicts nothing. A bound is none ("not more than two"). */
function isDeniedItself({ tokens }: Stream, { first, bound }: QuantityMention): boolean {
  let before = first - 1;
  while (BETWEEN.test(tokens[before]?.text ?? "")) before -= 1;
  const word = tokens[before]?.text ?? "";
  return bound === "exact" && (word === "not" || (word === "of" && tokens[before - 1]?.text === "instead") || (word === "than" && tokens[before - 1]?.text === "rather"));
}

/** So soon behind a number it is called too many. */
const TOO_MANY_WITHIN = 8;

/** "Three up each nostril is too many" tells nobody to have three. */
function isTooMany(stream: Stream, { end }: QuantityMention): boolean {
  const { tokens, quantities } = stream;
  const to = sentenceUpTo(stream, end, TOO_MANY_WITHIN);
  for (let place = end; place < to; place += 1) {
    if (quantities.some(({ first }) => first === place)) return false;
    if (tokens[place]!.text === "too" && /^(many|much|few|little)$/.test(tokens[place + 1]?.text ?? "") && !stream.polarity[place]!.negated) return true;
  }
  return false;
}

/** So soon behind a number it is called too few. */
const TOO_FEW_WITHIN = 4;
const TOO_FEW = /^(is|are|would|will) not (really |quite |usually )?(enough|do|be enough|cut it|suffice)\b/;

/** "A single puff won't do you": told as too few it is no number to take. Where it is supposed ("if one isn't enough") it is the first step. */
function isTooFew(stream: Stream, { first, end }: QuantityMention): boolean {
  if (stream.polarity[first]!.hypothetical) return false;
  const to = sentenceUpTo(stream, end, TOO_FEW_WITHIN);
  return TOO_FEW.test(stream.tokens.slice(end, to).map(({ text }) => text).join(" "));
}

const BETWEEN = /^(the|your|a|an|for|just|every|in|on|at|after|to)$/;
