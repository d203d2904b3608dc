import { wordWeight } from "../language/lexicon.ts";
import { MANNER } from "./denies-something-else.ts";
import type { Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/** What is not to be done, or does not happen, stands straight behind one of these. */
const DENIES_A_DOING = /(^| )(do not|does not|will not|would not|must not|should not|need not|not to|not need to|not have to|rather than|sooner than|instead of|.* never)$/;
/** Moves to what is denied with it: "don't go to hospital". */
const GOES_THERE = /^(?:go|come|get)$/;
/** Opens when or how it is done; what stands behind the verb without it is what it is done to. */
const HOW_OR_WHEN = /^(in|on|at|by|with|for|from|like|as|within|during|through|into|onto|over|under|around|every|each|all|so|very|that|this|really)$/;
/** A doing that weighs so much is the response's own. */
const DOING_WEIGHT = 0.1;

/** Whether the response denies nothing, and what the speaker denies is its doing: "the colour won't change". */
export function deniesTheDoing(stream: Stream, { aligned, response: { terms } }: Window): boolean {
  const { tokens, polarity } = stream;
  if (terms.some(({ negated, weight }) => negated && weight > 0)) return false;
  return aligned.some(({ term, hit: { first, end } }) => {
    const { weight, supposed, eitherWay } = terms[term]!;
    if (weight < DOING_WEIGHT || supposed || eitherWay || !polarity[first]!.negated || polarity[first]!.hypothetical) return false;
    const verb = goesBefore(tokens, first);
    if (!DENIES_A_DOING.test(`${tokens[verb - 3]?.text ?? ""} ${tokens[verb - 2]?.text ?? ""} ${tokens[verb - 1]?.text ?? ""}`)) return false;
    // "It doesn't work on the spot": when it does not, or how, is what is denied; "don't mention the warfarin": what it is done to is denied with it.
    let howOrWhen = false;
    for (let place = end; polarity[place]?.negated === true && stream.clauseOf[place] === stream.clauseOf[first]; place += 1) {
      if (aligned.some(({ hit }) => hit.first <= place && place < hit.end)) continue;
      howOrWhen ||= HOW_OR_WHEN.test(tokens[place]!.text);
      if (MANNER.has(tokens[place]!.text) || (howOrWhen && wordWeight(tokens[place]!.stem) >= 1)) return false;
    }
    return true;
  });
}

/** Where the doing that a place belongs to begins: at the "go" of "go to the hospital", else at the place itself. */
function goesBefore(tokens: Stream["tokens"], place: number): number {
  const to = /^(the|a|an|your)$/.test(tokens[place - 1]?.text ?? "") ? place - 2 : place - 1;
  return tokens[to]?.text === "to" && GOES_THERE.test(tokens[to - 1]?.text ?? "") ? to - 1 : place;
}
