import { devicesIn } from "../language/devices.ts";
import { SoundIndex } from "../language/sound.ts";
import { SplitIndex } from "./split-words.ts";
import { tokenise } from "../language/token.ts";
import type { ItemKind, Learnt, Quantity, Rubric } from "../rubric/schema.ts";
import { Phrasebook } from "./phrasebook.ts";
import type { Age } from "./others.ts";
import { compileResponses, PLAIN_WEIGHT, type Compiler, type ExpectedQuantity, type Period, type Response, type WeightOf } from "./response.ts";
import { TermIndex } from "./term-index.ts";
import { wordGroups, type WordGroup } from "./word-group.ts";

export interface CompiledElement {
  item: string;
  element: string;
  kind: ItemKind;
  say: Response[];
  incorrect: Response[];
  elsewhere: { responses: Response[]; quantity: ExpectedQuantity | null; note: string }[];
  must: WordGroup[];
  notWith: WordGroup[];
  /** The patient's, where the scenario tells it. */
  age: Age | null;
  /** A sign that must alarm. */
  redFlag: boolean;
  /** Kinds of device that right responses of its item name. */
  devices: number[];
  quantity: ExpectedQuantity | null;
  /** Weighty stems of its responses: a patient's question that has one is about it. */
  anchors: Set<string>;
  /** Stems and sets that any of its responses uses: what a passage may add without changing the sense. */
  vocabulary: Set<string>;
}

export interface CompiledStatement {
  statement: string;
  /** In plain words, for the reason of what it contradicts. */
  label: string;
  say: Response[];
  must: WordGroup[];
  notWith: WordGroup[];
  quantity: ExpectedQuantity | null;
  /** Elements (item/element) whose wrong statements amount to it. */
  wrongOf: readonly string[];
  /** Elements (item/element) that it states wrongly. */
  contradicts: readonly string[];
}

export interface CompiledRubric {
  elements: CompiledElement[];
  unsafe: CompiledStatement[];
  questions: { question: string; says: Response[]; answer: Response[]; incorrect: Response[]; answeredBy: string[] }[];
  cues: { item: string; says: Response[] }[];
  /** Finds rubric words behind mis-heard ones. */
  sounds: SoundIndex;
  /** For words that were split. */
  splits: SplitIndex;
  /** All terms of all its responses. */
  terms: TermIndex;
  /** Rubric words as written: never taken for another word. */
  vocabulary: Set<string>;
  /** Kinds of device that its title or scenario names: what is said of another is not said of this one, where neither the item nor the response names it. */
  devices: Set<number>;
  /** What was learnt from marked sayings, where the rubric names it. */
  learnt: Learnt | null;
}

/** Weight of a word that half the rubric uses against one that only this item uses. */
const COMMON_WEIGHT = 0.35;

