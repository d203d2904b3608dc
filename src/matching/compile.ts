import { clausesOf } from "../language/clause.ts";
import { devicesIn } from "../language/devices.ts";
import { conceptsOf, isDirection, lexiconPhrases, qualityOf, wordWeight } from "../language/lexicon.ts";
import { polarityOf } from "../language/polarity.ts";
import { dimensionsFor } from "../language/quantity-compare.ts";
import { SoundIndex } from "../language/sound.ts";
import { speechActs } from "../language/speech-act.ts";
import { tokenise, type Token } from "../language/token.ts";
import type { ItemKind, Quantity, Rubric } from "../rubric/schema.ts";
import { readPhrase, type Slot } from "./phrase.ts";
import { phraseKey } from "./postings.ts";
import { wordGroups, type WordGroup } from "./word-group.ts";

/** One thing that a response says: found in speech by any of its keys, each as sure as its quality. */
export interface Term {
  /** As written, for `explain`. */
  text: string;
  keys: { key: string; quality: number }[];
  weight: number;
  /** Tells which way: must be said where the response is held against somebody. */
  direction: boolean;
  /** Carries nothing alone: looked for only inside a passage that other terms make. */
  plain: boolean;
  /** Denied in the response itself ("do not share"). */
  negated: boolean;
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
  /** Notions of the element's `must` that its own words do without, a bit each: whoever wrote it took it for right so. */
  without: number;
  /** Notions of the element's `not_with` that stand in its own words, a bit each. */
  besides: number;
  /** Made of words too plain to weigh ("my name is"): only their exact run counts. */
  literal: boolean;
}

export type ResponseKind = "say" | "incorrect" | "elsewhere";

export interface CompiledElement {
  item: string;
  element: string;
  kind: ItemKind;
  say: Response[];
  incorrect: Response[];
  elsewhere: { responses: Response[]; quantity: ExpectedQuantity | null; note: string }[];
  must: WordGroup[];
  notWith: WordGroup[];
  quantity: ExpectedQuantity | null;
  /** Weighty stems of its responses: a patient's question that has one is about it. */
  anchors: Set<string>;
  /** Stems and sets that any of its responses uses: what a passage may add without changing the sense. */
  vocabulary: Set<string>;
}

export type ExpectedQuantity = Extract<Quantity, { value: unknown }>;

export interface CompiledStatement {
  statement: string;
  say: Response[];
  must: WordGroup[];
  notWith: WordGroup[];
  quantity: ExpectedQuantity | null;
}

export interface CompiledRubric {
  elements: CompiledElement[];
  unsafe: CompiledStatement[];
  questions: { question: string; says: Response[]; answer: Response[]; incorrect: Response[]; answeredBy: string[] }[];
  cues: { item: string; says: Response[] }[];
  /** Finds rubric words behind mis-heard ones. */
  sounds: SoundIndex;
  /** Rubric words as written: never taken for another word. */
  vocabulary: Set<string>;
  /** Kinds of device that the rubric or its scenario names: what is said of another is not said of this one. */
  devices: Set<number>;
}

/** Denials are weighed by the polarity gate, not as words. */
const DENIALS = new Set(["not", "never", "no", "without", "avoid", "nor", "neither", "cannot", "instead", "rather", "nothing", "none"]);

/**
 * Words that carry nothing alone still tell "do you have five minutes" from "it takes five minutes", and the more so the
 * fewer other words a response has: of one with a single weighty word they are almost half. What is held against
 * somebody must fit closer, so there each weighs more.
 */
const PLAIN_SHARE = [0.45, 0.45, 0.28, 0.18] as const;
const PLAIN_WEIGHT = { least: 0.1, most: 0.4, wrong: 0.3 } as const;

/** Lower than this, the plain words of a response carry it and must stand as written. */
const LEAST_WEIGHT = 0.9;
/** A number weighs more than a word: it is what the element asks for. */
const QUANTITY_WEIGHT = 1.4;
/** A bare number without its unit ("hold for ten"), and a unit that stands for the one expected ("twice" for two sprays). */
const BARE_NUMBER = 0.7;
const RELATED_UNIT = 0.9;
/** Weight of a word in all responses of the element against a word in one only. */
const SALIENCE = { base: 0.6, share: 0.8 } as const;
/** Weight of a word that half the rubric uses against one that only this item uses. */
const COMMON_WEIGHT = 0.35;

