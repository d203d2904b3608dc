import type { Hit } from "./postings.ts";
import type { Response } from "./response.ts";
import { mostCoverage, OWN_WORDS } from "./coverage.ts";
import type { TermIndex } from "./term-index.ts";

/** Where a stream has the terms of a rubric: for each list of keys its hits in columns of numbers (see TermIndex). */
export class TermHits {
  readonly index: TermIndex;
  /** By list of keys its place among those that the stream has, counted from 1; 0 for the others, which are most where little is said. */
  readonly places: Int32Array;
  /** By that place: its first row, and the row behind its last. In order of tokens; at one token the surest first, and no stretch twice. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** By row: tokens, end exclusive, and the quality of the key times that of the hit. */
  readonly first: Int32Array;
  readonly end: Int32Array;
  readonly quality: Float64Array;
  /** By place the list, and the best quality among its keys that the stream has. */
  private readonly lists: number[] = [0];
  private readonly best: number[] = [0];
  /** By row the place of its key in its list, and of its hit among all. */
  private readonly ranks: Uint8Array;
  private readonly hitOf: Int32Array;
  private readonly hits: Hit[] = [];
  /** By hit its key (`TermIndex.keyAt`), and the next hit that starts at its token, -1 behind the last; by token the first of them. */
  private readonly keys: number[] = [];
  private readonly next: number[] = [];
  private readonly heads: Int32Array;

  /** @param tokens how many the stream has. */
  constructor(index: TermIndex, postings: ReadonlyMap<string, readonly Hit[]>, tokens: number) {
    this.index = index;
    const { keyStarts, carried, qualities, ranks } = index;
    const places = new Int32Array(index.size);
    const { best, lists } = this;
    const sizes: number[] = [0];
    // Hits by their first token, as linked lists: read along the stream they come into each list in order.
    const heads = new Int32Array(tokens).fill(-1);
    const { hits, keys, next } = this;
    for (const [key, list] of postings) {
      const place = index.keyAt(key);
      if (place < 0) continue;
      for (let row = keyStarts[place]!; row < keyStarts[place + 1]!; row += 1) {
        const carrying = carried[row]!;
        let at = places[carrying]!;
        if (at === 0) {
          places[carrying] = at = lists.push(carrying) - 1;
          sizes.push(0);
          best.push(0);
        }
        sizes[at]! += list.length;
        if (qualities[row]! > best[at]!) best[at] = qualities[row]!;
      }
      for (const hit of list) {
        next.push(heads[hit.first]!);
        heads[hit.first] = keys.length;
        keys.push(place);
        hits.push(hit);
      }
    }
    const starts = new Int32Array(lists.length);
    let rows = 0;
    for (let at = 1; at < lists.length; at += 1) {
      starts[at] = rows;
      rows += sizes[at]!;
    }
    const ends = starts.slice();
    const first = new Int32Array(rows);
    const end = new Int32Array(rows);
    const quality = new Float64Array(rows);
    const hitOf = new Int32Array(rows);
    this.heads = heads;
    this.places = places;
    this.starts = starts;
    this.ends = ends;
    this.first = first;
    this.end = end;
    this.quality = quality;
    this.ranks = new Uint8Array(rows);
    this.hitOf = hitOf;
    for (let token = 0; token < tokens; token += 1) {
      for (let event = heads[token]!; event >= 0; event = next[event]!) {
        const key = keys[event]!;
        const hit = hits[event]!;
        for (let row = keyStarts[key]!; row < keyStarts[key + 1]!; row += 1) {
          const list = places[carried[row]!]!;
          const last = ends[list]!;
          const to = last > starts[list]! && first[last - 1] === token ? this.placeAtToken(list, hit, qualities[row]! * hit.quality, ranks[row]!) : last;
          if (to < 0) continue;
          first[to] = token;
          end[to] = hit.end;
          quality[to] = qualities[row]! * hit.quality;
          this.ranks[to] = ranks[row]!;
          hitOf[to] = event;
          ends[list]! += 1;
        }
      }
    }
  }

  /** Makes room for one more hit at the token of the list's last; -1 where the same stretch is there more surely. */
  private placeAtToken(list: number, hit: Hit, quality: number, rank: number): number {
    const start = this.starts[list]!;
    let last = this.ends[list]!;
    let place = last;
    while (place > start && this.first[place - 1] === hit.first && !this.isSurer(place - 1, quality, rank)) place -= 1;
    for (let row = place - 1; row >= start && this.first[row] === hit.first; row -= 1) if (this.end[row] === hit.end) return -1;
    for (let row = place; row < last; row += 1) {
      if (this.end[row] !== hit.end) continue;
      // The same stretch, less surely, goes.
      last -= 1;
      for (let k = row; k < last; k += 1) this.move(k + 1, k);
      break;
    }
    for (let row = last; row > place; row -= 1) this.move(row - 1, row);
    this.ends[list] = last;
    return place;
  }

  private isSurer(row: number, quality: number, rank: number): boolean {
    return this.quality[row]! > quality || (this.quality[row] === quality && this.ranks[row]! < rank);
  }

  private move(from: number, to: number): void {
    this.first[to] = this.first[from]!;
    this.end[to] = this.end[from]!;
    this.quality[to] = this.quality[from]!;
    this.ranks[to] = this.ranks[from]!;
    this.hitOf[to] = this.hitOf[from]!;
  }

  /** The hit of a row. */
  hitAt(row: number): Hit {
    return this.hits[this.hitOf[row]!]!;
  }

  /** Visits the hits that start at a token, with their keys. */
  eachAt(token: number, visit: (key: number, hit: Hit) => void): void {
    for (let event = this.heads[token]!; event >= 0; event = this.next[event]!) visit(this.keys[event]!, this.hits[event]!);
  }

  /**
   * Places of the responses of which the stream has any term but plain ones, with the weight of those that it has, each
   * where it is said best, and how much of it is in the response's own words.
   */
  touched(visit: (place: number, weight: number, own: number) => void): void {
    const { users, userRows, userStarts } = this.index.usage;
    const { weights, ownWeights } = this.index;
    const carried = new Float64Array(this.index.starts.length);
    const own = new Float64Array(this.index.starts.length);
    const touched: number[] = [];
    for (let at = 1; at < this.lists.length; at += 1) {
      const list = this.lists[at]!;
      const best = this.best[at]!;
      for (let k = userStarts[list]!; k < userStarts[list + 1]!; k += 1) {
        const place = users[k]!;
        const row = userRows[k]!;
        if (carried[place] === 0) touched.push(place);
        carried[place]! += best * weights[row]!;
        if (best >= OWN_WORDS.quality) own[place]! += ownWeights[row]!;
      }
    }
    for (const place of touched) visit(place, carried[place]!, own[place]!);
  }

  /** The most of the response that the stream could say, by weight: with every term where it is said best. */
  reachOf({ place, ownWeight }: Response): number {
    const { starts, lists, weights, ownWeights } = this.index;
    let possible = 0;
    let own = 0;
    for (let row = starts[place]!; row < starts[place + 1]!; row += 1) {
      const list = lists[row]!;
      // Plain words may always be there.
      const best = list < 0 ? 1 : this.best[this.places[list]!]!;
      possible += best * weights[row]!;
      if (best >= OWN_WORDS.quality) own += ownWeights[row]!;
    }
    return mostCoverage(possible, own, ownWeight);
  }
}
