import type { QuantityMention } from "../language/quantity.ts";
import type { CompiledElement } from "./compile.ts";
import { heldPassages, standsAlone, withReason } from "./held-passages.ts";
import { groupPossible } from "./must-words.ts";
import { bestOf, oneVoice } from "./one-voice.ts";
import { readPolarity } from "./polarity-gate.ts";
import type { Postings } from "./postings.ts";
import { readQuantity } from "./quantity-gate.ts";
import type { Response } from "./response.ts";
import { inOneSentence, type Stream } from "./stream.ts";
import type { Gate, Verdict } from "./types.ts";
import { withUnion } from "./union.ts";
import { contentGates, weigh } from "./weigh.ts";
import { bestWindows, windowsFor, type Window } from "./windows.ts";

/** A passage weighed for one element: what it would be, and what speaks against it. */
export interface Passage {
  element: CompiledElement;
  window: Window;
  first: number;
  end: number;
  /** The window's coverage, lifted by what other responses of the element add. Same name as a window's, to rank both alike. */
  coverage: number;
  verdict: Verdict;
  closed: Gate[];
  quantity?: QuantityMention;
  reason?: string;
  /** Said wrongly, and taken back at once ("no, that's not right"). */
  takenBack?: boolean;
  /** A sign that must alarm, told as nothing. */
  toldAsNothing?: true;
  /** Its bare number is wrong here and right of another element. */
  ofAnother?: boolean;
  /** How likely it says the element, or states it wrongly where that is its verdict, seen beside all other passages of the station (likelihood.ts, held-likelihood.ts). */
  likelihood?: number;
}

/** Below this a passage is not worth a look. */
export const LEAST_COVERAGE = 0.34;
/**
 * From here on a passage says the element; with must-words, which the author of the rubric chose and which are there,
 * less will do. Set on the tuning side: the labelled passages would take a little less, whole rehearsals a little more.
 */
export const ACCEPTED = 0.6;
const ACCEPTED_WITH_MUST = 0.54;

function acceptedFor(element: CompiledElement): number {
  return element.must.length > 0 ? ACCEPTED_WITH_MUST : ACCEPTED;
}
/** A wrong statement must fit better than a right one before it is held against anybody. */
export const WRONG_ACCEPTED = 0.76;

/** The coverage from which a passage counts for its element. */
export function neededFor({ element, verdict }: Pick<Passage, "element" | "verdict">): number {
  return verdict === "right" ? acceptedFor(element) : WRONG_ACCEPTED;
}

/** Whether the passage fits well enough and no gate closes on it. */
export function isOpen(passage: Passage): boolean {
  return passage.closed.length === 0 && passage.coverage >= neededFor(passage);
}

/**
 * Every passage of a stream that may carry the element, with its verdict and the gates that close on it.
 * @param speaker the patient's words are weighed for content only: they do not have to tell or ask.
 */
export function passagesFor(element: CompiledElement, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage[] {
  const saying = sayingPassages(element, postings, stream, speaker);
  return oneVoice(bestOf([...saying, ...heldPassages(element, saying, postings, stream, speaker, WRONG_ACCEPTED).filter(standsAlone)]), stream).map((passage) => (passage.verdict === "wrong" ? withReason(passage, stream) : passage));
}

/** Passages that would say the element, whatever closes on them, and those that are right elsewhere. Several may share their words. */
export function sayingPassages(element: CompiledElement, postings: Postings, stream: Stream, speaker: "candidate" | "patient"): Passage[] {
  const passages: Passage[] = [];
  // A must-word that nobody said closes every passage; only something unheard could still be it.
  const unsaid = stream.hasDoubt ? 0 : element.must.reduce((bits, group, place) => (groupPossible(group, postings) ? bits : bits | (1 << place)), 0);
  const possible = (response: Response) => (unsaid & ~(response.without | response.byNumber)) === 0;
  for (const window of bestWindows(element.say.filter(possible), postings, stream, LEAST_COVERAGE, endsOf(element))) passages.push(weigh(passageOf(element, window, postings), postings, stream, speaker));
  for (const other of element.elsewhere) {
    for (const response of other.responses) {
      for (const window of windowsFor(response, postings, stream, WRONG_ACCEPTED)) {
        const quantity = other.quantity === null ? null : readQuantity(stream, window, other.quantity);
        if (quantity !== null && (quantity.reading !== "right" || isRightHere(element, window, stream))) continue;
        const closed = contentGates(element, window, postings, stream, other.quantity === null ? [] : element.must);
        if (closed.length > 0 || readPolarity(stream, window, element.vocabulary) !== "agrees") continue;
        passages.push({ ...passageOf(element, window, postings), verdict: "elsewhere", closed: [], reason: other.note, ...(quantity !== null && { quantity: quantity.mention }) });
      }
    }
  }
  return passages;
}

/** A number that is right here is none of elsewhere, though it is right there too: of "15 to 30 minutes" the thirty. */
const isRightHere = ({ quantity }: CompiledElement, window: Window, stream: Stream) => quantity !== null && readQuantity(stream, window, quantity).reading === "right";

/** One question asks one thing: "any allergies? And which other medicines" must not hide "any allergies?", which fits a little less. */
const endsOf = ({ kind }: CompiledElement) => (kind === "ask" || kind === "ask-openly" ? "in-the-sentence" : "anywhere");

export function passageOf(element: CompiledElement, window: Window, postings: Postings): Omit<Passage, "verdict" | "closed"> {
  return { element, window, first: window.first, end: window.end, coverage: withUnion(element, window, postings) };
}

export function spoken(window: Window, stream: Stream): Set<string> {
  return new Set(stream.tokens.slice(window.first, window.end).map((token) => token.text.toLowerCase()));
}

/** Words gathered from two sentences are held against nobody, and ask nothing. */
export function overSentenceEnd(window: Window, stream: Stream): boolean {
  return !inOneSentence(stream, window.first, window.end - 1);
}
