import { speechPhrases } from "../language/speech-phrases.ts";
import { phraseList } from "../language/phrase-set.ts";
import type { Token } from "../language/token.ts";
import { turnAt } from "../station/turns.ts";
import type { WordSpan } from "../station/types.ts";
import { HESITATION_WORDS, tokensIn, type Scene } from "./elicitation.ts";

/*
 * Whether the candidate says no to what the patient has just asked or proposed: "no", "she couldn't, I'm afraid", "not
 * with these", "I wouldn't".
 */

const NOES = speechPhrases("noes");
const PARTLY = speechPhrases("noes_in_part");
const ALLOWS = speechPhrases("affirmations");
const LEADS_IN = [speechPhrases("openers"), speechPhrases("stalls"), phraseList([...HESITATION_WORDS, "god", "goodness", "gosh", "love", "dear"], { by: "text" })];

/** A no opens the reply, behind so many words at most. */
const NO_WITHIN = 6;
/** What is allowed after all, or narrowed, is so within so many words. */
const TURNED_WITHIN = 12;
/** "No, no": more than that must be said, or the candidate may only have made a noise; but where it was asked whether a thing must be done (told-not-needed.ts). */
export const A_NO = /^(no|nope|nah)$/;
/** "Yes, don't waste it" says no to something else. */
const A_YES = /^(yes|yeah|yep|aye|sure|perfect|great|lovely|good|brilliant|exactly|absolutely)$/;
const SUBJECT = /^(i|you|he|she|it|they|we|that|this|those|these)$/;
const VERB = /^(is|are|was|do|does|did|can|could|will|would|should|must|may|need)$/;
/** Say that it does no harm, or is not needed: "no, that's fine", "no need". */
const NO_HARM = /^(fine|okay|problem|worry|worries|harm|trouble|matter|matters|bother|rush|hurry|allowed|need|yes|yeah|yep)$/;
/** "No, only when you're blocked up", "not unless", "no, not until": it is so at times. */
const AT_TIMES = /^(unless|until|till|except|apart|bar)$/;
const SINGLES_OUT = /^(only|just)$/;
const A_CASE = /^(if|when|after|for|once|until|till|where|while|before)$/;

/** The opening words of the reply that says no; null where it says none, says it in part, or allows it after all. */
export function saysNoTo(scene: Scene, said: WordSpan): WordSpan | null {
  const place = turnAt(scene.turns, said);
  const reply = scene.turns[place + 1];
  if (place < 0 || reply?.role !== "candidate") return null;
  const { tokens } = scene.candidate;
  const { first, end } = tokensIn(scene.candidate, reply);
  const behind = openingNo(tokens, first, end);
  if (behind === null || tokens.slice(first, end).every(({ text }) => A_NO.test(text))) return null;
  const reach = Math.min(end, behind + TURNED_WITHIN);
  for (let k = behind; k < reach; k += 1) {
    const before = tokens[k - 1]!;
    const { text } = tokens[k]!;
    if (AT_TIMES.test(text) || (SINGLES_OUT.test(text) && A_CASE.test(tokens[k + 1]?.text ?? ""))) return null;
    const allowed = ALLOWS.at(tokens, k);
    if ((NO_HARM.test(text) || allowed !== null) && !/^(not|never)$/.test(before.text) && tokens[allowed?.end ?? k + 1]?.text !== "not") return null;
  }
  return { first: reply.first, end: tokens[reach - 1]!.word + 1 };
}

/** Behind what leads in to a yes or a no ("well", "let me think"); null where nothing does. */
export function behindLeadIn(tokens: readonly Token[], place: number): number | null {
  for (const set of LEADS_IN) {
    const hit = set.at(tokens, place);
    if (hit !== null) return hit.end;
  }
  return null;
}

/** Behind the no that a stretch opens with; null where it opens with none. */
function openingNo(tokens: readonly Token[], first: number, end: number): number | null {
  for (let place = first; place < Math.min(end, first + NO_WITHIN); ) {
    if (PARTLY.at(tokens, place) !== null) return null;
    const hit = NOES.at(tokens, place);
    if (hit !== null) return hit.end;
    if (A_YES.test(tokens[place]!.text)) return null;
    const { text } = tokens[place]!;
    if (A_NO.test(text) || (text === "not" && place + 1 < end)) return place + 1;
    if (SUBJECT.test(text) && VERB.test(tokens[place + 1]?.text ?? "") && tokens[place + 2]?.text === "not" && (tokens[place + 2]!.after !== "" || place + 3 >= end)) return place + 3;
    const behind = behindLeadIn(tokens, place);
    if (behind === null) return null;
    place = behind;
  }
  return null;
}
