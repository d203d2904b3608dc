import type { Response } from "./compile.ts";
import type { Hit, Postings } from "./postings.ts";
import type { Stream } from "./stream.ts";

/** A term of the response and the hit that carries it. */
export interface Aligned {
  term: number;
  hit: Hit;
  /** Quality of the key times that of the hit. */
  quality: number;
}

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
const SPAN = { base: 6, perWord: 2 } as const;
/** Gaps beyond this cost a little each. */
const ROOM = { base: 3, perWord: 1.6 } as const;
const GAP_COST = { perWord: 0.012, most: 0.2 } as const;
/** What a response said wholly backwards loses. */
const ORDER_COST = 0.12;
/** Plain words count only as a run: so many other words may stand between two of them. */
const LITERAL_GAP = 2;

interface TermHit extends Aligned {
  position: number;
}

/**
 * The best passages for one response, none overlapping another.
 * @param least coverage below which a passage is not worth looking at.
 */
export function windowsFor(response: Response, postings: Postings, stream: Stream, least: number): Window[] {
  const hits = hitsOf(response, postings, stream, least);
  if (hits === null) return [];
  const span = SPAN.base + SPAN.perWord * response.length;
  const found: Window[] = [];
  for (let start = 0; start < hits.length; start += 1) {
    const window = response.literal ? literalFrom(hits, start, response, stream) : bestFrom(hits, start, span, response, stream);
    if (window !== null && window.coverage >= least) found.push(window);
  }
  return withoutOverlap(found);
}

/** Of windows that share tokens the best stays; a tie goes to the shorter. */
export function withoutOverlap<Kind extends { first: number; end: number; coverage: number }>(windows: Kind[]): Kind[] {
  const kept: Kind[] = [];
  const ranked = [...windows].sort((a, b) => b.coverage - a.coverage || a.end - a.first - (b.end - b.first) || a.first - b.first);
  for (const window of ranked) if (!kept.some((other) => window.first < other.end && other.first < window.end)) kept.push(window);
  return kept.sort((a, b) => a.first - b.first);
}

function hitsOf(response: Response, postings: Postings, stream: Stream, least: number): TermHit[] | null {
  const hits: TermHit[] = [];
  let possible = 0;
  response.terms.forEach((term, place) => {
    let best = 0;
    for (const { key, quality } of term.keys) {
      for (const hit of postings.get(key) ?? []) {
        const sure = quality * hit.quality;
        if (sure > best) best = sure;
        hits.push({ term: place, hit, quality: sure, position: stream.position[hit.first]! });
      }
    }
    possible += best * term.weight;
  });
  if (possible / response.weight < least) return null;
  return hits.sort((a, b) => a.hit.first - b.hit.first || b.quality - a.quality);
}

function bestFrom(hits: readonly TermHit[], start: number, span: number, response: Response, stream: Stream): Window | null {
  const from = hits[start]!;
  const best = new Map<number, TermHit>([[from.term, from]]);
  for (let k = start + 1; k < hits.length; k += 1) {
    const hit = hits[k]!;
    if (hit.position - from.position > span) break;
    const known = best.get(hit.term);
    if (known !== undefined && known.quality >= hit.quality) continue;
    if (hit.term === from.term) continue;
    // One word pays for one term, unless a set phrase spans it.
    const taken = [...best.values()].some((other) => other.term !== hit.term && other.hit.first === hit.hit.first && other.hit.end === hit.hit.end && other.quality >= hit.quality);
    if (!taken) best.set(hit.term, hit);
  }
  return windowOf([...best.values()], response, stream);
}

function windowOf(aligned: TermHit[], response: Response, stream: Stream): Window {
  const first = Math.min(...aligned.map(({ hit }) => hit.first));
  const end = Math.max(...aligned.map(({ hit }) => hit.end));
  const covered = aligned.reduce((sum, { term, quality }) => sum + response.terms[term]!.weight * quality, 0) / response.weight;
  const extent = stream.position[end - 1]! - stream.position[first]! + 1;
  const gaps = Math.max(0, extent - ROOM.base - ROOM.perWord * response.length);
  const gapCost = Math.min(GAP_COST.most, gaps * GAP_COST.perWord);
  return { first, end, response, aligned, coverage: covered * (1 - gapCost) * (1 - ORDER_COST * disorder(aligned)) };
}

/** Share of neighbouring terms said the other way round, 0 to 1. */
function disorder(aligned: readonly TermHit[]): number {
  if (aligned.length < 2) return 0;
  const places = [...aligned].sort((a, b) => a.term - b.term).map(({ hit }) => hit.first);
  let turned = 0;
  for (let k = 1; k < places.length; k += 1) if (places[k]! < places[k - 1]!) turned += 1;
  return turned / (places.length - 1);
}

function literalFrom(hits: readonly TermHit[], start: number, response: Response, stream: Stream): Window | null {
  if (hits[start]!.term !== 0) return null;
  const run: TermHit[] = [hits[start]!];
  for (let k = start + 1; k < hits.length && run.length < response.terms.length; k += 1) {
    const last = run[run.length - 1]!;
    const hit = hits[k]!;
    if (hit.hit.first - last.hit.end > LITERAL_GAP) break;
    if (hit.term === run.length && hit.hit.first >= last.hit.end) run.push(hit);
  }
  return run.length === response.terms.length ? windowOf(run, response, stream) : null;
}
