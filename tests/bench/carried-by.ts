import type { Passage } from "../../src/matching/passages.ts";
import type { Stream } from "../../src/matching/stream.ts";

/** Whether the annotated sentences, and those right before them, carry at least half of the passage. */
export function carriedBy(passage: Passage, stream: Stream, sentences: readonly { first: number; end: number; says: readonly string[] }[]): boolean {
  const key = `${passage.element.item}/${passage.element.element}`;
  let carried = 0;
  let all = 0;
  let direct = false;
  for (const { term, hit } of passage.window.aligned) {
    const { weight } = passage.window.response.terms[term]!;
    const word = stream.tokens[hit.first]!.word;
    const place = sentences.findIndex(({ first, end }) => word >= first && word < end);
    all += weight;
    const here = sentences[place]?.says.includes(key) === true;
    direct ||= here;
    if (here || sentences[place + 1]?.says.includes(key) === true) carried += weight;
  }
  return direct && carried >= all / 2;
}
