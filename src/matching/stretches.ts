import { OWN_WORDS, ROUNDING } from "./coverage.ts";
import { hitsInOrder, type Aligned, type HitsInOrder } from "./hits-in-order.ts";
import { firstFrom, type Hit, type Postings } from "./postings.ts";
import { Reach } from "./reach.ts";
import type { Response } from "./response.ts";
import type { Stream } from "./stream.ts";

/**
 * Stretches of a stream that say (part of) responses, in columns: of seven that are found one is looked at any further,
 * and an object for each would mostly be thrown away.
 */
export class Stretches {
  private size = 0;
  readonly response: Response[] = [];
  /** Tokens, end exclusive. */
  readonly first: number[] = [];
  readonly end: number[] = [];
  readonly coverage: number[] = [];
  /** The response's hits that it was chosen from: places in `hitsInOrder`, end exclusive. */
  readonly from: number[] = [];
  readonly to: number[] = [];

  clear(): void {
    this.size = 0;
  }

  get count(): number {
    return this.size;
  }

  add(response: Response, first: number, end: number, coverage: number, from: number, to: number): void {
    const at = this.size++;
    this.response[at] = response;
    this.first[at] = first;
    this.end[at] = end;
    this.coverage[at] = coverage;
    this.from[at] = from;
    this.to[at] = to;
  }
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

/** Where stretches may end: in their sentence alone; there as well as behind it; or behind it, and in it only where what runs on covers too little. */
export type Ends = "in-the-sentence" | "with-the-sentence" | "anywhere";

/**
 * Finds the best stretches for one response, none overlapping another.
 * @param least coverage below which a stretch is not worth looking at.
 * @param into takes them, and others that they overlap.
 * @returns their places in `into`, in order of speech.
 */
export function findStretches(response: Response, postings: Postings, stream: Stream, least: number, into: Stretches, ends: Ends): number[] {
  const before = into.count;
  if (postings.terms.reachOf(response) < least * response.weight) return [];
  const hits = hitsInOrder(response, postings.terms);
  if (response.literal) {
    for (let start = 0; start < hits.size; start += 1) add(hits, literalFrom(hits, start, response), start, hits.size, least, response, stream, postings, into);
    return apart(into, before);
  }
  const { first, position } = hits;
  const { position: places } = stream;
  for (let k = 0; k < hits.size; k += 1) position[k] = places[first[k]!]!;
  const span = SPAN.base + SPAN.perWord * response.length;
  const reach = new Reach(hits, response, postings.terms.index);
  let stop = 0;
  for (let start = 0; start < hits.size; start += 1) {
    while (stop < hits.size && position[stop]! - position[start]! <= span) reach.add(stop++);
    if (reach.most() >= least * response.weight) addFrom(hits, start, stop, least, response, stream, postings, into, ends);
    reach.remove(start);
  }
  return apart(into, before);
}

/** Of stretches from a place on that share tokens the best stays; a tie goes to the shorter. @returns places, in order of speech */
export function apart({ count, first, end, coverage }: Pick<Stretches, "count" | "first" | "end" | "coverage">, from: number): number[] {
  if (count === from) return NONE;
  if (count === from + 1) return [from];
  const ranked: number[] = [];
  const goesBefore = (a: number, b: number) => coverage[a]! > coverage[b]! || (coverage[a] === coverage[b] && (end[a]! - first[a]! < end[b]! - first[b]! || (end[a]! - first[a]! === end[b]! - first[b]! && first[a]! < first[b]!)));
  // Put in their places one by one: they are few, and a sort by a function makes rubbish at every call.
  for (let at = from; at < count; at += 1) {
    let place = ranked.length;
    while (place > 0 && goesBefore(at, ranked[place - 1]!)) place -= 1;
    insertAt(ranked, place, at);
  }
  const kept: number[] = [];
  for (let rank = 0; rank < ranked.length; rank += 1) {
    const at = ranked[rank]!;
    let place = kept.length;
    while (place > 0 && first[kept[place - 1]!]! > first[at]!) place -= 1;
    // None kept shares tokens with another: only the two beside it can share any with this one.
    if ((place === 0 || end[kept[place - 1]!]! <= first[at]!) && (place === kept.length || first[kept[place]!]! >= end[at]!)) insertAt(kept, place, at);
  }
  return kept;
}

const NONE: number[] = [];

function insertAt(list: number[], place: number, value: number): void {
  list.push(value);
  for (let k = list.length - 1; k > place; k -= 1) list[k] = list[k - 1]!;
  list[place] = value;
}

/**
 * Adds the stretch from one hit on, and those that stop at the sentence ends within it: a word of the next sentence that
 * can stand for one of the response carries less than the sentence end costs, and must not hide what fits without it.
 */
function addFrom(hits: HitsInOrder, start: number, stop: number, least: number, response: Response, stream: Stream, postings: Postings, into: Stretches, ends: Ends): void {
  const { sentencesBefore } = stream;
  let to = stop;
  if (ends === "in-the-sentence") while (sentencesBefore[hits.first[to - 1]!] !== sentencesBefore[hits.first[start]!]) to -= 1;
  for (;;) {
    const known = into.count;
    if (!add(hits, bestFrom(hits, start, to), start, to, least, response, stream, postings, into)) return;
    if (ends === "anywhere" && into.count > known) return;
    let last = start;
    for (const k of best) if (k > last) last = k;
    const sentence = sentencesBefore[hits.first[last]!];
    if (sentence === sentencesBefore[hits.first[start]!]) return;
    for (to = last; sentencesBefore[hits.first[to - 1]!] === sentence; to -= 1);
  }
}

/** The hits of the best passage from one hit on, of those before `stop`. */
function bestFrom(hits: HitsInOrder, start: number, stop: number): readonly number[] {
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
  return best;
}

/** The hits chosen by `bestFrom`, filled anew each time; nobody keeps it. */
const best: number[] = [];

/**
 * Adds the stretch of chosen hits, unless it covers less than the least.
 * @param from,to what they were chosen from
 * @returns whether they carry enough for it, whatever parts them.
 */
function add(hits: HitsInOrder, chosen: readonly number[], from: number, to: number, least: number, response: Response, stream: Stream, postings: Postings, into: Stretches): boolean {
  if (chosen.length === 0) return false;
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
  if ((carried + response.plainWeight) * ownShare < needed - ROUNDING) return false;
  const extent = stream.position[end - 1]! - stream.position[first]! + 1;
  const gaps = Math.max(0, extent - ROOM.base - ROOM.perWord * response.length);
  const ends = stream.sentencesBefore[end - 1]! - stream.sentencesBefore[first]!;
  const sentenceCost = Math.min(SENTENCE_COST.most, ends * SENTENCE_COST.each);
  const gapCost = Math.min(GAP_COST.most, gaps * GAP_COST.perWord);
  const turned = ORDER_COST * disorder(hits, chosen);
  // Most of the rest end here: too far apart, or too much turned round, even with all plain words there.
  if ((carried + response.plainWeight) * ownShare * (1 - gapCost) * (1 - sentenceCost) * (1 - turned) < needed - ROUNDING) return true;
  let covered = (carried + plainWords(response, postings, first, end)) / response.weight;
  // One word that only stands for another is too little to say anything by itself ("loosens" for "take the cap off").
  if (end - first === 1 && hits.quality[chosen[0]!]! < LONE_WORD.quality) covered *= LONE_WORD.share;
  const coverage = covered * ownShare * (1 - gapCost) * (1 - sentenceCost) * (1 - turned);
  if (coverage >= least) into.add(response, first, end, coverage, from, to);
  return true;
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

/** Whether a term stands in or right beside a passage, whatever it weighs. */
export function standsBeside({ keys }: Response["terms"][number], postings: Postings, first: number, end: number): boolean {
  return saidBeside(keys, postings, first - PLAIN_REACH, end + PLAIN_REACH);
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

/** The hits of a run of words said as it is written, if it begins with this one. */
function literalFrom(hits: HitsInOrder, start: number, response: Response): readonly number[] {
  if (hits.term[start] !== 0) return NO_HITS;
  const run = [start];
  const gap = response.terms.length >= LITERAL_GAP.long ? LITERAL_GAP.longRun : LITERAL_GAP.shortRun;
  for (let k = start + 1; k < hits.size && run.length < response.terms.length; k += 1) {
    const end = hits.end[run[run.length - 1]!]!;
    const first = hits.first[k]!;
    if (first - end > gap) break;
    if (hits.term[k] === run.length && first >= end) run.push(k);
  }
  return run.length === response.terms.length ? run : NO_HITS;
}

const NO_HITS: readonly number[] = [];

/** What carries the response in a stretch: chosen again, because few of those found are ever asked. */
export function alignedIn(at: number, { response: responses, from, to }: Stretches, { terms }: Postings): Aligned[] {
  const response = responses[at]!;
  const hits = hitsInOrder(response, terms);
  const chosen = response.literal ? literalFrom(hits, from[at]!, response) : bestFrom(hits, from[at]!, to[at]!);
  return chosen.map((k) => ({ term: hits.term[k]!, hit: terms.hitAt(hits.row[k]!), quality: hits.quality[k]! }));
}