/** A phrase read once: its variants, and the stems any of them uses. */
interface PreparedPhrase {
  text: string;
  variants: Slot[][];
  stems: Set<string>;
  words: Set<string>;
}

/** Reads each phrase of a rubric once, however many passes go over it. */
class Phrasebook {
  private readonly known = new Map<string, PreparedPhrase>();
  private readonly wordTokens = new Map<string, Token[]>();

  read(text: string): PreparedPhrase {
    let prepared = this.known.get(text);
    if (prepared === undefined) {
      prepared = { text, variants: readPhrase(text), stems: new Set(), words: new Set() };
      for (const variant of prepared.variants) {
        for (const slot of variant) {
          if (typeof slot === "string") continue;
          for (const word of slot.words) {
            for (const token of this.tokensOf(word)) {
              prepared.stems.add(token.stem);
              prepared.words.add(token.text);
            }
          }
        }
      }
      this.known.set(text, prepared);
    }
    return prepared;
  }

  /** Whether any variant of a phrase has the words of a notion, one behind the other; at a place of alternatives each of them must. */
  says({ variants }: PreparedPhrase, group: WordGroup, synonyms: boolean): boolean {
    const single = new Set(group.runs.flatMap((run) => (run.length === 1 ? run[0]! : [])));
    const one = (word: string) => this.keysAt([word], synonyms).some((keys) => [...keys].some((key) => single.has(key)));
    return variants.some((slots) => {
      if (slots.some((slot) => typeof slot !== "string" && slot.words.every(one))) return true;
      const places = slots.flatMap((slot) => (typeof slot === "string" ? [new Set<string>()] : this.keysAt(slot.words, synonyms)));
      return group.runs.some((run) => places.some((_, start) => run.length > 1 && run.every((keys, place) => keys.some((key) => places[start + place]?.has(key) === true))));
    });
  }

  /** Keys at each token of a slot; of several words that stand for one another, those of all. */
  private keysAt(words: readonly string[], synonyms: boolean): Set<string>[] {
    const places: Set<string>[] = [];
    for (const word of words) {
      this.tokensOf(word).forEach(({ stem }, place) => {
        const keys = (places[place] ??= new Set());
        keys.add(stem);
        if (synonyms) for (const set of conceptsOf(stem)) keys.add(set);
      });
    }
    return places;
  }

  tokensOf(word: string): Token[] {
    let tokens = this.wordTokens.get(word);
    if (tokens === undefined) {
      tokens = tokenise([word]);
      this.wordTokens.set(word, tokens);
    }
    return tokens;
  }
}

type WeightOf = (stem: string) => number;

