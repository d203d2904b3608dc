import { speechPhrases } from "../language/speech-phrases.ts";
import { inOneSentence, type Stream } from "./stream.ts";

const OTHERS = speechPhrases("others");
/** So many tokens before the passage the others are named; without punctuation a sentence may be very long. */
const REACH = 22;

/**
 * Whether the passage tells what others do or did ("we had a gentleman who carried on with both"): a warning, which is
 * held against nobody.
 */
export function toldOfOthers({ first, end }: { first: number; end: number }, stream: Stream): boolean {
  let from = first;
  while (from > 0 && first - from < REACH && stream.turnOf[from - 1] === stream.turnOf[first] && inOneSentence(stream, from - 1, first)) from -= 1;
  return OTHERS.find(stream.tokens, from, end).length > 0;
}
