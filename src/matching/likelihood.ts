import { wordWeight } from "../language/lexicon.ts";
import type { CompiledElement } from "./compile.ts";
import weights from "./likelihood.json" with { type: "json" };
import { isOpen, isWeighed, type Passage } from "./passages.ts";
import type { Stream } from "./stream.ts";

/*
 * How likely it is that a passage says its element. A fit alone does not tell: of fifty elements some fit a few loose
 * words somewhere in five minutes of talk. What tells is beside the passage: whether other elements of its item are
 * spoken of there, whether another element has the same words, how much of what is said has nothing to do with the
 * response. A logistic curve over such signs, fitted by `npm run fit:likelihood` (tests/bench/fit-likelihood.ts) on
 * invented talk whose every sentence is annotated; tests/bench/results/likelihood.md has the figures.
 */

/** In the order of the weights in likelihood.json, behind the intercept. */
export const SIGNS = [
  "coverage",
  "its item has no other element",
  "its item is spoken of near by",
  "an item next to it is spoken of near by",
  "another item is spoken of near by",
  "how far off in the rubric the items near by stand",
  "how far off the items stand that are spoken of around",
  "another element has these words",
  "passages of the element (log)",
  "the element fits better elsewhere",
  "share of weighty words that the response lacks",
  "weighty words (log)",
  "weighty words that the response lacks (log)",
  "weight of the response (log)",
  "weight found (log)",
  "share of the stretch that carries it",
  "one word alone",
  "two words",
  "least sureness of a word",
  "notions it must name (log)",
  "a question",
  "a teach-back request",
] as const;

/** Tokens on either side that are near by. */
const NEAR = 40;
/** Tokens on either side that are still around. */
const AROUND = 120;
/** Items so few places apart are next to each other: who follows the rubric's order speaks of one beside the other. */
const NEXT = 2;
/** With fewer tokens around it, what is near by tells nothing. */
const LEAST_AROUND = 20;
/** A word at least this heavy is weighty: small words may stand anywhere. */
const WEIGHTY = 1;

/** From here on it counts: in the talk it was fitted on no less is found than by the fit alone, a tenth less is found that was not said, and what is shown for it is true in 68% instead of 58%. */
export const LIKELY = 0.2;

/**
 * A poor fit with nothing around it has nothing to make it likely.
 *
 * The same passages; those that say their element rightly, if they do, with how likely that is.
 * @param elements all of the rubric.
 */
export function withLikelihood(passages: readonly Passage[], stream: Stream, elements: readonly CompiledElement[]): Passage[] {
  const fitting = passages.filter(canSay);
  const items = itemsOf(elements);
  return passages.map((passage) => (canSay(passage) && (isOpen(passage) || aroundOf(passage, stream) > LEAST_AROUND) ? { ...passage, likelihood: curve(signsOfSaying(passage, fitting, stream, items)) } : passage));
}

/** Whether the passage counts: as likely saying its element, or by its fit as wrong or right elsewhere; and no gate closes. */
export function counts(passage: Passage): boolean {
  return passage.verdict === "right" ? (passage.likelihood ?? 0) >= LIKELY : isOpen(passage);
}

/** Whether nothing speaks against the passage but how little of the response it may hold. */
export function canSay(passage: Passage): boolean {
  return passage.verdict === "right" && passage.closed.length === 0 && isWeighed(passage) && !lacksName(passage);
}

/** "I'm" gives no name. */
function lacksName({ window: { response, aligned } }: Passage): boolean {
  return response.terms.some(({ text }, place) => text === "{name}" && !aligned.some(({ term }) => term === place));
}

/** Items of the rubric: how many elements each has, and its place. */
export type Items = ReadonlyMap<string, { elements: number; place: number }>;

export function itemsOf(elements: readonly CompiledElement[]): Items {
  const items = new Map<string, { elements: number; place: number }>();
  for (const { item } of elements) {
    const known = items.get(item);
    if (known === undefined) items.set(item, { elements: 1, place: items.size });
    else known.elements += 1;
  }
  return items;
}

/**
 * @param fitting passages of the stream on which no gate closes.
 */
