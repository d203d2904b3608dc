import { clausesOf } from "../language/clause.ts";
import { conceptsOf, isDirection, lexiconPhrases, qualityOf, wordWeight } from "../language/lexicon.ts";
import { polarityOf, type Polarity } from "../language/polarity.ts";
import { dimensionsFor } from "../language/quantity-compare.ts";
import { speechActs } from "../language/speech-act.ts";
import { tokenise, type Token } from "../language/token.ts";
import type { Quantity } from "../rubric/schema.ts";
import { NAME, type Slot } from "./phrase.ts";
import type { Phrasebook } from "./phrasebook.ts";
import { phraseKey } from "./postings.ts";
import { remembered } from "./remembered.ts";

/** One thing that a response says: found in speech by any of its keys, each as sure as its quality. */
export interface Term {
  /** As written, for `explain`. */
  text: string;
  /** What it is found by. The responses of a rubric share such lists. */
  keys: { key: string; quality: number }[];
  weight: number;
  /** Tells which way: must be said where the response is held against somebody. */
  direction: boolean;
  /** Carries nothing alone: looked for only inside a passage that other terms make. */
  plain: boolean;
  /** Denied in the response itself ("do not share"). */
  negated: boolean;
  /** Part of what the response supposes ("if it looks cloudy"), not of what it tells. */
  supposed: boolean;
  /** What the author chose between alternatives, however little it weighs ("every" for rinsing it every spray): must be said where the response is held against somebody. */
  needed: boolean;
  /** Looked for, or what somebody cannot do: denied or not comes to the same (language/polarity.ts). */
  eitherWay: boolean;
  /** Behind "even" or "whatever": that it holds there too is not what is denied ("never more than two, even in an attack"). */
  conceded: boolean;
}

export interface Response {
  /** As written in the rubric. */
  text: string;
  terms: Term[];
  /** Sum of the terms' weights. */
  weight: number;
  /** What its words weigh, its number and its plain words aside; above 0. */
  ownWeight: number;
  /** What its plain words weigh together. */
  plainWeight: number;
  /** Words of the response, all counted: how long a passage that says it needs to be. */
  length: number;
  /** Itself a question ("would it be okay if I explained it?"), open or not. */
  asks: "no" | "closed" | "open";
  /**
   * A bit each: notions of the element's `must` that its own words do without, since whoever wrote it took it for right so;
   * of an incorrect response, notions of `not_with` that it names itself.
   */
  without: number;
  /** Notions of `must` that only its number says ("{quantity}" for "month"), a bit each: a wrong number is still this number. */
  byNumber: number;
  /** Its number among all responses of the rubric (term-index.ts). */
  place: number;
  /** Made of words too plain to weigh ("my name is"): only their exact run counts. */
  literal: boolean;
}

/** Whether a response denies something: "don't take it every day", where "every day is poison" denies nothing. */
export const denies = remembered(({ terms }: Response): boolean => terms.some(({ negated }) => negated));

export type ExpectedQuantity = Extract<Quantity, { value: unknown }> & {
  /** For how long the number holds, where the element's responses name it ("{quantity} a week"). */
  per?: Period;
  /** It says how far apart, by the element's responses: "one breath every {quantity}". */
  apart?: true;
};

/** A day or a week: what is taken or drunk in it is counted. */
export type Period = "day" | "week";

/** Denials are weighed by the polarity gate, not as words. */
const DENIALS = new Set(["not", "never", "no", "without", "avoid", "nor", "neither", "cannot", "instead", "rather", "nothing", "none"]);

/**
 * Words that carry nothing alone still tell "do you have five minutes" from "it takes five minutes", and the more so the
 * fewer other words a response has: of one with a single weighty word they are almost half. What is held against
 * somebody must fit closer, so there each weighs more.
 */
const PLAIN_SHARE = [0.45, 0.45, 0.28, 0.18] as const;
export const PLAIN_WEIGHT = { least: 0.1, most: 0.4, wrong: 0.3 } as const;

/** Lower than this, the plain words of a response carry it and must stand as written. */
const LEAST_WEIGHT = 0.9;
/** A number weighs more than a word: it is what the element asks for. */
const QUANTITY_WEIGHT = 1.4;
/** A bare number without its unit ("hold for ten"), and a unit that stands for the one expected ("twice" for two sprays). */
const BARE_NUMBER = 0.7;
const RELATED_UNIT = 0.9;
/** Weight of a word in all responses of the element against a word in one only. */
const SALIENCE = { base: 0.6, share: 0.8 } as const;

export type WeightOf = (stem: string) => number;

export interface Compiler {
  book: Phrasebook;
  rarity: WeightOf;
}

