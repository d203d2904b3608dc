import type { Sentence, Station } from "../station/types.ts";

/** The sentence that a word stands in: sentences tile the words in order. */
export function sentenceAt({ sentences }: Station, word: number): Sentence | undefined {
  let low = 0;
  let high = sentences.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sentences[middle]!.end <= word) low = middle + 1;
    else high = middle;
  }
  const found = sentences[low];
  return found !== undefined && word >= found.first ? found : undefined;
}
