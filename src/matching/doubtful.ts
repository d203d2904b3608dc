import type { CompiledElement } from "./compile.ts";
import { counts } from "./likelihood.ts";
import { plainMatch } from "./passage-match.ts";
import { neededFor, type Passage } from "./passages.ts";
import { isShown } from "./showing.ts";
import { wordsOf, type Stream } from "./stream.ts";
import type { Match } from "./types.ts";

/** A half-heard or shown passage must carry so much of the response to be about the element at all. */
const HALF_SAID = 0.45;
/** Something unheard, or a "like this", this near to the passage belongs to it. */
const NEARBY = 8;

/** Elements nobody said outright, but that were half heard, shown, or hang on a sound-alike. */
export function doubtfulMatches(all: readonly Passage[], found: readonly Match[], stream: Stream): Match[] {
  const done = new Set(found.map(({ item, element }) => `${item}/${element}`));
  const best = new Map<CompiledElement, Match>();
  for (const passage of all) {
    const { element } = passage;
    // An open passage that fits well was taken by a better owner: nothing about it is in doubt.
    if (done.has(`${element.item}/${element.element}`) || passage.coverage < HALF_SAID || counts(passage)) continue;
    const verdict = doubtOf(passage, stream);
    if (verdict === null || (best.get(element)?.score ?? 0) >= passage.coverage) continue;
    best.set(element, { ...plainMatch({ ...passage, ...verdict }, wordsOf(stream, passage.first, passage.end), stream), ...verdict });
  }
  return [...best.values()];
}

function doubtOf(passage: Passage, stream: Stream): Pick<Match, "verdict" | "reason"> | null {
  const others = passage.closed.filter((gate) => gate !== "sound-alike");
  if (passage.verdict === "unclear" && others.length === 0) return passage.coverage >= neededFor({ ...passage, verdict: "right" }) ? { verdict: "unclear", reason: passage.reason ?? "a sound-alike changes the meaning" } : null;
  // A number or a must-word may be just what was not heard; a denial or a question was heard.
  if (others.some((gate) => gate !== "quantity" && gate !== "must")) return null;
  if (isShown(passage, stream, NEARBY)) return { verdict: "shown", reason: "shown or pointed at, not said" };
  for (let place = passage.first - 1; place <= passage.end; place += 1) {
    if (stream.garbledAfter.has(place)) return { verdict: "unclear", reason: "part of it could not be heard" };
    if (stream.doubtful.has(place) && (!stream.heard.has(place) || perhapsMissing(passage, place))) return { verdict: "unclear", reason: "the recogniser or transcriber doubts these words" };
  }
  return null;
}

/**
 * Whether a word that the recogniser doubts may be what the passage lacks. It must be near enough without it: a recogniser
 * that doubts a whole talk does not make an item of every few words that fit somewhere.
 */
function perhapsMissing(passage: Passage, place: number): boolean {
  if (passage.coverage < neededFor({ ...passage, verdict: "right" })) return false;
  return !passage.window.aligned.some(({ hit }) => hit.first <= place && place < hit.end);
}
