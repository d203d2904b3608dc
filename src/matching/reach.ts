import { mostCoverage, OWN_WORDS, ROUNDING } from "./coverage.ts";
import type { HitsInOrder } from "./hits-in-order.ts";
import type { Response } from "./response.ts";
import type { TermIndex } from "./term-index.ts";

/** How often each term stands in the stretch, and as one of the response's own words. Wiped by whoever begins anew. */
const counts: number[] = [];
const ownCounts: number[] = [];
/** Weight of the terms in the stretch, and of those in the response's own words: fields would box a number at every step. */
const sums = new Float64Array(2);

/** The most that the hits of a moving stretch could cover, each term once: most stretches end here. One at a time. */
export class Reach {
  private readonly hits: HitsInOrder;
  private readonly response: Response;
  private readonly index: TermIndex;
  private readonly firstTerm: number;

  constructor(hits: HitsInOrder, response: Response, index: TermIndex) {
    this.hits = hits;
    this.response = response;
    this.index = index;
    this.firstTerm = index.starts[response.place]!;
    sums[0] = response.plainWeight;
    sums[1] = 0;
    for (let term = 0; term < response.terms.length; term += 1) counts[term] = ownCounts[term] = 0;
  }

  add(k: number): void {
    const term = this.hits.term[k]!;
    if (counts[term]!++ === 0) sums[0]! += this.index.weights[this.firstTerm + term]!;
    if (this.hits.quality[k]! >= OWN_WORDS.quality && ownCounts[term]!++ === 0) sums[1]! += this.index.ownWeights[this.firstTerm + term]!;
  }

  remove(k: number): void {
    const term = this.hits.term[k]!;
    if (--counts[term]! === 0) sums[0]! -= this.index.weights[this.firstTerm + term]!;
    if (this.hits.quality[k]! >= OWN_WORDS.quality && --ownCounts[term]! === 0) sums[1]! -= this.index.ownWeights[this.firstTerm + term]!;
  }

  /** Coverage times the response's weight. */
  most(): number {
    return mostCoverage(sums[0]!, sums[1]!, this.response.ownWeight) + ROUNDING;
  }
}
