import { meets } from "../station/span.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { besideOf, TURNED, turnedBy } from "./beside.ts";
import { closeContradicted } from "./contradicted.ts";
import { companyOf, Fitting, isAlone, itemsOf, type Items } from "./company.ts";
import { likelihoodOf, type Curve } from "./curve.ts";
import { HELD_LEAST, heldPassages, withReason } from "./held-passages.ts";
import { isHeld, saidIn, withHeldLikelihood } from "./held-likelihood.ts";
import { readAgain } from "./learnt/second-reading.ts";
import weights from "./likelihood.json" with { type: "json" };
import { closeOtherDevices } from "./other-device.ts";
import { bestOf, oneVoice, sameSentence, WRONG_HANDICAP } from "./one-voice.ts";
import { isOpen, sayingPassages, type Passage } from "./passages.ts";
import type { Postings } from "./postings.ts";
import type { Stream } from "./stream.ts";
import { tokensOf, weightyWords } from "./windows.ts";

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

/** From here on it counts: on talk about rubrics left out of the fit no less is found than by the fit alone, and less that was not said (tests/bench/results/likelihood.md). */
export const LIKELY = 0.2;

/**
 * The same passages; those that say their element rightly, if they do, with how likely that is. A poor fit with nothing
 * around it has nothing to make it likely.
 * @param elements all of the rubric.
 */
export function withLikelihood(passages: readonly Passage[], stream: Stream, elements: readonly CompiledElement[]): Passage[] {
  const fitting = new Fitting(passages.filter(canSay));
  const items = itemsOf(elements);
  const first = firstLook(fitting, stream, items);
  return passages.map((passage) => (first.has(passage) && (isOpen(passage) || !isAlone(passage, stream)) ? { ...passage, likelihood: likelihoodOf(weights.second, signsOfSaying(passage, fitting, stream, items, (other) => first.get(other)!)) } : passage));
}

/**
 * All passages of the candidate's stream that may carry an element, weighed beside each other by the responses and the
 * second reader together.
 * @param elements those that are looked for.
 */
export function candidatePassages(rubric: CompiledRubric, postings: Postings, stream: Stream, elements = rubric.elements): Passage[] {
  return readTwice(rubric, responsePassages(rubric, postings, stream, elements), stream);
}

/** @param passages as the responses alone leave them. */
export function readTwice(rubric: CompiledRubric, passages: readonly Passage[], stream: Stream): Passage[] {
  return readAgain({ rubric, stream, passages }, (passage) => passage.verdict === "right" && counts(passage));
}

/** The same by the responses alone. */
export function responsePassages(rubric: CompiledRubric, postings: Postings, stream: Stream, elements = rubric.elements): Passage[] {
  const { saying, held } = lookedFor(rubric, postings, stream, elements);
  const given = withLikelihood(saying, stream, rubric.elements);
  const weighed = given.map((passage) => (isLikely(passage) && turnedBy(besideOf(passage, stream, rubric.elements)) >= TURNED ? { ...passage, closed: [...passage.closed, "turned" as const] } : passage));
  if (held.length === 0) return weighed;
  const against = withHeldLikelihood(held, saidIn(weighed, stream, rubric.elements)).filter((passage) => isHeld(passage, stream) && !weighed.some((other) => other.element === passage.element && saysBetter(other, passage, stream)));
  return against.length === 0 ? weighed : [...withoutContradicted(weighed, against, stream), ...against.map((passage) => withReason(passage, stream))];
}

/** What may be said, and what may be held against the speaker, one passage in one place of each. */
export function lookedFor(rubric: CompiledRubric, postings: Postings, stream: Stream, elements = rubric.elements): { saying: Passage[]; held: Passage[] } {
  const close = (passages: Passage[]) => closeOtherDevices(passages, stream, rubric);
  const saying: Passage[] = [];
  const held: Passage[] = [];
  for (const element of elements) {
    const all = sayingPassages(element, postings, stream, "candidate");
    const against = bestOf(heldPassages(element, all, postings, stream, "candidate", HELD_LEAST));
    saying.push(...oneVoice(bestOf(closeContradicted(all, against, stream)), stream));
    held.push(...against);
  }
  return { saying: close(saying), held: close(held).filter(({ closed }) => closed.length === 0) };
}

