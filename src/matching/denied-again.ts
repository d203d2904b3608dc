import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import type { Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** A word that denies. */
export const A_DENIAL = /^(not|never|no|nor|without|cannot|\w+n't)$/;
/** Behind a denial: that it is no more than that is what is denied. */
export const MERELY = /^(just|only|simply|merely)$/;

/** A place of a response with its alternatives. */
const PLACES = /(?:\([^()]*\)|[^\s()])+/g;
const placesOf = (text: string): string[][] => (text.match(PLACES) ?? []).map((place) => place.split("|"));
const hasDenial = (alternative: string): boolean => alternative.split(/[()\s]+/).some((word) => A_DENIAL.test(word));

/** A response with its one denial may be about all of its words ("not holding add another one"); two denials deny two things. */
const hasTwoDenials = remembered(({ text }: Response) => placesOf(text).filter((alternatives) => alternatives.some(hasDenial)).length > 1);

/**
 * "If it's not holding the pain don't stick a second one on": the response too denies that it holds, and is held for the
 * second one, which is denied here once more.
 */
export function deniesAgain(stream: Stream, window: Window): boolean {
  const { tokens, polarity } = stream;
  const { aligned, response } = window;
  if (deniesWhatIsTold(stream, window)) return true;
  const denied = aligned.filter(({ term, hit }) => response.terms[term]!.negated && polarity[hit.first]!.negated).map(({ hit }) => hit.first);
  const supposed = denied.filter((place) => polarity[place]!.hypothetical);
  // "Don't ring here, we can't help" tells both, and denies nothing of what is held against it.
  if (supposed.length === 0 || supposed.length === denied.length || hasTwoDenials(response)) return false;
  const from = Math.min(...supposed);
  const told = denied.find((place) => place > from && !polarity[place]!.hypothetical);
  return told !== undefined && tokens.slice(from, told).some(({ text }, behind) => A_DENIAL.test(text) && !polarity[from + behind]!.hypothetical);
}

/** Whether the response has two denials whichever of its alternatives is said: in "(can't wee) drink|(don't worry)" there is one. */
const deniesTwice = remembered(({ text }: Response) => placesOf(text).filter((alternatives) => alternatives.every(hasDenial)).length > 1);

/** A word this heavy, beside the heaviest of its response, is what is told. */
const TOLD_WEIGHT = 0.3;
/** "You can't" tells what somebody is unable to do as well. */
const FORBIDS = /^(do|should|must)$/;
/** So near before a word its own denial stands: "don't ever wait". */
const OWN_DENIAL = 2;

/**
 * "If you can't wee don't wait" denies what the statement "if you can't wee, wait" tells, and so does "don't just run the
 * tap and wait": the statement denies too, but of the case alone, and here what is told behind the case is denied.
 */
function deniesWhatIsTold({ tokens, polarity }: Stream, { aligned, response, first }: Window): boolean {
  if (deniesTwice(response)) return false;
  const { terms } = response;
  const ofTheCase = aligned.filter(({ term, hit }) => terms[term]!.negated && polarity[hit.end - 1]!.negated);
  const from = ofTheCase.length === 0 ? first - 1 : Math.min(...ofTheCase.map(({ hit }) => hit.first));
  const heavy = TOLD_WEIGHT * Math.max(...terms.map(({ weight }) => weight));
  const forbids = (place: number) => tokens[place]!.text === "never" || (tokens[place]!.text === "not" && FORBIDS.test(tokens[place - 1]?.text ?? ""));
  return aligned.some(({ term, hit }) => {
    const { weight, plain, negated } = terms[term]!;
    if (plain || weight < heavy || hit.first <= from) return false;
    for (let place = hit.first - 1; place > from; place -= 1) {
      if (!forbids(place)) continue;
      const merely = MERELY.test(tokens[place + 1]!.text);
      // What the statement's own denial has run on to is denied once more only by one straight before it.
      if (merely ? !negated : polarity[hit.end - 1]!.negated && (!negated || hit.first - place <= OWN_DENIAL)) return true;
    }
    return false;
  });
}
