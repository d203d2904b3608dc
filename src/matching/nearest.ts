import type { CompiledRubric } from "./compile.ts";
import { heardBetween } from "./confidence.ts";
import { LEAST_COVERAGE, type Passage } from "./passages.ts";
import { wordsOf, type Stream } from "./stream.ts";
import type { Attempt, Match } from "./types.ts";

/** For each element without a match, what came nearest and what closed: the material of `explain`. */
export function nearestAttempts(rubric: CompiledRubric, passages: readonly Passage[], found: readonly Match[], stream: Stream): Attempt[] {
  const done = new Set(found.map(({ item, element: id }) => `${item}/${id}`));
  const best = new Map<string, Passage>();
  for (const passage of passages) {
    const key = `${passage.element.item}/${passage.element.element}`;
    if (done.has(key) || passage.coverage < LEAST_COVERAGE) continue;
    const known = best.get(key);
    if (known === undefined || rank(passage) > rank(known)) best.set(key, passage);
  }
  return rubric.elements.flatMap(({ item, element: id }) => {
    const passage = best.get(`${item}/${id}`);
    return passage === undefined ? [] : [attemptOf(passage, stream)];
  });
}

const rank = (passage: Passage) => passage.coverage - 0.2 * passage.closed.length;

export function attemptOf(passage: Passage, stream: Stream): Attempt {
  const { terms, text } = passage.window.response;
  const foundTerms = new Set(passage.window.aligned.map(({ term }) => term));
  const heard = heardBetween(stream, passage.first, passage.end);
  return {
    item: passage.element.item,
    element: passage.element.element,
    span: wordsOf(stream, passage.first, passage.end),
    score: passage.coverage,
    response: text,
    aligned: passage.window.aligned.map(({ term, hit }) => ({ term: terms[term]!.text, words: wordsOf(stream, hit.first, hit.end) })),
    missing: terms.filter((_, place) => !foundTerms.has(place)).map((term) => term.text),
    closed: passage.closed,
    ...(heard < 1 && { heard }),
  };
}
