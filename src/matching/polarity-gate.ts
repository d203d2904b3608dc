import { saysConditionAlone } from "./condition-alone.ts";
import { deniesNothing } from "./denies-nothing.ts";
import { deniesSomethingElse } from "./denies-something-else.ts";
import { deniesTheDoing } from "./denies-the-doing.ts";
import type { Stream } from "./stream.ts";
import { warns } from "./warned-of.ts";
import type { Window } from "./windows.ts";

export type PolarityReading =
  /** Affirmed where the response affirms, denied where it denies. */
  | "agrees"
  /** Denied as a whole where the response affirms, or the other way round. */
  | "opposes"
  /** Neither: a modifier is denied ("not too hard"), or the clause speaks of what may happen. */
  | "apart";

/** Less than this share of the weight under the same polarity is no agreement. */
const AGREEMENT = 0.6;
/** A thing this heavy that the response denies and the speaker affirms is no agreement, whatever else is said alike. */
const DENIED_WEIGHT = 0.9;
/** So much of the weight must be denied as the response denies it for what is named before to be denied with it. */
const OF_A_TOPIC = 0.3;
/** Before a number: it tells when, or for how long. */
const TELLS_WHEN = /^(in|for|after|within|over|than|first|next)$/;

/** How the polarity of the passage stands to that of the response. */
export function readPolarity(stream: Stream, window: Window, vocabulary: ReadonlySet<string>): PolarityReading {
  if (saysConditionAlone(stream, window)) return "apart";
  // "If your eyesight goes blurry there's no need to see anybody": the condition is not what is denied.
  const told = window.aligned.filter(({ term, hit }) => window.response.terms[term]!.weight > 0 && !stream.polarity[hit.first]!.hypothetical);
  // "Never more than two, even in an attack": whether the denial reaches over the "even" is how the sentence was cut.
  const denying = told.filter(({ term }) => !window.response.terms[term]!.conceded);
  const weighty = denying.length > 0 ? denying : told.length > 0 ? told : window.aligned;
  // "It doesn't need several days": a number may be denied too, but "not more than two" denies none.
  const spokenAs = ({ term, hit }: Window["aligned"][number]) => stream.polarity[window.response.terms[term]!.text === "{quantity}" ? hit.first : hit.end - 1]!;
  const denials = weighty.filter((one) => window.response.terms[one.term]!.negated && spokenAs(one).negated);
  const lastDenied = denials.reduce((last, { hit }) => Math.max(last, hit.first), -1);
  let same = 0;
  let all = 0;
  let hypothetical = 0;
  let deniedHere = false;
  let allowed = false;
  const topic: number[] = [];
  for (const one of weighty) {
    const { term, hit } = one;
    const { weight, negated, eitherWay, text } = window.response.terms[term]!;
    const spoken = spokenAs(one);
    // "No better in ten minutes" and "not before ten minutes": when it is so is not what is denied.
    if (text === "{quantity}" && weighty.length > 1 && (negated || spoken.negated) && TELLS_WHEN.test(stream.tokens[hit.first - 1]?.text ?? "")) continue;
    all += weight;
    // "Nothing under four": the denial belongs to the bound.
    if (text === "{quantity}" && spoken.negated && !negated && boundsNumber(stream, hit.first)) same += weight;
    else if (spoken.negated === negated || (eitherWay && spoken.eitherWay)) same += weight;
    // "Fingers well away from the tip" denies what "no fingers on the tip" denies: they are named first.
    else if (negated && !spoken.hypothetical && hit.first < lastDenied && stream.clauseOf[hit.first] === stream.clauseOf[lastDenied]) topic.push(weight);
    else if (negated && weight >= DENIED_WEIGHT) allowed = true;
    if (spoken.negated) deniedHere = true;
    if (spoken.hypothetical) hypothetical += weight;
  }
  const isDenied = denials.reduce((sum, { term }) => sum + window.response.terms[term]!.weight, 0) >= OF_A_TOPIC * all;
  if (isDenied) same += topic.reduce((sum, weight) => sum + weight, 0);
  else if (topic.some((weight) => weight >= DENIED_WEIGHT)) allowed = true;
  if (all === 0 || (same / all >= AGREEMENT && !allowed)) return deniesNothing(stream, window) || deniesTheDoing(stream, window) ? "apart" : "agrees";
  if (same / all >= AGREEMENT) return "apart";
  if (hypothetical / all > 1 - AGREEMENT) return warns(stream, window) ? "agrees" : "apart";
  if (same / all > 1 - AGREEMENT) return "apart";
  if (!deniedHere) return "opposes";
  return deniesSomethingElse(stream, window, vocabulary) ? "apart" : "opposes";
}

/** Whether the denial before a number makes it a bound: "nothing under four", "not over seven". */
function boundsNumber({ tokens, quantities }: Stream, first: number): boolean {
  return /^(not|nothing|never|no)$/.test(tokens[first - 1]?.text ?? "") && quantities.some((mention) => mention.first === first && mention.bound !== "exact");
}