/** Compiles a rubric once for any number of transcripts. */
export function compileRubric(rubric: Rubric): CompiledRubric {
  const items = rubric.sections.flatMap((section) => section.items);
  const book = new Phrasebook();
  const compiler: Compiler = { book, rarity: rarityOf(items.map((item) => item.elements.flatMap((element) => element.say)), book) };
  const resolve = (quantity: Quantity | undefined) => resolveQuantity(quantity, rubric);
  const plain = (phrases: readonly string[] | undefined, expected: ExpectedQuantity | null = null, plainWeight: number = PLAIN_WEIGHT.least) => compileResponses(phrases ?? [], expected, compiler, plainWeight);
  const elements = items.flatMap((item) =>
    item.elements.map((element): CompiledElement => {
      const quantity = resolve(element.quantity);
      const must = wordGroups(element.must ?? [], true);
      const notWith = wordGroups(element.not_with ?? [], false);
      const say = compileResponses(element.say, quantity, compiler, PLAIN_WEIGHT.least);
      for (const response of say) {
        const phrase = book.read(response.text);
        response.without = bitsOf(must, (group) => !book.says(phrase, group, true));
        response.besides = bitsOf(notWith, (group) => book.says(phrase, group, false));
      }
      const incorrect = compileResponses(element.incorrect ?? [], quantity, compiler, PLAIN_WEIGHT.wrong);
      return {
        item: item.id,
        element: element.id,
        kind: item.kind,
        say,
        incorrect,
        elsewhere: (element.elsewhere ?? []).map((other) => {
          const otherQuantity = resolve(other.quantity);
          return { responses: compileResponses(other.say ?? element.say, otherQuantity ?? quantity, compiler, PLAIN_WEIGHT.least), quantity: otherQuantity, note: other.note };
        }),
        must,
        notWith,
        quantity,
        anchors: anchorsOf(say),
        vocabulary: new Set(say.flatMap((response) => response.terms.flatMap((term) => term.keys.map(({ key }) => key)))),
      };
    }),
  );
  const unsafe = rubric.unsafe.map((statement): CompiledStatement => {
    const quantity = resolve(statement.quantity);
    return { statement: statement.id, say: plain(statement.say, quantity, PLAIN_WEIGHT.wrong), must: wordGroups(statement.must ?? [], false), notWith: wordGroups(statement.not_with ?? [], false), quantity };
  });
  const questions = rubric.scenario.questions.map((question) => ({
    question: question.id,
    says: plain(question.says),
    answer: plain(question.answer),
    incorrect: plain(question.incorrect, null, PLAIN_WEIGHT.wrong),
    answeredBy: question.answered_by ?? [],
  }));
  const cues = items.filter((item) => item.cue).map((item) => ({ item: item.id, says: plain(item.cue!.patient) }));
  const vocabulary = vocabularyOf(rubric, book);
  return { elements, unsafe, questions, cues, sounds: new SoundIndex(vocabulary), vocabulary, devices: devicesOf(rubric) };
}

function bitsOf(groups: readonly WordGroup[], holds: (group: WordGroup) => boolean): number {
  return groups.reduce((bits, group, place) => (holds(group) ? bits | (1 << place) : bits), 0);
}

/** Kinds of device named anywhere in what the rubric asks for or in its scenario. */
function devicesOf(rubric: Rubric): Set<number> {
  const { scenario } = rubric;
  const texts = [rubric.title, scenario.task, ...Object.values(scenario.label).map(({ text }) => text), ...scenario.questions.flatMap(({ says, answer = [] }) => [...says, ...answer])];
  for (const { items } of rubric.sections) for (const item of items) for (const element of item.elements) texts.push(element.label, ...element.say, ...(element.must ?? []), ...(element.incorrect ?? []));
  for (const statement of rubric.unsafe) texts.push(...statement.say);
  return new Set(texts.flatMap((text) => devicesIn(tokenise(text.replace(/[(){}|]/g, " ").split(/\s+/).filter(Boolean))).map(({ kind }) => kind)));
}

/** Terms this heavy tell the element from its neighbours. */
const ANCHOR_WEIGHT = 0.8;

function anchorsOf(responses: readonly Response[]): Set<string> {
  const terms = responses.flatMap((response) => (response.literal ? [] : response.terms)).filter((term) => term.weight >= ANCHOR_WEIGHT && term.text !== "{quantity}");
  return new Set(terms.flatMap((term) => term.keys.filter(({ quality }) => quality === 1).map(({ key }) => key)));
}

/** The scenario's label goes before the rubric's own number. */
function resolveQuantity(quantity: Quantity | undefined, rubric: Rubric): ExpectedQuantity | null {
  if (quantity === undefined) return null;
  if (!("label" in quantity)) return quantity;
  return resolveQuantity(rubric.scenario.label[quantity.label]?.quantity, rubric);
}

/** 1 for a stem that one item uses, down to COMMON_WEIGHT for one that half of them use or more. */
function rarityOf(items: string[][], book: Phrasebook): WeightOf {
  const counts = new Map<string, number>();
  for (const phrases of items) {
    const stems = new Set<string>();
    for (const phrase of phrases) for (const stemmed of book.read(phrase).stems) stems.add(stemmed);
    for (const stemmed of stems) counts.set(stemmed, (counts.get(stemmed) ?? 0) + 1);
  }
  const half = Math.max(2, items.length / 2);
  return (stemmed) => {
    const count = Math.min(half, Math.max(1, counts.get(stemmed) ?? 1));
    return 1 - (1 - COMMON_WEIGHT) * (Math.log(count) / Math.log(half));
  };
}

