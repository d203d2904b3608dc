import type { CompiledElement, CompiledRubric, CompiledStatement } from "./compile.ts";
import { LEAST_COVERAGE, WRONG_ACCEPTED } from "./passages.ts";
import type { Postings } from "./postings.ts";
import type { Response } from "./response.ts";
import { UNSAFE_ACCEPTED } from "./unsafe.ts";
import { mostCoverage, OWN_WORDS } from "./windows.ts";

/** What a key could bring: to which response, by which of all terms, how much, and how much in the response's own words. One number each at the same place. */
interface Entries {
  responses: number[];
  terms: number[];
  worths: number[];
  own: number[];
}

/** What an utterance has, by place; all zero between two utterances. */
interface Room {
  /** By term the most that a key brings it. */
  best: Float64Array;
  /** By term what it brings in the response's own words. */
  bestOwn: Float64Array;
  /** The same by response, its terms together. */
  reached: Float64Array;
  reachedOwn: Float64Array;
}

/**
 * Which elements and unsafe statements a short utterance could reach at all: an inverted index over the keys of all
 * responses. Of a rubric's some hundred elements an utterance has words enough for two or three; to look at the others
 * would take all the time there is. What is left out could not have reached the least coverage that `windowsFor` is
 * asked for: less for what earns than for what is held against somebody.
 */
export class ReachIndex {
  private readonly entries = new Map<string, Entries>();
  /** By response: what must be covered of it, and whose it is. */
  private readonly needed: number[] = [];
  private readonly owner: (CompiledElement | CompiledStatement)[] = [];
  private readonly responses: Response[] = [];
  private terms = 0;
  private room: Room | undefined;

  constructor(rubric: CompiledRubric) {
    for (const element of rubric.elements) {
      for (const response of element.say) this.add(response, element, LEAST_COVERAGE);
      for (const response of [...element.incorrect, ...element.elsewhere.flatMap(({ responses }) => responses)]) this.add(response, element, WRONG_ACCEPTED);
    }
    for (const statement of rubric.unsafe) for (const response of statement.say) this.add(response, statement, UNSAFE_ACCEPTED);
  }

  private add(response: Response, owner: CompiledElement | CompiledStatement, least: number): void {
    const place = this.needed.push(least * response.weight) - 1;
    this.owner.push(owner);
    this.responses.push(response);
    for (const term of response.terms) {
      if (term.plain) continue;
      const number = this.terms;
      this.terms += 1;
      for (const { key, quality } of term.keys) {
        let entries = this.entries.get(key);
        if (entries === undefined) this.entries.set(key, (entries = { responses: [], terms: [], worths: [], own: [] }));
        entries.responses.push(place);
        entries.terms.push(number);
        entries.worths.push(quality * term.weight);
        entries.own.push(quality >= OWN_WORDS.quality && term.text !== "{quantity}" ? term.weight : 0);
      }
    }
  }

  /** What the words of these postings could reach, if they stood as well as they can. */
  within(postings: Postings): Reach {
    const { best, bestOwn, reached, reachedOwn } = (this.room ??= roomFor(this.terms, this.responses.length));
    const touchedTerms: number[] = [];
    const touched: number[] = [];
    for (const key of postings.keys()) {
      const entries = this.entries.get(key);
      if (entries === undefined) continue;
      const { responses, terms, worths, own } = entries;
      for (let k = 0; k < worths.length; k += 1) {
        const term = terms[k]!;
        const worth = worths[k]!;
        const before = best[term]!;
        if (worth <= before) continue;
        const response = responses[k]!;
        if (before === 0) touchedTerms.push(term);
        if (reached[response] === 0) touched.push(response);
        best[term] = worth;
        reached[response]! += worth - before;
        // The better key of a term is no less its own word.
        if (own[k]! > bestOwn[term]!) {
          bestOwn[term] = own[k]!;
          reachedOwn[response]! += own[k]!;
        }
      }
    }
    const reach: Reach = { owners: new Set(), responses: new Set() };
    for (const place of touched) {
      const response = this.responses[place]!;
      // Sums of the same weights in another order differ in the last digits.
      if (mostCoverage(response, reached[place]! + response.plainWeight, reachedOwn[place]!) >= this.needed[place]! - ROUNDING) {
        reach.owners.add(this.owner[place]!);
        reach.responses.add(response);
      }
      reached[place] = 0;
      reachedOwn[place] = 0;
    }
    for (const term of touchedTerms) {
      best[term] = 0;
      bestOwn[term] = 0;
    }
    return reach;
  }
}

export interface Reach {
  owners: Set<CompiledElement | CompiledStatement>;
  responses: Set<Response>;
}

const ROUNDING = 1e-9;

function roomFor(terms: number, responses: number): Room {
  return { best: new Float64Array(terms), bestOwn: new Float64Array(terms), reached: new Float64Array(responses), reachedOwn: new Float64Array(responses) };
}
