import type { Token } from "./token.ts";

/** Stand behind "should" where the order of words supposes. */
const SUBJECT = /^(the|a|an|any|your|you|it|this|that|there|he|she|they|one|anything|something)$/;
/** So soon a comma ends what is supposed. */
const LONGEST = 12;

/** Whether a condition without an "if" opens here: "should the strip not fill up, bin it". What is asked has no comma before what is told. */
export function supposesByOrder(tokens: readonly Token[], place: number): boolean {
  if (tokens[place]?.text !== "should" || !SUBJECT.test(tokens[place + 1]?.text ?? "")) return false;
  for (let k = place + 2; k < Math.min(tokens.length - 1, place + LONGEST); k += 1) {
    if (tokens[k]!.after === ",") return !/^(or|and)$/.test(tokens[k + 1]!.text);
    if (tokens[k]!.after !== "") return false;
  }
  return false;
}