/** One sentence says one thing of an element: what is held against the speaker there goes before what would say it. */
function withoutContradicted(saying: readonly Passage[], against: readonly Passage[], stream: Stream): Passage[] {
  return saying.filter((passage) => !against.some((other) => other.element === passage.element && (meets(passage, other) || sameSentence(passage, other, stream))));
}

/** Being wrong needs the better fit where what is right, or right elsewhere, is said in the same words or the same sentence. */
function saysBetter(right: Passage, wrong: Passage, stream: Stream): boolean {
  if (right.verdict !== "elsewhere" && !counts(right)) return false;
  if (meets(right, wrong)) return right.coverage >= wrong.coverage - WRONG_HANDICAP;
  return right.coverage >= wrong.coverage && sameSentence(right, wrong, stream);
}

/** By passage how likely it is where all others are taken by their fit: what the second look takes them by. */
export function firstLook(fitting: Fitting, stream: Stream, items: Items, curves: Curve = weights.first): Map<Passage, number> {
  return new Map(fitting.all.map((passage) => [passage, likelihoodOf(curves, signsOfSaying(passage, fitting, stream, items, ({ coverage }) => coverage))]));
}

/** Whether the passage counts: as likely saying its element or stating it wrongly, or by its fit as its opposite or right elsewhere; and no gate closes. */
export function counts(passage: Passage): boolean {
  if (passage.verdict === "right") return isLikely(passage) && passage.closed.length === 0;
  // What may be held against the speaker and is not is no passage any more (held-likelihood.ts).
  return isOpen(passage) || passage.verdict === "wrong";
}

const isLikely = ({ verdict, likelihood }: Passage): boolean => verdict === "right" && (likelihood ?? 0) >= LIKELY;

/** Whether nothing speaks against the passage but how little of the response it may hold. */
export function canSay(passage: Passage): boolean {
  return passage.verdict === "right" && passage.closed.length === 0 && !lacksName(passage);
}

/** "I'm" gives no name. */
function lacksName({ window: { response, aligned } }: Passage): boolean {
  return response.terms.some(({ text }, place) => text === "{name}" && !aligned.some(({ term }) => term === place));
}

/** @param worth of a passage as a witness of what is spoken of, 0 to 1. */
export function signsOfSaying(passage: Passage, fitting: Fitting, stream: Stream, items: Items, worth: (passage: Passage) => number): number[] {
  const { window, element, first, end } = passage;
  const { aligned, response } = window;
  const { own, ownItem, nextItem, otherItem, sharing, better, farOff, farAround } = companyOf(passage, fitting, items, worth);
  const around = isAlone(passage, stream) ? 0 : 1;
  const carrying = tokensOf(window);
  let weight = 0;
  let sureness = 1;
  for (const { term, hit } of aligned) {
    weight += response.terms[term]!.weight;
    sureness = Math.min(sureness, hit.quality);
  }
  const { weighty, lacking } = weightyWords(window, stream);
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

/** What makes a passage less likely than its fit, in words for `explain`. */
export type Doubt = "nothing-else-of-its-item" | "fits-another-element" | "fits-better-elsewhere" | "few-words" | "other-words-between";

/** @param passages all of the station, with their likelihood. */
export function doubtsOf(passage: Passage, passages: readonly Passage[], stream: Stream, elements: readonly CompiledElement[]): Doubt[] {
  const items = itemsOf(elements);
  const { ownItem, sharing, better } = companyOf(passage, new Fitting(passages.filter(canSay)), items, ({ likelihood }) => likelihood ?? 0);
  const { element, window, first, end } = passage;
  return [
    ...(items.get(element.item)!.elements > 1 && ownItem === 0 && !isAlone(passage, stream) ? ["nothing-else-of-its-item" as const] : []),
    ...(sharing > (passage.likelihood ?? 0) ? ["fits-another-element" as const] : []),
    ...(better === 1 ? ["fits-better-elsewhere" as const] : []),
    ...(window.aligned.length === 1 ? ["few-words" as const] : []),
    ...(tokensOf(window).size < (end - first) / 2 ? ["other-words-between" as const] : []),
  ];
}