export function compileResponses(phrases: readonly string[], expected: ExpectedQuantity | null, { book, rarity }: Compiler, plainWeight: number): Response[] {
  const prepared = phrases.map((text) => book.read(text));
  const counts = new Map<string, number>();
  for (const { stems } of prepared) for (const stemmed of stems) counts.set(stemmed, (counts.get(stemmed) ?? 0) + 1);
  // A word of all responses of the element tells more than one of a single response.
  const weightOf = (stemmed: string) => rarity(stemmed) * (SALIENCE.base + (SALIENCE.share * (counts.get(stemmed) ?? 0)) / Math.max(1, phrases.length));
  return prepared.flatMap(({ text, variants }) =>
    variants.flatMap((slots) => {
      const response = compileResponse(text, slots, expected, weightOf, plainWeight, book);
      return response === null ? [] : [response];
    }),
  );
}

function compileResponse(text: string, slots: Slot[], expected: ExpectedQuantity | null, weightOf: WeightOf, plainWeight: number, book: Phrasebook): Response | null {
  // The first alternative of each slot makes the sentence whose denials and set phrases are read.
  const lead: string[] = [];
  const slotOfWord: number[] = [];
  slots.forEach((slot, place) => {
    lead.push(slot === "quantity" ? "10" : slot === "name" ? "robin" : slot.words[0]!);
    slotOfWord.push(place);
  });
  const tokens = tokenise(lead);
  const polarity = polarityOf(tokens, clausesOf(tokens));
  const acts = speechActs(tokens, new Set());
  const asks = acts.includes("ask-open") ? "open" : acts.includes("ask-closed") ? "closed" : "no";
  const phrases = phraseTerms(tokens, slots, slotOfWord, weightOf, polarity);
  const covered = new Set(phrases.flatMap(({ places }) => places));
  const chosen = chosenPlaces(tokens, slots, slotOfWord);
  const words = tokens.flatMap((token, place) => {
    const term = wordTerm(token, place, { tokens, slot: slots[slotOfWord[token.word]!]!, expected, weightOf, polarity, book });
    return term === null ? [] : [{ places: [place], term: chosen.has(place) ? { ...term, needed: true } : term }];
  });
  // In the order of speech: what is said the other way round costs.
  const conceded = tokens.findIndex(({ text }) => CONCEDES.test(text));
  const terms = [...phrases, ...words.filter(({ places }) => !covered.has(places[0]!))].sort((one, other) => one.places[0]! - other.places[0]!).map(({ places, term }) => (conceded > 0 && places[0]! >= conceded ? { ...term, conceded: true } : term));
  if (terms.length === 0) return null;
  if (terms.reduce((sum, term) => sum + term.weight, 0) < LEAST_WEIGHT) {
    const run = words.map(({ term }) => ({ ...term, plain: false, weight: 1, keys: term.keys.filter(({ quality }) => quality === 1) }));
    return { text, terms: run, weight: run.length, ownWeight: run.length, plainWeight: 0, length: tokens.length, asks, without: 0, byNumber: 0, place: -1, literal: true };
  }
  const spoken = terms.filter((term) => !DENIALS.has(term.text));
  const each = Math.max(plainWeight, plainWeightOf(spoken));
  const weighed = spoken.map((term) => (term.weight > 0 ? term : { ...term, weight: each }));
  const sum = (which: (term: Term) => boolean) => weighed.reduce((total, term) => total + (which(term) ? term.weight : 0), 0);
  return {
    text,
    terms: weighed,
    weight: sum(() => true),
    ownWeight: Math.max(LEAST_WEIGHT / 10, sum((term) => !term.plain && term.text !== "{quantity}")),
    plainWeight: sum((term) => term.plain),
    length: tokens.length,
    asks,
    without: 0,
    byNumber: 0,
    place: -1,
    literal: false,
  };
}

/** Opens the case in which something holds nonetheless. */
const CONCEDES = /^(even|whatever|however|regardless)$/;

/** Belong to grammar, or do anything at all: to choose between them chooses nothing. */
const CHOOSES_NOTHING = new Set(
  "a an the it its your you my me i we us our he she they them their his her be is are was were to of for and or so that this these those there here will would can could should shall may might must do does have has get got go going just okay please then well very really quite also too as with at by if when what which who how any some all such now because but about ought been let use take give put make keep come see start try say tell want need always simply only in on".split(" "),
);

/** One word of each choice that the author made, the last that is no mere grammar; of choices between mere grammar none. */
function chosenPlaces(tokens: readonly Token[], slots: readonly Slot[], slotOfWord: readonly number[]): Set<number> {
  const last = new Map<number, number>();
  tokens.forEach(({ text, word }, place) => {
    const slot = slots[slotOfWord[word]!]!;
    if (typeof slot === "string" || slot.choice === undefined || slot.words.some((one) => CHOOSES_NOTHING.has(one)) || CHOOSES_NOTHING.has(text)) return;
    last.set(slot.choice, place);
  });
  const chosen = new Set(last.values());
  slots.forEach((slot, at) => {
    if (typeof slot === "string" || slot.choice === undefined || !endsChoiceOfSeveral(slots, at) || !PARTICLE.test(slot.words[0]!)) return;
    chosen.add(slotOfWord.lastIndexOf(at));
  });
  return chosen;
}