export function signsOfSaying(passage: Passage, fitting: readonly Passage[], stream: Stream, items: Items): number[] {
  const { window, element, first, end } = passage;
  const { aligned, response } = window;
  const { own, ownItem, nextItem, otherItem, sharing, better, farOff, farAround } = companyOf(passage, fitting, items);
  const around = aroundOf(passage, stream) > LEAST_AROUND ? 1 : 0;
  const carrying = new Set<number>();
  let weight = 0;
  let sureness = 1;
  for (const { term, hit } of aligned) {
    weight += response.terms[term]!.weight;
    sureness = Math.min(sureness, hit.quality);
    for (let place = hit.first; place < hit.end; place += 1) carrying.add(place);
  }
  let weighty = 0;
  let lacking = 0;
  for (let place = first; place < end; place += 1) {
    if (wordWeight(stream.tokens[place]!.stem) < WEIGHTY) continue;
    weighty += 1;
    if (!carrying.has(place)) lacking += 1;
  }
  const { kind, must } = element;
  return [
    passage.coverage,
    items.get(element.item)!.elements === 1 ? 1 : 0,
    ownItem * around,
    nextItem * around,
    otherItem * around,
    farOff * around,
    farAround * around,
    sharing,
    Math.log1p(own),
    better,
    lacking / Math.max(1, weighty),
    Math.log1p(weighty),
    Math.log1p(lacking),
    Math.log1p(response.weight),
    Math.log1p(weight),
    carrying.size / (end - first),
    aligned.length === 1 ? 1 : 0,
    aligned.length === 2 ? 1 : 0,
    sureness,
    Math.log1p(must.length),
    kind === "ask" || kind === "ask-openly" ? 1 : 0,
    kind === "teach-back" ? 1 : 0,
  ];
}

/** What else is said in the passage's words and near them: the best fits of each kind. */
interface Company {
  /** Passages of its element, itself among them. */
  own: number;
  /** Of other elements of its item, near by. */
  ownItem: number;
  /** Of items that stand next to its own in the rubric, near by and in other words. */
  nextItem: number;
  /** Of other items, near by and in other words. */
  otherItem: number;
  /** Mean distance in the rubric, 0 to 1 of its items, of the items near by; and of those further around. Weighed by fit. */
  farOff: number;
  farAround: number;
  /** Of other elements, in some of the same words. */
  sharing: number;
  /** 1 where its element fits better elsewhere, else 0. */
  better: number;
}

function companyOf(passage: Passage, fitting: readonly Passage[], items: Items): Company {
  const { element, first, end } = passage;
  const { place } = items.get(element.item)!;
  const company: Company = { own: 0, ownItem: 0, nextItem: 0, otherItem: 0, farOff: 0, farAround: 0, sharing: 0, better: 0 };
  let nearWeight = 0;
  let aroundWeight = 0;
  for (const other of fitting) {
    if (other.element === element) {
      company.own += 1;
      if (other.coverage > passage.coverage) company.better = 1;
      continue;
    }
    const overlaps = other.first < end && first < other.end;
    if (overlaps && other.coverage > company.sharing) company.sharing = other.coverage;
    const apart = Math.abs(other.first - first);
    if (apart >= AROUND) continue;
    if (!overlaps && other.element.item !== element.item) {
      const off = Math.abs(items.get(other.element.item)!.place - place) / items.size;
      aroundWeight += other.coverage;
      company.farAround += other.coverage * off;
      if (apart < NEAR) {
        nearWeight += other.coverage;
        company.farOff += other.coverage * off;
      }
    }
    if (apart >= NEAR) continue;
    if (other.element.item === element.item) company.ownItem = Math.max(company.ownItem, other.coverage);
    else if (!overlaps) {
      company.otherItem = Math.max(company.otherItem, other.coverage);
      if (Math.abs(items.get(other.element.item)!.place - place) <= NEXT) company.nextItem = Math.max(company.nextItem, other.coverage);
    }
  }
  if (nearWeight > 0) company.farOff /= nearWeight;
  if (aroundWeight > 0) company.farAround /= aroundWeight;
  return company;
}

/** What makes a passage less likely than its fit, in words for `explain`. */
export type Doubt = "nothing-else-of-its-item" | "fits-another-element" | "fits-better-elsewhere" | "few-words" | "other-words-between";

export function doubtsOf(passage: Passage, passages: readonly Passage[], stream: Stream, elements: readonly CompiledElement[]): Doubt[] {
  const items = itemsOf(elements);
  const { ownItem, sharing, better } = companyOf(passage, passages.filter(canSay), items);
  const { element, window, first, end } = passage;
  const carrying = new Set(window.aligned.flatMap(({ hit }) => Array.from({ length: hit.end - hit.first }, (_, k) => hit.first + k)));
  return [
    ...(items.get(element.item)!.elements > 1 && ownItem === 0 && aroundOf(passage, stream) > LEAST_AROUND ? ["nothing-else-of-its-item" as const] : []),
    ...(sharing > passage.coverage ? ["fits-another-element" as const] : []),
    ...(better === 1 ? ["fits-better-elsewhere" as const] : []),
    ...(window.aligned.length === 1 ? ["few-words" as const] : []),
    ...(carrying.size < (end - first) / 2 ? ["other-words-between" as const] : []),
  ];
}

function aroundOf({ first, end }: Passage, { tokens }: Stream): number {
  return Math.min(tokens.length, end + NEAR) - Math.max(0, first - NEAR) - (end - first);
}

function curve(signs: readonly number[]): number {
  let sum = weights.intercept;
  for (let place = 0; place < signs.length; place += 1) sum += weights.signs[place]! * signs[place]!;
  return 1 / (1 + Math.exp(-sum));
}
