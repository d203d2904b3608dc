import { remembered } from "./remembered.ts";
import { denies, type Response } from "./response.ts";
import { inOneSentence, sentenceUpTo, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** Whether the passage has the condition of a response and not what is denied or told for it, or makes a condition of what the response concedes. */
export function saysConditionAlone(stream: Stream, window: Window): boolean {
  return needsNothing(stream, window) || onlySupposes(window) || saysHalfARefusal(window) || makesACondition(stream, window);
}

/** So much of its weight a response must tell, beside what it supposes, for that to be missed. */
const TOLD_SHARE = 0.3;

/** Whether of a response that denies something only what it supposes is said: "when you're feeling fine", of "don't drop it when you're feeling fine". */
function onlySupposes({ response, aligned }: Window): boolean {
  if (!response.terms.some(({ supposed }) => supposed) || aligned.some(({ term }) => !response.terms[term]!.supposed)) return false;
  const denied = response.terms.reduce((sum, { supposed, negated, weight }) => sum + (supposed || !negated ? 0 : weight), 0);
  return denied >= TOLD_SHARE * response.weight;
}

const CONCEDES = /\beven (if|when|with|though)\b/;
const concedes = remembered(({ text }: Response) => CONCEDES.test(text));
/** So near before the passage its condition opens. */
const CONDITION_WITHIN = 6;
const CONDITION = /\b(as long as|so long as|provided|providing|only if|only with|only when)\b/;

/** "As long as she puts her own needle on" allows what "not even if she puts her own needle on" forbids. */
function makesACondition({ tokens }: Stream, { response, first, end }: Window): boolean {
  if (!concedes(response)) return false;
  const said = tokens.slice(Math.max(0, first - CONDITION_WITHIN), end).map(({ text }) => text).join(" ");
  return CONDITION.test(said) && !/\beven\b/.test(said);
}

/** "No bloods no tablets": without the one there is not the other. */
const REFUSES_BOTH = /^no (.*) no /;
const refusesBoth = remembered(({ text }: Response) => REFUSES_BOTH.test(text));

/** "You won't need any blood tests" is no half of "no blood tests no tablets", which denies them by what comes of it. */
function saysHalfARefusal({ response, aligned }: Window): boolean {
  if (!refusesBoth(response)) return false;
  const denied = response.terms.flatMap(({ negated, weight }, place) => (negated && weight > 0 ? [place] : []));
  return !denied.every((place) => aligned.some(({ term }) => term === place));
}

/** So soon behind what is supposed it is told that nothing need be done. */
const NEEDLESS_WITHIN = 5;
const NEEDLESS = /(^| )(no (need|call|reason|point)|need not|not (need|have) to|not (bother|worry|matter|trouble))( |$)/;

/** Whether all that is found of a response is what it supposes, and nothing need be done of it: "if your eyesight goes blurry there's no need to see anybody". */
function needsNothing(stream: Stream, window: Window): boolean {
  const { tokens, polarity } = stream;
  const { aligned, response } = window;
  if (denies(response) || aligned.some(({ term, hit }) => response.terms[term]!.weight > 0 && !polarity[hit.first]!.hypothetical)) return false;
  let behind = window.end;
  while (behind < tokens.length && polarity[behind]!.hypothetical && inOneSentence(stream, behind, window.end - 1)) behind += 1;
  const said = tokens.slice(behind, sentenceUpTo(stream, behind, NEEDLESS_WITHIN)).map(({ text }) => text);
  return NEEDLESS.test(said.join(" "));
}