interface Compiler {
  book: Phrasebook;
  rarity: WeightOf;
}

function compileResponses(phrases: readonly string[], expected: ExpectedQuantity | null, { book, rarity }: Compiler, plainWeight: number): Response[] {
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
  const terms: Term[] = [];
  const covered = new Set<number>();
  for (const hit of lexiconPhrases.find(tokens)) {
    // The words that part "take ... off" are no part of it: "the lid" is a term of its own.
    const own = hit.parted ? [hit.first, hit.end - 1] : Array.from({ length: hit.end - hit.first }, (_, k) => hit.first + k);
    const places = new Set(own.map((k) => slotOfWord[tokens[k]!.word]!));
    // A set phrase over a slot with alternatives would leave the others out.
    if ([...places].some((place) => typeof slots[place] === "string" || (slots[place] as { words: string[] }).words.length > 1)) continue;
    const inside = own.map((k) => tokens[k]!);
    const key = hit.value;
    for (const k of own) covered.add(k);
    terms.push({
      text: inside.map((token) => token.text).join(" "),
      keys: [{ key: phraseKey(inside), quality: 1 }, { key, quality: qualityOf(key) }],
      weight: Math.max(...inside.map((token) => weightOf(token.stem))) * PHRASE_WEIGHT,
      plain: false,
      direction: false,
      negated: polarity[hit.end - 1]!.negated,
    });
  }
  tokens.forEach((token, place) => {
    if (covered.has(place)) return;
    const slot = slots[slotOfWord[token.word]!]!;
    if (slot === "quantity") {
      const keys = expected === null ? [] : quantityKeys(expected);
      terms.push({ text: "{quantity}", keys, weight: QUANTITY_WEIGHT, plain: false, direction: false, negated: polarity[place]!.negated });
      return;
    }
    if (slot === "name") {
      terms.push({ text: "{name}", keys: [{ key: "#name", quality: 1 }], weight: 1, plain: false, direction: false, negated: polarity[place]!.negated });
      return;
    }
    const alternatives = slot.words.length > 1 ? slot.words.flatMap((word) => book.tokensOf(word)) : [token];
    if (slot.words.length > 1 && token !== tokens.find((candidate) => candidate.word === token.word)) return;
    const weight = Math.max(...alternatives.map((alternative) => (DENIALS.has(alternative.text) ? 0 : wordWeight(alternative.stem) * weightOf(alternative.stem))));
    terms.push({ text: slot.words.length > 1 ? slot.words.join("|") : token.text, keys: keysOf(alternatives), weight, plain: weight === 0, direction: alternatives.every((alternative) => isDirection(alternative.stem)), negated: polarity[place]!.negated });
  });
  const weighty = terms.reduce((sum, term) => sum + term.weight, 0);
  if (terms.length === 0) return null;
  if (weighty < LEAST_WEIGHT) {
    const literalTerms = terms.map((term) => ({ ...term, plain: false, weight: 1, keys: term.keys.filter(({ quality }) => quality === 1) }));
    return { text, terms: literalTerms, weight: literalTerms.length, ownWeight: literalTerms.length, plainWeight: 0, length: tokens.length, asks, without: 0, besides: 0, literal: true };
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
    besides: 0,
    literal: false,
  };
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

function vocabularyOf(rubric: Rubric, book: Phrasebook): Set<string> {
  const words = new Set<string>();
  const take = (phrases: readonly string[] | undefined) => {
    for (const phrase of phrases ?? []) for (const word of book.read(phrase).words) words.add(word);
  };
  for (const section of rubric.sections) {
    for (const item of section.items) {
      for (const element of item.elements) {
        take(element.say);
        take(element.must);
        take(element.incorrect);
      }
    }
  }
  for (const statement of rubric.unsafe) take(statement.say);
  return words;
}
