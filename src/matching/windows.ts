import { wordWeight } from "../language/lexicon.ts";
import type { Aligned } from "./hits-in-order.ts";
import type { Postings } from "./postings.ts";
import { denies, type Response } from "./response.ts";
import type { Stream } from "./stream.ts";
import { alignedIn, apart, findStretches, standsBeside, Stretches, type Ends } from "./stretches.ts";

/** A stretch of the stream that says (part of) a response. */
export interface Window {
  /** Tokens, end exclusive. */
  first: number;
  end: number;
  response: Response;
  aligned: Aligned[];
  /** Weight found over weight asked, 0 to 1, less a little for gaps and changed order. */
  coverage: number;
}

/** Filled anew by each look; nobody keeps it. */
const stretches = new Stretches();

/**
 * The best passages for one response, none overlapping another.
 * @param least coverage below which a passage is not worth looking at.
 */
export function windowsFor(response: Response, postings: Postings, stream: Stream, least: number): Window[] {
  stretches.clear();
  return findStretches(response, postings, stream, least, stretches, "with-the-sentence").map((at) => windowAt(at, postings));
}

/** Of windows on one spot, so many are weighed: the best fit may be the one a gate closes on. */
const RIVALS = 2;

/**
 * The best passages for any of several responses, best first; on one spot a few at most, and one that denies beside those
 * that affirm, or the other way round: where polarity closes on the ones it may not on the other.
 */
export function bestWindows(responses: readonly Response[], postings: Postings, stream: Stream, least: number, ends: Ends): Window[] {
  stretches.clear();
  const found: number[] = [];
  for (const response of responses) for (const at of findStretches(response, postings, stream, least, stretches, ends)) found.push(at);
  const { first, end, coverage, response } = stretches;
  const kept: number[] = [];
  for (const at of found.sort((a, b) => coverage[b]! - coverage[a]! || first[a]! - first[b]!)) {
    let rivals = 0;
    let alike = 0;
    for (const other of kept) {
      if (first[at]! >= end[other]! || first[other]! >= end[at]!) continue;
      rivals += 1;
      if (denies(response[at]!) === denies(response[other]!)) alike += 1;
    }
    if (rivals < RIVALS || alike === 0) kept.push(at);
  }
  return kept.map((at) => windowAt(at, postings));
}

function windowAt(at: number, postings: Postings): Window {
  const { first, end, response, coverage } = stretches;
  return { first: first[at]!, end: end[at]!, response: response[at]!, aligned: alignedIn(at, stretches, postings), coverage: coverage[at]! };
}

/** What is held against somebody must be said whole: a term this heavy, beside the heaviest, may not be missing. */
const NEEDED_SHARE = 0.5;
/** Of a long statement one weighty term may be said in words that nobody foresaw. */
const LONG_STATEMENT = 5;

/** Whether the response is said whole: every weighty term, and the words that tell which way. */
export function saysAll({ response, aligned }: Window): boolean {
  const heaviest = Math.max(...response.terms.map(({ weight }) => weight));
  const missing = response.terms.filter((term, place) => !term.plain && !aligned.some((found) => found.term === place));
  if (lacksDirection({ response, aligned })) return false;
  const weighty = (term: { weight: number; plain: boolean }) => !term.plain && term.weight >= NEEDED_SHARE * heaviest;
  const spare = response.terms.filter(weighty).length >= LONG_STATEMENT ? 1 : 0;
  return missing.filter(weighty).length <= spare;
}

/** One of what the author chose between, too: "only|just". */
const RESTRICTS = /(^|\|)(only|until|till|unless|instead)(\||$)/;

/** So many weighty words tell what is meant, though a light one of the response is missing. */
const TELLING = 3;

/**
 * Whether all that the author chose between is said, be it ever so light, where there is little else: "keep the needle"
 * is no "keep the needle for another go", "wipe the nozzle" no "rinse the nozzle every time". Weighty words are saysAll's.
 */
export function saysChosen({ response, aligned, first, end }: Window, postings: Postings): boolean {
  // "Only ring if she's not better" is another thing than "ring": a word that restricts must be said.
  if (response.terms.some((term, place) => RESTRICTS.test(term.text) && !aligned.some((found) => found.term === place) && !standsBeside(term, postings, first, end))) return false;
  const heaviest = Math.max(...response.terms.map(({ weight }) => weight));
  const weighty = (term: { weight: number }) => term.weight >= NEEDED_SHARE * heaviest;
  const telling = aligned.filter(({ term }) => weighty(response.terms[term]!));
  if (telling.length >= TELLING) return true;
  const last = Math.max(...aligned.map(({ term }) => term));
  return response.terms.every((term, place) => place < last || !term.needed || weighty(term) || aligned.some((found) => found.term === place) || standsBeside(term, postings, first, end));
}

/** Whether a word is missing that tells which way ("before", "back"). */
export function lacksDirection({ response, aligned }: Pick<Window, "response" | "aligned">): boolean {
  return response.terms.some((term, place) => term.direction && !term.plain && !aligned.some((found) => found.term === place));
}

/** The tokens that carry a term. */
export function tokensOf({ aligned }: Window): Set<number> {
  const tokens = new Set<number>();
  for (const { hit } of aligned) for (let place = hit.first; place < hit.end; place += 1) tokens.add(place);
  return tokens;
}

/** A word at least this heavy is weighty: small words may stand anywhere. */
const WEIGHTY = 1;

/** How many weighty words the passage's stretch has, and how many of them are none of the response's. */
export function weightyWords(window: Window, { tokens, silent }: Stream): { weighty: number; lacking: number } {
  const carrying = tokensOf(window);
  let weighty = 0;
  let lacking = 0;
  for (let place = window.first; place < window.end; place += 1) {
    if (silent.has(place) || wordWeight(tokens[place]!.stem) < WEIGHTY) continue;
    weighty += 1;
    if (!carrying.has(place)) lacking += 1;
  }
  return { weighty, lacking };
}

/** Of windows that share tokens the best stays; a tie goes to the shorter. */
export function withoutOverlap<Kind extends { first: number; end: number; coverage: number }>(windows: readonly Kind[]): Kind[] {
  const columns = { count: windows.length, first: windows.map(({ first }) => first), end: windows.map(({ end }) => end), coverage: windows.map(({ coverage }) => coverage) };
  return apart(columns, 0).map((at) => windows[at]!);
}
