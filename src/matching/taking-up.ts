import type { Token } from "../language/token.ts";

/** "No, no": more than that must be said, or the candidate may only have made a noise; but where it was asked whether a thing must be done (told-not-needed.ts). */
export const A_NO = /^(no|nope|nah)$/;
export const SUBJECT = /^(i|you|he|she|it|they|we|that|this|those|these)$/;
const VERB = /^(is|are|was|do|does|did|can|could|will|would|should|must|may|need|have|has)$/;

/** Behind a no that takes up the verb of what was asked ("you don't, no", "she can not."); null where these tokens are none. */
export function noTakingUp(tokens: readonly Token[], place: number, end: number): number | null {
  if (!SUBJECT.test(tokens[place]?.text ?? "") || !VERB.test(tokens[place + 1]?.text ?? "") || tokens[place + 2]?.text !== "not") return null;
  const behind = place + 3;
  return tokens[behind - 1]!.after !== "" || behind >= end || A_NO.test(tokens[behind]!.text) ? behind : null;
}
