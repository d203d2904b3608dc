import type { ExpectedQuantity } from "../language/quantity.ts";
import { compileRubric, type CompiledRubric } from "../matching/compile.ts";
import type { Passage } from "../matching/passages.ts";
import { matchUtterance, UtteranceReader, type UtteranceReading } from "../matching/utterance.ts";
import { applies, itemsOf } from "../rubric/items.ts";
import type { Element, Item, Rubric, UnsafeStatement } from "../rubric/schema.ts";
import { examplesOf, type Example } from "./examples.ts";
import { wordsToSay } from "./length.ts";
import type { Effect, Readings, ResponseReading } from "./readings.ts";
import { lightPhrases } from "./light-phrases.ts";
import { whyNot, whyUnfound, whyUntold, type Reason } from "./reasons.ts";
import { readQuestions } from "./spoken-questions.ts";
import { statedNumbers } from "./stated-numbers.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import { saidElements, utterancesOf } from "./utterances.ts";
import { writtenNumbers } from "./written-numbers.ts";

interface Variant {
  said: string;
  reading: UtteranceReading;
}

/**
 * Says every acceptable response to the matcher, each alone, and runs the examples. This takes most of the time of a
 * check; nothing else in the review needs the compiled rubric.
 */
export function readPhrases(rubric: Rubric): Readings {
  // What was learnt from marked sayings is not the rubric's author's to mend: the rubric alone is asked.
  const compiled = { ...compileRubric(rubric), learnt: null };
  const reader = new UtteranceReader(compiled);
  const counted = new Set(itemsOf(rubric).filter((item) => applies(item, rubric.scenario)).map(({ id }) => id));
  const elements = saidElements(rubric);
  const readings: Readings = { utterances: 0, responses: [], examples: [], numbers: statedNumbers(elements), written: writtenNumbers(elements, rubric), unfound: [], untold: [], idle: idleMusts(compiled), questions: readQuestions(rubric, compiled), light: lightPhrases(compiled), speaking: wordsToSay(elements, rubric) };
  const known = new Map<string, UtteranceReading>();
  const read = (said: string): UtteranceReading => {
    const reading = known.get(said) ?? reader.read(said);
    known.set(said, reading);
    return reading;
  };
  let number = 0;
  for (const { item, element, said } of elements) {
    for (const sentences of said) {
      const variants = sentences.map((text) => ({ said: text, reading: read(text) }));
      const effects = effectsOf(variants, item, counted);
      const [missed, unsafe] = [missedBy(variants, item, element, reader), unsafeIn(variants)];
      if (missed !== null || unsafe !== null || effects.length > 0) readings.responses.push({ response: number, missed, effects, unsafe });
      readings.utterances += variants.length;
      number += 1;
    }
  }
  readings.untold = elements.flatMap(({ item, element }, place) => untoldOf(item, element, place, rubric, read, reader));
  readings.unfound = rubric.unsafe.flatMap((statement, place) => unfoundOf(statement, place, rubric, read, reader));
  examplesOf(rubric).forEach((example, place) => {
    if (!holds(example, compiled)) readings.examples.push(place);
  });
  return readings;
}

const isOf = (passage: Passage, item: Item, element: Element) => passage.element.item === item.id && passage.element.element === element.id;

function missedBy(variants: readonly Variant[], item: Item, element: Element, reader: UtteranceReader): ResponseReading["missed"] {
  const missed = variants.find(({ reading }) => !reading.kept.some((passage) => passage.verdict === "right" && isOf(passage, item, element)));
  return missed === undefined ? null : { said: missed.said, ...whyNot(missed.reading, item, element, reader.lacksMust(missed.said, item.id, element.id)) };
}

function unsafeIn(variants: readonly Variant[]): ResponseReading["unsafe"] {
  for (const { said, reading } of variants) {
    const [unsafe] = reading.unsafe;
    if (unsafe !== undefined) return { said, statement: unsafe.statement };
  }
  return null;
}

/** A statement that is not told in its own words is never told: of each phrase one variant must be, the first that is ends the search. */
function silentPhrases(phrases: readonly string[], expected: ExpectedQuantity | null, isTold: (said: string) => boolean, why: (said: string, phrase: string) => Reason): ({ phrase: number; said: string } & Reason)[] {
  return phrases.flatMap((phrase, place) => {
    const variants = utterancesOf(phrase, expected);
    if (variants.some(isTold)) return [];
    const said = variants[0] ?? phrase;
    return [{ phrase: place, said, ...why(said, phrase) }];
  });
}

function unfoundOf({ id, say, quantity }: UnsafeStatement, statement: number, rubric: Rubric, read: (said: string) => UtteranceReading, reader: UtteranceReader): Readings["unfound"] {
  const isFound = (said: string) => read(said).unsafe.some((match) => match.statement === id);
  return silentPhrases(say, expectedQuantity(quantity, rubric), isFound, (said) => whyUnfound(reader.shutsOut(said, id))).map((phrase) => ({ statement, ...phrase }));
}

/** An element's wrong statements: told for another element of the item, or as an unsafe statement, they are told. */
function untoldOf(item: Item, element: Element, place: number, rubric: Rubric, read: (said: string) => UtteranceReading, reader: UtteranceReader): Readings["untold"] {
  const isTold = (said: string) => read(said).unsafe.length > 0 || read(said).kept.some((passage) => passage.verdict === "wrong" && passage.element.item === item.id);
  const why = (said: string, phrase: string) => whyUntold(read(said), item, element, reader.shutsOutWrong(said, phrase, item.id, element.id));
  return silentPhrases(element.incorrect ?? [], expectedQuantity(element.quantity, rubric), isTold, why).map((phrase) => ({ element: place, ...phrase }));
}

/** A response without a must-word stands by its own words; where all do, the must-word never counts. */
function idleMusts({ elements }: CompiledRubric): Readings["idle"] {
  return elements.flatMap(({ must, say }, element) => must.flatMap((_, place) => (say.length > 0 && say.every(({ without }) => (without & (1 << place)) !== 0) ? [{ element, must: place }] : [])));
}

/** What the variants do to other items, each other item and effect once. */
function effectsOf(variants: readonly Variant[], item: Item, counted: ReadonlySet<string>): Effect[] {
  const effects = new Map<string, Effect>();
  for (const { said, reading } of variants) {
    for (const { element, verdict } of reading.kept) {
      if (element.item === item.id || !counted.has(element.item) || (verdict !== "right" && verdict !== "wrong")) continue;
      const effect = verdict === "right" ? "earns" : "contradicts";
      const key = `${element.item} ${effect}`;
      if (!effects.has(key)) effects.set(key, { said, other: element.item, otherElement: element.element, effect });
    }
  }
  return [...effects.values()];
}

/** An example is run as a station in which nothing else is said. */
function holds({ text, must, of }: Example, compiled: CompiledRubric): boolean {
  const { elements, unsafe } = matchUtterance(text, compiled);
  const hit =
    "item" in of
      ? elements.some((match) => match.item === of.item && match.element === of.element && match.verdict === "right")
      : unsafe.some((match) => match.statement === of.statement && match.verdict === "unsafe");
  return hit === (must === "earns");
}
