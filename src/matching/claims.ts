import { compareQuantity } from "../language/quantity-compare.ts";
import { meaningsOf, wordWeight } from "../language/lexicon.ts";
import type { QuantityMention } from "../language/quantity-mention.ts";
import type { Unit } from "../language/units.ts";
import type { WordSpan } from "../station/types.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { topicsOf } from "./said.ts";
import { clauseSpan, inOneSentence, wordsOf, type Stream } from "./stream.ts";
import type { Attempt } from "./types.ts";

/** A number this near to a passage that counts belongs to it. Words. */
const CLAIM_REACH = 4;
/** An element that came this near was meant there, though it was not given. */
const NEAR = 0.5;
/** "Every day" says that something is a habit; it is no number to check. */
const HABIT = /^(every (single )?day|each day|daily|every time|each time|all day)$/;
/** These count time and turns of anything at all: only beside a word of the station's are they a clinical figure. */
const OF_ANYTHING: ReadonlySet<Unit> = new Set<Unit>(["second", "minute", "hour", "day", "week", "month", "year", "time", "time-per-day", "percent", "degree", "number"]);

/** These measure a medicine or what is taken with it, whatever attempt they stand beside. */
const MEASURES: ReadonlySet<Unit> = new Set<Unit>(["milligram", "microgram", "gram", "millilitre"]);

/**
 * Clauses that tell a clinical number (a dose, how often, how long, a threshold) which no element of the rubric covers:
 * for the coach, who knows whether it is right.
 */
export function claimsOf(rubric: CompiledRubric, stream: Stream, matches: readonly { span: WordSpan }[], nearest: readonly Attempt[]): WordSpan[] {
  const quantityOf = new Map(rubric.elements.map(({ item, element, quantity }) => [`${item}/${element}`, quantity]));
  const near = nearest.filter(({ score }) => score >= NEAR);
  const claims = new Map<number, WordSpan>();
  for (const mention of stream.quantities) {
    if (!mention.firm || mention.unit === null || mention.unit === "number" || stream.acts[mention.first] !== "tell" || HABIT.test(mention.text)) continue;
    const words = wordsOf(stream, mention.first, mention.end);
    const turn = turnWords(stream, mention.first);
    const reaches = (span: WordSpan) => span.end > turn.first && span.first < turn.end && words.first < span.end + CLAIM_REACH && span.first - CLAIM_REACH < words.end;
    if (matches.some(({ span }) => reaches(span))) continue;
    // Where the number is not the one that the element waits for, a person should see it.
    const isOther = (expected: CompiledElement["quantity"] | undefined) => expected !== null && expected !== undefined && compareQuantity(mention, expected) === "wrong";
    if (near.some(({ item, element, span }) => reaches(span) && !MEASURES.has(mention.unit!) && !isOther(quantityOf.get(`${item}/${element}`)))) continue;
    if (OF_ANYTHING.has(mention.unit)) {
      const about = sensesAbout(stream, mention);
      if (about.size === 0 ? !isHowOften(rubric, mention) : !isClinical(rubric, about)) continue;
    }
    if (rubric.elements.some((element) => expects(element, mention))) continue;
    claims.set(stream.clauseOf[mention.first]!, clauseSpan(stream, mention.first, mention.end));
  }
  return [...claims.values()];
}

/** What somebody said before the other spoke accounts for no number behind it. */
function turnWords(stream: Stream, place: number): WordSpan {
  const turn = stream.turnOf[place]!;
  let [first, end] = [place, place + 1];
  while (first > 0 && stream.turnOf[first - 1] === turn) first -= 1;
  while (end < stream.tokens.length && stream.turnOf[end] === turn) end += 1;
  return wordsOf(stream, first, end);
}

/** The weighty words of the sentence that has the number, the number's own left out; with what each stands for. */
function sensesAbout(stream: Stream, mention: QuantityMention): ReadonlySet<string> {
  const senses = new Set<string>();
  const take = (place: number) => {
    const { stem } = stream.tokens[place]!;
    if (wordWeight(stem) < 1) return;
    senses.add(stem);
    for (const key of meaningsOf(stem)) senses.add(key);
  };
  const beside = (place: number, edge: number) => stream.turnOf[place] === stream.turnOf[mention.first] && inOneSentence(stream, place, edge);
  for (let place = mention.first - 1; beside(place, mention.first); place -= 1) take(place);
  for (let place = mention.end; beside(place, mention.end - 1); place += 1) take(place);
  return senses;
}

function isClinical(rubric: CompiledRubric, about: ReadonlySet<string>): boolean {
  const topics = topicsOf(rubric);
  return [...about].some((sense) => topics.has(sense));
}

/** "It's twice a day." has no word of the station's: where the rubric asks how often a day, there is nothing else that it could be of. */
function isHowOften(rubric: CompiledRubric, mention: QuantityMention): boolean {
  return mention.unit === "time-per-day" && rubric.elements.some(({ quantity }) => quantity?.unit === "time-per-day");
}

/** A number that an element waits for, in a clinical sentence, was meant for it even where the fit was poor. */
function expects({ quantity }: CompiledElement, mention: QuantityMention): boolean {
  return quantity !== null && compareQuantity(mention, quantity) === "right";
}
