import { HARMS } from "../language/appraisals.ts";
import type { Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** What a response denies must weigh so much of what is said of it for a warning to stand for the denial. */
const DENIED_SHARE = 0.6;
/** Behind what is supposed, so many words may pass before its harm is named. */
const WARNING_REACH = 12;

/** "If you give it a big sniff it ends up in your throat" says what "not a big sniff" says. */
export function warns(stream: Stream, { end, aligned, response }: Window): boolean {
  const denied = aligned.reduce((sum, { term }) => sum + (response.terms[term]!.negated ? response.terms[term]!.weight : 0), 0);
  const all = aligned.reduce((sum, { term }) => sum + response.terms[term]!.weight, 0);
  if (denied / all < DENIED_SHARE) return false;
  const [harm] = HARMS.find(stream.tokens, end, Math.min(stream.tokens.length, end + WARNING_REACH));
  return harm !== undefined && stream.turnOf[harm.first] === stream.turnOf[end - 1] && !stream.polarity[harm.first]!.negated;
}
