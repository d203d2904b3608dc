// Chooses how scores are weighed when roles are read off (`Decoding`), on consultations that the fit has not seen and
// that are not those measured with it.
import { marginals } from "../../../src/station/chain.ts";
import { weigh, type Decoding } from "../../../src/station/role-model.ts";
import { MEASURED, type Corpus } from "./corpora.ts";
import type { Raw } from "./model.ts";

const TRUSTS = [0.35, 0.5, 0.65, 0.8, 1, 1.2, 1.5];
const LEANS = [-0.1, 0, 0.1, 0.2];
const GRID: readonly Decoding[] = TRUSTS.flatMap((trust) => LEANS.map((lean) => ({ trust, lean })));

/** A consultation read by a fit that has not seen it: words right under every pair of the grid. */
export interface Tried {
  corpus: Corpus;
  fold: number;
  punctuated: boolean;
  words: number;
  right: Float64Array;
}

export function tryAll(raw: Raw, corpus: Corpus, fold: number): Tried {
  const right = Float64Array.from(GRID, (decoding) => {
    const { candidate } = marginals(weigh(raw.scores, decoding));
    let found = 0;
    raw.gold.forEach((label, at) => {
      if ((candidate[at]! >= 0.5 ? 0 : 1) === label) found++;
    });
    return found;
  });
  return { corpus, fold, punctuated: raw.punctuated, words: raw.gold.length, right };
}

export interface Decodings {
  punctuated: Decoding;
  bare: Decoding;
}

/** The pair with the highest share of words right, each corpus counting alike. */
function best(tried: readonly Tried[]): Decoding {
  const value = (pair: number): number =>
    MEASURED.reduce((sum, corpus) => {
      const of = tried.filter((each) => each.corpus === corpus);
      const words = of.reduce((all, each) => all + each.words, 0);
      return sum + of.reduce((all, each) => all + each.right[pair]!, 0) / Math.max(1, words);
    }, 0);
  const values = GRID.map((_, pair) => value(pair));
  return GRID[values.indexOf(Math.max(...values))]!;
}

export function choose(tried: readonly Tried[]): Decodings {
  return { punctuated: best(tried.filter((each) => each.punctuated)), bare: best(tried.filter((each) => !each.punctuated)) };
}
