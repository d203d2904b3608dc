import type { CompiledElement, CompiledRubric, CompiledStatement, Response } from "./compile.ts";
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
  private terms = 0;

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
  within(postings: Postings): Set<CompiledElement | CompiledStatement> {
    const best = new Map<number, number>();
    const reached = new Map<number, number>();
    for (const key of postings.keys()) {
      for (const { response, term, worth } of this.entries.get(key) ?? []) {
        const before = best.get(term) ?? 0;
        if (worth <= before) continue;
        best.set(term, worth);
        reached.set(response, (reached.get(response) ?? 0) + worth - before);
      }
    }
    const owners = new Set<CompiledElement | CompiledStatement>();
    // Sums of the same weights in another order differ in the last digits.
    for (const [response, worth] of reached) if (worth >= this.needed[response]! - ROUNDING) owners.add(this.owner[response]!);
    return owners;
  }
}

const ROUNDING = 1e-9;
