import { inOneSentence, type Stream } from "./stream.ts";

/** A denial further off makes too long a quote. Tokens. */
const REACH = 20;
/** Parts of what denies, in front of its last word: "rather than", "must not", "no need to". */
const LEADS = /^(rather|instead|as|opposed|do|does|did|must|should|can|could|will|would|no|need|never|away|out|not)$/;
const LEAD_WORDS = 2;

/**
 * Where the denial begins that the passage stands under, before its first word; null where it stands under none. A quote
 * without it would say the opposite: "don't tip it, or spray towards the middle".
 * @returns a token.
 */
export function denialBefore(stream: Stream, first: number): number | null {
  const { tokens, polarity } = stream;
  if (polarity[first]?.negated !== true) return null;
  let from = first;
  while (from > 0 && first - from < REACH && inOneSentence(stream, from - 1, first) && (polarity[from - 1]!.negated || /^(or|nor|and)$/.test(tokens[from - 1]!.text))) from -= 1;
  if (from === 0 || first - from >= REACH || !inOneSentence(stream, from - 1, first)) return null;
  from -= 1;
  for (let lead = 0; lead < LEAD_WORDS && from > 0 && inOneSentence(stream, from - 1, first) && LEADS.test(tokens[from - 1]!.text); lead += 1) from -= 1;
  return from;
}
