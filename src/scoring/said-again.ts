import type { SaidClause, SaidWord } from "../matching/types.ts";

/** A run of clauses whose content stood earlier: places in the list of clauses, `end` exclusive. */
export interface SaidAgain {
  first: number;
  end: number;
  /** The earlier clause that has most of it. */
  before: number;
  /** Content words said again, and how many different weighty ones. */
  words: number;
  heavy: number;
}

/** A word was said before in the same sense when a neighbour of it was said near it then too: words, either way. */
const NEIGHBOURS = 2;
const NEAR_THEN = 5;
/** So much of a clause, by weight, was said before: the rest is what spoken language puts around it. */
const CLAUSE_SHARE = 0.75;
/** One content word is the topic coming back, not the saying. */
const FEWEST = 2;

/** What was said in one place may be said again in fewer words: content words of the earlier stretch to one of the clause. */
const STRETCH = { least: 6, times: 2.5 } as const;

type Line = readonly { word: SaidWord; clause: number }[];

interface Covered {
  word: SaidWord;
  /** The earlier clause. */
  then: number;
}

interface Place {
  clause: number;
  at: number;
}

/**
 * Where a speaker says the same again: clauses whose words stood earlier in the talk, near one another then too, with no
 * number and no denial that was not there.
 * @param counts whether a clause may be a repeat; one that may not still can be what a later one repeats.
 */
export function saidAgain(clauses: readonly SaidClause[], counts: (clause: SaidClause) => boolean): SaidAgain[] {
  const line = clauses.flatMap((clause, place) => clause.words.map((word) => ({ word, clause: place })));
  const places = new Map<string, Place[]>();
  line.forEach(({ word, clause }, at) => {
    const known = places.get(word.sense);
    if (known === undefined) places.set(word.sense, [{ clause, at }]);
    else known.push({ clause, at });
  });
  const runs: { first: number; end: number; covered: Covered[] }[] = [];
  let from = 0;
  let open: (typeof runs)[number] | null = null;
  clauses.forEach((clause, place) => {
    const behind = from + clause.words.length;
    const covered = clause.asks ? [] : coveredIn(line, places, from, behind, place);
    from = behind;
    if (clause.words.length === 0 && open !== null && clauses[open.end - 1]!.turn === clause.turn) return;
    const share = covered.reduce((sum, { word }) => sum + word.weight, 0) / clause.words.reduce((sum, { weight }) => sum + weight, 0);
    const whole = clause.words.every((word) => (!word.number && !word.denies) || covered.some((one) => one.word === word));
    if (covered.length === 0 || share < CLAUSE_SHARE || !whole || !counts(clause)) {
      open = null;
      return;
    }
    if (open !== null && clauses[open.end - 1]!.turn === clause.turn) {
      open.end = place + 1;
      open.covered.push(...covered);
    } else {
      open = { first: place, end: place + 1, covered };
      runs.push(open);
    }
  });
  return runs.flatMap(({ first, end, covered }) => {
    if (covered.length < FEWEST) return [];
    const heavy = new Set(covered.filter(({ word }) => word.weight === 1).map(({ word }) => word.sense)).size;
    return [{ first, end, before: commonest(covered.map(({ then }) => then)), words: covered.length, heavy }];
  });
}

/** The words of a clause that stood together in one earlier stretch of the talk: the stretch that has most of them. */
function coveredIn(line: Line, places: ReadonlyMap<string, Place[]>, from: number, end: number, clause: number): Covered[] {
  const earlier: (Covered & { at: number })[] = [];
  for (let at = from; at < end; at += 1) {
    const { word } = line[at]!;
    for (const then of places.get(word.sense) ?? []) {
      if (then.clause >= clause) break;
      if (hasNeighbour(line, places, at, then)) earlier.push({ word, at: then.at, then: then.clause });
    }
  }
  earlier.sort((a, b) => a.at - b.at);
  const reach = Math.max(STRETCH.least, STRETCH.times * (end - from));
  let best: Covered[] = [];
  let most = 0;
  earlier.forEach((opening, place) => {
    const inside = new Map<SaidWord, Covered>();
    for (let k = place; k < earlier.length && earlier[k]!.at - opening.at <= reach; k += 1) if (!inside.has(earlier[k]!.word)) inside.set(earlier[k]!.word, earlier[k]!);
    const weight = [...inside.keys()].reduce((sum, word) => sum + word.weight, 0);
    if (weight > most) [most, best] = [weight, [...inside.values()]];
  });
  return best;
}

/** Whether another word that stands beside this one now stood near it then. */
function hasNeighbour(line: Line, places: ReadonlyMap<string, Place[]>, at: number, then: Place): boolean {
  const sense = line[at]!.word.sense;
  for (let step = -NEIGHBOURS; step <= NEIGHBOURS; step += 1) {
    const beside = line[at + step];
    if (step === 0 || beside === undefined || beside.word.sense === sense) continue;
    if (places.get(beside.word.sense)!.some((other) => other.at < at - NEIGHBOURS && other.at !== then.at && Math.abs(other.at - then.at) <= NEAR_THEN)) return true;
  }
  return false;
}

function commonest(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]![0];
}
