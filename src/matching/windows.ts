import { wordWeight } from "../language/lexicon.ts";
import type { Response } from "./response.ts";
import { OWN_WORDS, ROUNDING } from "./coverage.ts";
import { hitsInOrder, type Aligned, type HitsInOrder } from "./hits-in-order.ts";
import { Reach } from "./reach.ts";
import { firstFrom, type Hit, type Postings } from "./postings.ts";
import type { Stream } from "./stream.ts";

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

/** A passage may be this much longer than the response that it says in other words. */
const SPAN = { base: 5, perWord: 1.8 } as const;
/** Gaps beyond this cost a little each. */
const ROOM = { base: 3, perWord: 1.6 } as const;
const GAP_COST = { perWord: 0.02, most: 0.25 } as const;
/** A passage over the end of a sentence may still be one thing said; less likely so. */
const SENTENCE_COST = { each: 0.1, most: 0.25 } as const;
/** A single word that only stands for another of the response, and the share of its coverage that it keeps. */
const LONE_WORD = { quality: 0.95, share: 0.6 } as const;
/** What a response said wholly backwards loses. */
const ORDER_COST = 0.12;
/** Plain words count only as a run; in a longer run one other word may stand between two of them. */
const LITERAL_GAP = { shortRun: 0, longRun: 1, long: 4 } as const;

/**
 * The best passages for one response, none overlapping another.
 * @param least coverage below which a passage is not worth looking at.
 */
export function windowsFor(response: Response, postings: Postings, stream: Stream, least: number): Window[] {
  if (postings.terms.reachOf(response) < least * response.weight) return [];
  const hits = hitsInOrder(response, postings.terms);
  const found: Window[] = [];
  if (response.literal) {
    for (let start = 0; start < hits.size; start += 1) keep(found, literalFrom(hits, start, least, response, stream, postings));
    return withoutOverlap(found);
  }
  const { first, position } = hits;
  const { position: places } = stream;
  for (let k = 0; k < hits.size; k += 1) position[k] = places[first[k]!]!;
  const span = SPAN.base + SPAN.perWord * response.length;
  const reach = new Reach(hits, response, postings.terms.index);
  let stop = 0;
  for (let start = 0; start < hits.size; start += 1) {
    while (stop < hits.size && position[stop]! - position[start]! <= span) reach.add(stop++);
    if (reach.most() >= least * response.weight) keep(found, bestFrom(hits, start, stop, least, response, stream, postings));
    reach.remove(start);
  }
  return withoutOverlap(found);
}

