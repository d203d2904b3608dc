import type { Response } from "./response.ts";
import type { Found, Hit, Postings } from "./postings.ts";

/** A term of the response and the hit that carries it. */
export interface Aligned {
  /** Place among the response's terms. */
  term: number;
  hit: Hit;
  /** Quality of the key times that of the hit. */
  quality: number;
}

/** The hits of a response's terms in the order of speech, in columns: a station has thousands, and most lead to nothing. */
export interface HitsInOrder {
  size: number;
  term: number[];
  hit: Hit[];
  quality: number[];
}

/** Filled anew for each response; nobody keeps it. */
const columns: HitsInOrder = { size: 0, term: [], hit: [], quality: [] };
const lists: Found["hits"][] = [];
const terms: number[] = [];
const next: number[] = [];

/** All hits of the response's weighty terms; at one place the surest first. Good until the next call. */
export function hitsInOrder(response: Response, postings: Postings): HitsInOrder {
  let count = 0;
  for (let place = 0; place < response.terms.length; place += 1) {
    const term = response.terms[place]!;
    if (term.plain) continue;
    const { hits } = postings.of(term.keys);
    if (hits.length === 0) continue;
    lists[count] = hits;
    terms[count] = place;
    next[count] = 0;
    count += 1;
  }
  let size = 0;
  for (;;) {
    // Each list is in order: the next of all is the least of their heads.
    let chosen = -1;
    let first = 0;
    let quality = 0;
    for (let k = 0; k < count; k += 1) {
      const head = lists[k]![next[k]!];
      if (head === undefined) continue;
      if (chosen < 0 || head.hit.first < first || (head.hit.first === first && head.quality > quality)) {
        chosen = k;
        first = head.hit.first;
        quality = head.quality;
      }
    }
    if (chosen < 0) break;
    columns.term[size] = terms[chosen]!;
    columns.hit[size] = lists[chosen]![next[chosen]!]!.hit;
    columns.quality[size] = quality;
    next[chosen]! += 1;
    size += 1;
  }
  columns.size = size;
  return columns;
}

export function alignedAt({ term, hit, quality }: HitsInOrder, place: number): Aligned {
  return { term: term[place]!, hit: hit[place]!, quality: quality[place]! };
}