/** Compiles a rubric once for any number of transcripts. */
export function compileRubric(rubric: Rubric): CompiledRubric {
  const items = rubric.sections.flatMap((section) => section.items);
  const book = new Phrasebook();
  const compiler: Compiler = { book, rarity: rarityOf(items.map((item) => item.elements.flatMap((element) => element.say)), book) };
  const resolve = (quantity: Quantity | undefined) => resolveQuantity(quantity, rubric);
  const plain = (phrases: readonly string[] | undefined, expected: ExpectedQuantity | null = null, plainWeight: number = PLAIN_WEIGHT.least) => compileResponses(phrases ?? [], expected, compiler, plainWeight);
  const age = (["child", "adult"] as const).find((one) => rubric.scenario.conditions.includes(one)) ?? null;
  const elements = items.flatMap((item) => {
    const devices = devicesNamed(item.elements.flatMap(({ label, say, must = [] }) => [label, ...say, ...must]));
    return item.elements.map((element): CompiledElement => {
      const quantity = withPeriod(resolve(element.quantity), element.say);
      const must = wordGroups(element.must ?? [], true);
      const say = compileResponses(element.say, quantity, compiler, PLAIN_WEIGHT.least);
      for (const response of say) {
        const phrase = book.read(response.text);
        response.without = bitsOf(must, (group) => !book.says(phrase, group, quantity?.unit ?? null));
        response.byNumber = quantity === null ? 0 : bitsOf(must, (group) => !book.says(phrase, group)) & ~response.without;
      }
      const notWith = wordGroups(element.not_with ?? [], false);
      const incorrect = compileResponses(element.incorrect ?? [], quantity, compiler, PLAIN_WEIGHT.wrong);
      for (const response of incorrect) response.without = bitsOf(notWith, (group) => book.names(book.read(response.text), group));
      return {
        item: item.id,
        element: element.id,
        age,
        kind: item.kind,
        say,
        incorrect,
        elsewhere: (element.elsewhere ?? []).map((other) => {
          const otherQuantity = resolve(other.quantity);
          return { responses: compileResponses(other.say ?? element.say, otherQuantity ?? quantity, compiler, PLAIN_WEIGHT.least), quantity: otherQuantity, note: other.note };
        }),
        must,
        notWith,
        redFlag: element.red_flag ?? false,
        devices,
        quantity,
        anchors: anchorsOf(say),
        vocabulary: new Set(say.flatMap((response) => response.terms.flatMap((term) => term.keys.map(({ key }) => key)))),
      };
    });
  });
  const unsafe = rubric.unsafe.map((statement): CompiledStatement => {
    const quantity = resolve(statement.quantity);
    return { statement: statement.id, label: statement.label, say: plain(statement.say, quantity, PLAIN_WEIGHT.wrong), must: wordGroups(statement.must ?? [], false), notWith: wordGroups(statement.not_with ?? [], false), quantity, wrongOf: statement.wrong_of ?? [], contradicts: statement.contradicts ?? [] };
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
  const parts = { elements, unsafe, questions, cues, sounds: new SoundIndex(vocabulary), splits: SplitIndex.of(vocabulary), vocabulary, devices: devicesOf(rubric), learnt: rubric.learnt ?? null };
  return { ...parts, terms: new TermIndex(parts) };
}

function bitsOf(groups: readonly WordGroup[], holds: (group: WordGroup) => boolean): number {
  return groups.reduce((bits, group, place) => (holds(group) ? bits | (1 << place) : bits), 0);
}

/** Kinds of device named in the title and the scenario. What one item names ("any other tablets or inhalers?") is no device of the others, and an unsafe statement may name any ("stop your inhaler"). */
const devicesOf = ({ title, scenario: { task, label } }: Rubric): Set<number> => new Set(devicesNamed([title, task, ...Object.values(label).map(({ text }) => text)]));

/** @param texts phrases of a rubric, alternatives and all. */
export function devicesNamed(texts: readonly string[]): number[] {
  return [...new Set(texts.flatMap((text) => devicesIn(tokenise(text.replace(/[(){}|]/g, " ").split(/\s+/).filter(Boolean))).map(({ kind }) => kind)))];
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

/** Behind a number its period follows so soon: "{quantity} units a week". */
const PERIOD_WITHIN = 6;
const PER = /^(a|an|per|each|every)$/;
const PERIODS: Readonly<Record<string, Period>> = { day: "day", night: "day", evening: "day", morning: "day", week: "week" };

/** Before a number they say how far apart. */
const APART = /\b(every|each)[|)]* ?\{quantity\}/;

/** The number with the period that the responses count it by, where they name one and no other. */
function withPeriod(quantity: ExpectedQuantity | null, say: readonly string[]): ExpectedQuantity | null {
  // How often a day has its period in its unit.
  if (quantity === null || quantity.unit === "time-per-day") return quantity;
  const named = new Set<Period>();
  for (const response of say) {
    const behind = response.split("{quantity}").at(-1)!.split(/[\s|()]+/).filter(Boolean).slice(0, PERIOD_WITHIN);
    if (!response.includes("{quantity}") || !behind.some((word) => PER.test(word))) continue;
    for (const word of behind) if (PERIODS[word] !== undefined) named.add(PERIODS[word]);
  }
  const [per] = named;
  const apart = say.some((response) => APART.test(response));
  return { ...quantity, ...(per !== undefined && named.size === 1 && { per }), ...(apart && { apart }) };
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
