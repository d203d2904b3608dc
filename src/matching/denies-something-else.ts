import { wordWeight } from "../language/lexicon.ts";
import type { Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** A denial that takes in weighty words from outside the element denies something else. */
const STRANGE_WEIGHT = 1.2;
/** Words after a denial that make it one of manner or time: "not too hard", "don't do it before". */
export const MANNER: ReadonlySet<string> = new Set(["too", "before", "until", "till", "unless", "more", "less", "than", "hard", "hardly", "fully", "enough", "if", "when", "without", "while", "yet"]);

/** Whether the clauses of the passage deny its manner or time, or something that is none of its element. @param vocabulary the element's stems. */
export function deniesSomethingElse(stream: Stream, window: Window, vocabulary: ReadonlySet<string>): boolean {
  const clauses = new Set<number>();
  for (let k = window.first; k < window.end; k += 1) clauses.add(stream.clauseOf[k]!);
  let strange = 0;
  for (const index of clauses) {
    const clause = stream.clauses[index]!;
    for (let k = clause.first; k < clause.end; k += 1) {
      if (!stream.polarity[k]!.negated) continue;
      const token = stream.tokens[k]!;
      if (MANNER.has(token.text)) return true;
      if (!vocabulary.has(token.stem)) strange += wordWeight(token.stem);
    }
  }
  return strange >= STRANGE_WEIGHT;
}
