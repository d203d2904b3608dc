import type { Station } from "../station/types.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { unmetNotions } from "./must-words.ts";
import { attemptOf } from "./nearest.ts";
import { candidateEarning, leftBack, type Earning } from "./earning.ts";
import { counts, doubtsOf, LIKELY, type Doubt } from "./likelihood.ts";
import { HELD_LIKELY } from "./held-likelihood.ts";
import { neededFor, type Passage } from "./passages.ts";
import { postingsOf, type Postings } from "./postings.ts";
import { streamOf, type Stream } from "./stream.ts";
import type { Attempt, Verdict } from "./types.ts";

/** A passage that was tried for an element, counted or not, with all that decided. */
export interface ExplainedPassage extends Attempt {
  verdict: Verdict;
  /** Whether it counts for the element. */
  counts: boolean;
  /** The score it needed; null where it counts by how likely it says the element. */
  needed: number | null;
  /** How likely it says the element (or states it wrongly, where that is its verdict), seen beside all else that is said, 0 to 1; null where that was not asked. */
  likelihood: number | null;
  /** How likely it must be to count. */
  likely: number;
  /** What makes it less likely than its fit. */
  doubts: Doubt[];
  /** Notions of the rubric's `must` that were not said, as written there. */
  unmet: string[];
  reason?: string;
}

export interface ExplainedElement {
  item: string;
  element: string;
  /** Best first: what counts, then what came nearest. */
  passages: ExplainedPassage[];
}

/** So many passages show how an element was decided. */
const MOST_PASSAGES = 3;

/** How each element of one item was decided: the best passages, what aligned in them, which gate closed. Pure. */
export function explainItem(station: Station, rubric: CompiledRubric, item: string): ExplainedElement[] {
  const stream = streamOf(station, ["candidate"]);
  const postings = postingsOf(stream, rubric);
  const { all, left } = candidateEarning(rubric, postings, stream);
  return rubric.elements
    .filter((element) => element.item === item)
    .map((element) => ({
      item,
      element: element.element,
      passages: all
        .filter((passage) => passage.element === element)
        .map((passage) => explained(passage, element, left, all, postings, stream, rubric))
        .sort((a, b) => Number(b.counts) - Number(a.counts) || b.score - a.score || a.span.first - b.span.first)
        .slice(0, MOST_PASSAGES),
    }));
}

function explained(passage: Passage, element: CompiledElement, left: Earning["left"], all: readonly Passage[], postings: Postings, stream: Stream, rubric: CompiledRubric): ExplainedPassage {
  return {
    ...attemptOf(leftBack(passage, left), stream),
    verdict: passage.verdict,
    counts: counts(passage) && !left.has(passage),
    needed: passage.likelihood === undefined ? neededFor(passage) : null,
    likelihood: passage.likelihood ?? null,
    likely: passage.verdict === "wrong" ? HELD_LIKELY : LIKELY,
    doubts: passage.likelihood === undefined || passage.verdict === "wrong" ? [] : doubtsOf(passage, all, stream, rubric.elements),
    unmet: unmetNotions(element.must, postings, stream, passage.window).map(({ text }) => text),
    ...(passage.reason !== undefined && { reason: passage.reason }),
  };
}
