import type { CompiledElement, CompiledRubric, CompiledStatement } from "./compile.ts";
import type { Response } from "./response.ts";
import { LEAST_COVERAGE } from "./passages.ts";
import type { Postings } from "./postings.ts";

/**
 * Which elements and unsafe statements a short utterance could reach at all: an inverted index over the keys of all
 * responses. Of a rubric's some hundred elements an utterance has words enough for two or three; to look at the others
 * would take all the time there is. What is left out could not have reached the least coverage in `windowsFor`.
 */
export class ReachIndex {
  /** For each key the responses that have it, and what it could bring them. */
  private readonly entries = new Map<string, { response: number; term: number; worth: number }[]>();
  /** By response: weight still needed after its plain words, and whose it is. */
  private readonly needed: number[] = [];
  private readonly owner: (CompiledElement | CompiledStatement)[] = [];
  private readonly responses: Response[] = [];
  private terms = 0;
  /** By term the most that a key of this utterance brings it; zero between two utterances. */
  private best: Float64Array | undefined;

  constructor(rubric: CompiledRubric) {
    for (const element of rubric.elements) {
      const others = element.elsewhere.flatMap(({ responses }) => responses);
      for (const response of [...element.say, ...element.incorrect, ...others]) this.add(response, element);
    }
    for (const statement of rubric.unsafe) for (const response of statement.say) this.add(response, statement);
  }

  private add(response: Response, owner: CompiledElement | CompiledStatement): void {
    const place = this.needed.push(LEAST_COVERAGE * response.weight - response.plainWeight) - 1;
    this.owner.push(owner);
    this.responses.push(response);
    for (const term of response.terms) {
      if (term.plain) continue;
      const number = this.terms;
      this.terms += 1;
      for (const { key, quality } of term.keys) {
        const entry = { response: place, term: number, worth: quality * term.weight };
        const list = this.entries.get(key);
        if (list === undefined) this.entries.set(key, [entry]);
        else list.push(entry);
      }
    }
  }

  /** What the words of these postings could reach, if they stood as well as they can. */
  within(postings: Postings): Reach {
    this.best ??= new Float64Array(this.terms);
    const { best } = this;
    const touched: number[] = [];
    const reached = new Map<number, number>();
    for (const key of postings.keys()) {
      const entries = this.entries.get(key);
      if (entries === undefined) continue;
      for (const { response, term, worth } of entries) {
        const before = best[term]!;
        if (worth <= before) continue;
        best[term] = worth;
        touched.push(term);
        reached.set(response, (reached.get(response) ?? 0) + worth - before);
      }
    }
    for (const term of touched) best[term] = 0;
    const reach: Reach = { owners: new Set(), responses: new Set() };
    for (const [response, worth] of reached) {
      // Sums of the same weights in another order differ in the last digits.
      if (worth < this.needed[response]! - ROUNDING) continue;
      reach.owners.add(this.owner[response]!);
      reach.responses.add(this.responses[response]!);
    }
    return reach;
  }
}

export interface Reach {
  owners: Set<CompiledElement | CompiledStatement>;
  responses: Set<Response>;
}

const ROUNDING = 1e-9;
