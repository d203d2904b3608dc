import type { Hit } from "./postings.ts";
import type { Response } from "./response.ts";
import type { TermHits } from "./term-hits.ts";

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
  /** Place among the response's terms. */
  term: Int32Array;
  /** Tokens, end exclusive. */
  first: Int32Array;
  end: Int32Array;
  quality: Float64Array;
  /** Room for where the hits stand on `Stream.position`. */
  position: Float64Array;
  /** Row in the stream's TermHits. */
  row: Int32Array;
}

const columnsFor = (rows: number): HitsInOrder => ({ size: 0, term: new Int32Array(rows), first: new Int32Array(rows), end: new Int32Array(rows), quality: new Float64Array(rows), position: new Float64Array(rows), row: new Int32Array(rows) });

/** Filled anew for each response; nobody keeps it. */
let columns = columnsFor(1024);
const terms: number[] = [];
const next: number[] = [];
const ends: number[] = [];
const firsts: number[] = [];
const qualities: number[] = [];
/** Behind the last token of any stream. */
const NO_MORE = 0x3fffffff;

/** All hits of the response's weighty terms; at one place the surest first. Good until the next call. */
export function hitsInOrder({ place }: Response, hits: TermHits): HitsInOrder {
  const { starts, lists } = hits.index;
  const from = starts[place]!;
  const to = starts[place + 1]!;
  let count = 0;
  let rows = 0;
  for (let row = from; row < to; row += 1) {
    const list = lists[row]!;
    const at = list < 0 ? 0 : hits.places[list]!;
    if (at === 0) continue;
    const start = hits.starts[at]!;
    const end = hits.ends[at]!;
    terms[count] = row - from;
    next[count] = start;
    ends[count] = end;
    rows += end - start;
    count += 1;
  }
  if (rows > columns.term.length) columns = columnsFor(2 * rows);
  const { term, first, end, quality, row } = columns;
  for (let k = 0; k < count; k += 1) {
    firsts[k] = hits.first[next[k]!]!;
    qualities[k] = hits.quality[next[k]!]!;
  }
  for (let size = 0; size < rows; size += 1) {
    // Each list is in order: the next of all is the least of their heads.
    let chosen = 0;
    for (let k = 1; k < count; k += 1) {
      if (firsts[k]! < firsts[chosen]! || (firsts[k] === firsts[chosen] && qualities[k]! > qualities[chosen]!)) chosen = k;
    }
    const head = next[chosen]!;
    term[size] = terms[chosen]!;
    first[size] = firsts[chosen]!;
    end[size] = hits.end[head]!;
    quality[size] = qualities[chosen]!;
    row[size] = head;
    const following = head + 1;
    next[chosen] = following;
    firsts[chosen] = following < ends[chosen]! ? hits.first[following]! : NO_MORE;
    qualities[chosen] = following < ends[chosen]! ? hits.quality[following]! : 0;
  }
  columns.size = rows;
  return columns;
}
