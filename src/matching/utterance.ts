import { toldStation } from "../station/told.ts";
import type { CompiledRubric } from "./compile.ts";
import { statedAndEarned } from "./earning.ts";
import { candidatePassages } from "./likelihood.ts";
import { matchStation } from "./match.ts";
import type { Passage } from "./passages.ts";
import { groupPossible } from "./must-words.ts";
import { postingsOf, type Postings } from "./postings.ts";
import { streamOf, type Stream } from "./stream.ts";
import type { Matches, UnsafeMatch } from "./types.ts";
import { unsafeMatches } from "./unsafe.ts";
import { withinReach } from "./within-reach.ts";
import { groupsBut, type WordGroup } from "./word-group.ts";

/**
 * What the candidate earns who says this and nothing else: the whole matcher over a station of one sentence.
 * @param text as spoken, words parted by blanks; a question needs no question mark.
 */
export function matchUtterance(text: string, rubric: CompiledRubric): Matches {
  return matchStation(spoken(text), rubric);
}

/** What one utterance does to the elements of a rubric and to its list of unsafe statements. */
export interface UtteranceReading {
  /** Passages that count, as in a station: right, wrong, or right elsewhere. */
  kept: Passage[];
  /** Every passage that was tried, with the gates that closed on it: why something did not count. */
  tried: Passage[];
  unsafe: UnsafeMatch[];
}

/** Reads any number of utterances against one rubric, each as `matchUtterance` would, in a small part of the time. */
export class UtteranceReader {
  private readonly rubric: CompiledRubric;

  constructor(rubric: CompiledRubric) {
    this.rubric = rubric;
  }

  read(text: string): UtteranceReading {
    const { stream, postings } = this.look(text);
    const { elements, unsafe } = withinReach(this.rubric, postings);
    const tried = candidatePassages(this.rubric, postings, stream, elements);
    // In a station what is said rightly is never unsafe; here it is asked whether a rubric calls the same words both.
    const { kept, unsafe: stated } = statedAndEarned(this.rubric, tried, unsafeMatches(unsafe, postings, stream, []), postings, stream);
    return { kept, tried, unsafe: stated };
  }

  /** Whether one of the element's must-words is nowhere in the utterance: then no passage is even tried. */
  lacksMust(text: string, item: string, element: string): boolean {
    const compiled = this.rubric.elements.find((candidate) => candidate.item === item && candidate.element === element);
    const { postings } = this.look(text);
    return compiled?.must.some((group) => !groupPossible(group, postings)) ?? false;
  }

  /** Which notions of an unsafe statement's `must` an utterance has not, and which of its `not_with` it has: what shuts it out. As the rubric writes them. */
  shutsOut(text: string, statement: string): { must: string[]; notWith: string[] } {
    const compiled = this.rubric.unsafe.find((candidate) => candidate.statement === statement);
    const { postings } = this.look(text);
    const named = (groups: readonly WordGroup[] = [], said: boolean) => groups.filter((group) => groupPossible(group, postings) === said).map((group) => group.text);
    return { must: named(compiled?.must, false), notWith: named(compiled?.notWith, true) };
  }

  /** Which notions of an element's `not_with` shut out one of its own wrong statements: what that names itself does not. */
  shutsOutWrong(text: string, phrase: string, item: string, element: string): string[] {
    const compiled = this.rubric.elements.find((candidate) => candidate.item === item && candidate.element === element);
    const without = compiled?.incorrect.find((response) => response.text === phrase)?.without ?? 0;
    const { postings } = this.look(text);
    return groupsBut(compiled?.notWith ?? [], without).filter((group) => groupPossible(group, postings)).map((group) => group.text);
  }

  private look(text: string): { stream: Stream; postings: Postings } {
    const stream = streamOf(spoken(text), ["candidate"]);
    return { stream, postings: postingsOf(stream, this.rubric) };
  }
}

/** A station in which the candidate says this and nobody else a word. */
const spoken = (text: string) => toldStation([{ role: "candidate", says: text }], "<utterance>");
