import { speechPhrases } from "../language/speech-phrases.ts";
import { phraseList } from "../language/phrase-set.ts";
import type { Token } from "../language/token.ts";
import { turnAt } from "../station/turns.ts";
import type { WordSpan } from "../station/types.ts";
import { HESITATION_WORDS, tokensIn, type Scene } from "./elicitation.ts";
import { inOneSentence } from "./stream.ts";
import { A_NO, noTakingUp } from "./taking-up.ts";

/*
 * Whether the candidate says no to what the patient has just asked or proposed: "no", "she couldn't, I'm afraid", "not
 * with these", "I wouldn't".
 */

const NOES = speechPhrases("noes");
const PARTLY = speechPhrases("noes_in_part");
const ALLOWS = speechPhrases("affirmations");
const LEADS_IN = [speechPhrases("openers"), speechPhrases("stalls"), phraseList([...HESITATION_WORDS, "god", "goodness", "gosh", "love", "dear", "ach", "och", "indeed"], { by: "text" })];

/** A no opens the reply, behind so many words at most. */
const NO_WITHIN = 6;
/** What is allowed after all, or narrowed, is so within so many words. */
const TURNED_WITHIN = 12;
/** "Yes, don't waste it" says no to something else. */
const A_YES = /^(yes|yeah|yep|aye|sure|perfect|great|lovely|good|brilliant|exactly|absolutely)$/;
/** Say that it does no harm, or is not needed: "no, that's fine", "no need". */
const NO_HARM = /^(fine|okay|problem|worry|worries|harm|trouble|matter|matters|bother|rush|hurry|allowed|need|yes|yeah|yep)$/;
/** "No, only when you're blocked up", "not unless", "no, not until": it is so at times. */
const AT_TIMES = /^(unless|until|till|except|apart|bar)$/;
/** "No. Not until Friday" narrows; "you can't. Carry on till it's gone" says what to do instead. */
const NARROWS = /^(not|only|just)$/;
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
    if ((AT_TIMES.test(text) && (inOneSentence(scene.candidate, first, k) || text === "unless" || NARROWS.test(before.text))) || (SINGLES_OUT.test(text) && A_CASE.test(tokens[k + 1]?.text ?? ""))) return null;
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
    const takenUp = noTakingUp(tokens, place, end);
    if (takenUp !== null) return takenUp;
    const behind = behindLeadIn(tokens, place);
    if (behind === null) return null;
    place = behind;
  }
  return null;
}

const BETWEEN = /^(the|a|at|in|of|on|and|with|my|every|each)$/;

/**
 * The opening words of a reply that leaves one of two things standing, or one of a number ("just mornings, yours" to
 * "morning and night?", "only the one"); null where it does not.
 */
export function narrows(scene: Scene, said: WordSpan): WordSpan | null {
  const reply = scene.turns[turnAt(scene.turns, said) + 1];
  if (reply?.role !== "candidate") return null;
  const { tokens } = scene.candidate;
  const { first, end } = tokensIn(scene.candidate, reply);
  let place = first;
  for (let behind = behindLeadIn(tokens, place); behind !== null && !SINGLES_OUT.test(tokens[place]?.text ?? ""); behind = behindLeadIn(tokens, place)) place = behind;
  if (!SINGLES_OUT.test(tokens[place]?.text ?? "")) return null;
  do place += 1;
  while (place < end && BETWEEN.test(tokens[place]!.text));
  if (place >= end || tokens.slice(place, end).some(({ text }, at) => at < NO_WITHIN && A_YES.test(text))) return null;
  const { first: from, end: to } = tokensIn(scene.patient, said);
  const asked = scene.patient.tokens;
  const isOneOfTwo = asked.some(({ stem }, at) => at >= from && at < to && stem === tokens[place]!.stem && asked.slice(Math.max(from, at - 2), Math.min(to, at + 3)).some(({ text }) => text === "and"));
  const isNumber = tokens[place]!.text === "one" || scene.candidate.quantities.some((mention) => mention.first === place);
  if (!isOneOfTwo && !(isNumber && scene.patient.quantities.some((mention) => mention.first >= from && mention.first < to))) return null;
  return { first: reply.first, end: tokens[Math.min(end, place + TURNED_WITHIN) - 1]!.word + 1 };
}
