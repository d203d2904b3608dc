import type { WordSpan } from "./types.ts";

/** Whether the two have a word in common. */
export function meets(one: WordSpan, other: WordSpan): boolean {
  return one.first < other.end && other.first < one.end;
}

/** Whether a span begins inside another: a sentence is of the turn in which it begins. */
export function beginsIn({ first }: Pick<WordSpan, "first">, whole: WordSpan): boolean {
  return first >= whole.first && first < whole.end;
}

/** Whether all of a span lies inside another. */
export function liesIn(span: WordSpan, whole: WordSpan): boolean {
  return span.first >= whole.first && span.end <= whole.end;
}