/** "(Leave it on)" is no "leave": the particle tells what is done. */
const PARTICLE = /^(on|off|in|out|up|down|away)$/;

/** Whether a slot is the last word of an alternative of several words. */
function endsChoiceOfSeveral(slots: readonly Slot[], at: number): boolean {
  const choiceAt = (place: number) => { const slot = slots[place]; return slot === undefined || typeof slot === "string" ? undefined : slot.choice; };
  return choiceAt(at - 1) === choiceAt(at) && choiceAt(at + 1) !== choiceAt(at);
}

interface Read {
  tokens: readonly Token[];
  slot: Slot;
  expected: ExpectedQuantity | null;
  weightOf: WeightOf;
  polarity: readonly Polarity[];
  book: Phrasebook;
}

/** The set phrases of a response, each a term, with the tokens that make it. */
function phraseTerms(tokens: readonly Token[], slots: readonly Slot[], slotOfWord: readonly number[], weightOf: WeightOf, polarity: readonly Polarity[]): { places: number[]; term: Term }[] {
  return lexiconPhrases.find(tokens).flatMap(({ first, end, parted, value: key }) => {
    // The words that part "take ... off" are no part of it: "the lid" is a term of its own.
    const places = parted ? [first, end - 1] : Array.from({ length: end - first }, (_, k) => first + k);
    // A set phrase over a slot with alternatives would leave the others out.
    const own = places.map((place) => slots[slotOfWord[tokens[place]!.word]!]!);
    if (own.some((slot) => typeof slot === "string" || slot.words.length > 1)) return [];
    const inside = places.map((place) => tokens[place]!);
    const term: Term = {
      text: inside.map((token) => token.text).join(" "),
      keys: [{ key: phraseKey(inside), quality: 1 }, { key, quality: qualityOf(key) }],
      weight: Math.max(...inside.map((token) => weightOf(token.stem))) * PHRASE_WEIGHT,
      plain: false,
      direction: false,
      negated: polarity[end - 1]!.negated,
      supposed: polarity[end - 1]!.hypothetical,
      needed: false,
      eitherWay: polarity[end - 1]!.eitherWay,
      conceded: false,
    };
    return [{ places, term }];
  });
}

/** One word of a response, a number or a name; null for the second half of a word that makes two tokens. */
function wordTerm(token: Token, place: number, { tokens, slot, expected, weightOf, polarity, book }: Read): Term | null {
  const { negated, eitherWay, hypothetical: supposed } = polarity[place]!;
  if (slot === "quantity") return { text: "{quantity}", keys: expected === null ? [] : quantityKeys(expected), weight: QUANTITY_WEIGHT, plain: false, direction: false, negated, supposed, needed: false, eitherWay, conceded: false };
  if (slot === "name") return { text: "{name}", keys: [{ key: NAME, quality: 1 }], weight: 1, plain: false, direction: false, negated, supposed, needed: false, eitherWay, conceded: false };
  const several = slot.words.length > 1;
  if (several && token !== tokens.find((candidate) => candidate.word === token.word)) return null;
  const alternatives = several ? slot.words.flatMap((word) => book.tokensOf(word)) : [token];
  const weight = Math.max(...alternatives.map(({ text, stem }) => (DENIALS.has(text) ? 0 : wordWeight(stem) * weightOf(stem))));
  return { text: several ? slot.words.join("|") : token.text, keys: book.keysFor(several ? slot.words.join("|") : token.stem, () => keysOf(alternatives)), weight, plain: weight === 0, direction: alternatives.every(({ stem }) => isDirection(stem)), negated, supposed, needed: false, eitherWay, conceded: false };
}

function plainWeightOf(terms: readonly Term[]): number {
  const plain = terms.filter((term) => term.plain).length;
  const weighty = terms.length - plain;
  const share = PLAIN_SHARE[weighty] ?? 0;
  if (plain === 0 || share === 0) return PLAIN_WEIGHT.least;
  const content = terms.reduce((sum, term) => sum + term.weight, 0);
  return Math.min(PLAIN_WEIGHT.most, Math.max(PLAIN_WEIGHT.least, (share * content) / ((1 - share) * plain)));
}

function quantityKeys(expected: ExpectedQuantity): Term["keys"] {
  const dimensions = dimensionsFor(expected.unit).map((dimension, place) => ({ key: `#${dimension}`, quality: place === 0 ? 1 : RELATED_UNIT }));
  return [...dimensions, { key: "#bare", quality: BARE_NUMBER }];
}

/** A set phrase ("breathe out") says more than one of its words. */
const PHRASE_WEIGHT = 1.3;

function keysOf(alternatives: readonly Token[]): Term["keys"] {
  const best = new Map<string, number>();
  const add = (key: string, quality: number) => best.set(key, Math.max(quality, best.get(key) ?? 0));
  for (const token of alternatives) {
    add(token.stem, 1);
    for (const set of conceptsOf(token.stem)) add(set, qualityOf(set));
  }
  return [...best].map(([key, quality]) => ({ key, quality }));
}