function keep(found: Window[], window: Window | null): void {
  if (window !== null) found.push(window);
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
export function weightyWords(window: Window, { tokens }: Stream): { weighty: number; lacking: number } {
  const carrying = tokensOf(window);
  let weighty = 0;
  let lacking = 0;
  for (let place = window.first; place < window.end; place += 1) {
    if (wordWeight(tokens[place]!.stem) < WEIGHTY) continue;
    weighty += 1;
    if (!carrying.has(place)) lacking += 1;
  }
  return { weighty, lacking };
}

/** Of windows that share tokens the best stays; a tie goes to the shorter. */
export function withoutOverlap<Kind extends { first: number; end: number; coverage: number }>(windows: Kind[]): Kind[] {
  if (windows.length < 2) return windows;
  const kept: Kind[] = [];
  const ranked = [...windows].sort((a, b) => b.coverage - a.coverage || a.end - a.first - (b.end - b.first) || a.first - b.first);
  for (const window of ranked) if (!kept.some((other) => window.first < other.end && other.first < window.end)) kept.push(window);
  return kept.sort((a, b) => a.first - b.first);
}

/** The best passage from one hit on, of hits that start before `stop`. */
function bestFrom(hits: HitsInOrder, start: number, stop: number, least: number, response: Response, stream: Stream, postings: Postings): Window | null {
  const { term, first, end, quality } = hits;
  best.length = 1;
  best[0] = start;
  for (let k = start + 1; k < stop; k += 1) {
    if (term[k] === term[start]) continue;
    let known = -1;
    let taken = false;
    for (let place = 0; place < best.length; place += 1) {
      const other = best[place]!;
      if (term[other] === term[k]) known = place;
      // One word pays for one term, unless a set phrase spans it.
      else if (first[other] === first[k] && end[other] === end[k] && quality[other]! >= quality[k]!) taken = true;
    }
    if (taken || (known >= 0 && quality[best[known]!]! >= quality[k]!)) continue;
    if (known >= 0) best[known] = k;
    else best.push(k);
  }
  return windowOf(hits, best, least, response, stream, postings);
}

/** The hits chosen by `bestFrom`, filled anew each time; nobody keeps it. */
const best: number[] = [];

/** The window of chosen hits, or null where it covers less than the least: most do, and nothing is made for them. */
function windowOf(hits: HitsInOrder, chosen: readonly number[], least: number, response: Response, stream: Stream, postings: Postings): Window | null {
  const { starts, weights, ownWeights } = postings.terms.index;
  const firstTerm = starts[response.place]!;
  let first = Infinity;
  let end = 0;
  let carried = 0;
  let own = 0;
  for (let at = 0; at < chosen.length; at += 1) {
    const k = chosen[at]!;
    const quality = hits.quality[k]!;
    const row = firstTerm + hits.term[k]!;
    if (hits.first[k]! < first) first = hits.first[k]!;
    if (hits.end[k]! > end) end = hits.end[k]!;
    carried += weights[row]! * quality;
    if (quality >= OWN_WORDS.quality) own += ownWeights[row]!;
  }
  const ownShare = Math.min(1, own / response.ownWeight / OWN_WORDS.share);
  const needed = least * response.weight;
  // Most end here, with all their plain words granted, before those are looked for.
  if ((carried + response.plainWeight) * ownShare < needed - ROUNDING) return null;
  const extent = stream.position[end - 1]! - stream.position[first]! + 1;
  const gaps = Math.max(0, extent - ROOM.base - ROOM.perWord * response.length);
  const ends = stream.sentencesBefore[end - 1]! - stream.sentencesBefore[first]!;
  const sentenceCost = Math.min(SENTENCE_COST.most, ends * SENTENCE_COST.each);
  const gapCost = Math.min(GAP_COST.most, gaps * GAP_COST.perWord);
  let covered = (carried + plainWords(response, postings, first, end)) / response.weight;
  // One word that only stands for another is too little to say anything by itself ("loosens" for "take the cap off").
  if (end - first === 1 && hits.quality[chosen[0]!]! < LONE_WORD.quality) covered *= LONE_WORD.share;
  const coverage = covered * ownShare * (1 - gapCost) * (1 - sentenceCost) * (1 - ORDER_COST * disorder(hits, chosen));
  return coverage < least ? null : { first, end, response, aligned: chosen.map((k) => ({ term: hits.term[k]!, hit: postings.terms.hitAt(hits.row[k]!), quality: hits.quality[k]! })), coverage };
}

/** So near to a passage its plain words may stand. */
const PLAIN_REACH = 3;

/** Weight of the response's plain words that stand in or beside the passage. */
function plainWords(response: Response, postings: Postings, first: number, end: number): number {
  if (response.plainWeight === 0) return 0;
  let weight = 0;
  for (let place = 0; place < response.terms.length; place += 1) {
    const term = response.terms[place]!;
    if (term.plain && saidBeside(term.keys, postings, first - PLAIN_REACH, end + PLAIN_REACH)) weight += term.weight;
  }
  return weight;
}

function saidBeside(keys: Response["terms"][number]["keys"], postings: Postings, from: number, to: number): boolean {
  for (let k = 0; k < keys.length; k += 1) if (anyBetween(postings.get(keys[k]!.key), from, to)) return true;
  return false;
}

function anyBetween(hits: readonly Hit[] | undefined, from: number, to: number): boolean {
  if (hits === undefined) return false;
  const place = firstFrom(hits, from);
  return place < hits.length && hits[place]!.end <= to;
}

/** Share of the pairs of terms said the other way round, 0 to 1. */
function disorder({ term, first }: HitsInOrder, chosen: readonly number[]): number {
  const size = chosen.length;
  if (size < 2) return 0;
  let turned = 0;
  for (let later = 1; later < size; later += 1) {
    const k = chosen[later]!;
    for (let earlier = 0; earlier < later; earlier += 1) {
      const j = chosen[earlier]!;
      if ((term[j]! - term[k]!) * (first[j]! - first[k]!) < 0) turned += 1;
    }
  }
  return (2 * turned) / (size * (size - 1));
}

function literalFrom(hits: HitsInOrder, start: number, least: number, response: Response, stream: Stream, postings: Postings): Window | null {
  if (hits.term[start] !== 0) return null;
  const run = [start];
  const gap = response.terms.length >= LITERAL_GAP.long ? LITERAL_GAP.longRun : LITERAL_GAP.shortRun;
  for (let k = start + 1; k < hits.size && run.length < response.terms.length; k += 1) {
    const end = hits.end[run[run.length - 1]!]!;
    const first = hits.first[k]!;
    if (first - end > gap) break;
    if (hits.term[k] === run.length && first >= end) run.push(k);
  }
  return run.length === response.terms.length ? windowOf(hits, run, least, response, stream, postings) : null;
}
