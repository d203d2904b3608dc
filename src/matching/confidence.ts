import { likelihoodOf } from "./curve.ts";
import type { Passage } from "./passages.ts";
import type { Stream } from "./stream.ts";

/*
 * The chance that a careful reader gives the same verdict: logistic curves over a few signs. `npm run calibrate` prints
 * the curves that fit the tuning side, Brier scores and reliability tables (tests/bench/results/calibration.md). The
 * fitted curve of absence is almost flat, because the labelled passages are mirrored pairs; the one here was set by
 * hand and sorts whole rehearsals better: the same share of marks to listen to holds more of the errors.
 */

/**
 * An element of which a passage is as likely as this is said as surely as that: more surely than the passage says it,
 * because what fits by chance often fits what was said elsewhere. Log-odds of the talk that the likelihood was fitted on
 * (tests/bench/results/likelihood.md, the last table).
 */
const BY_LIKELIHOOD = 1.35;

/** Intercept first, then a weight for each sign. */
const SAID = { intercept: -3.0, signs: [5.2, -2.0, 0.6] } as const;
const ABSENT = { intercept: 2.6, signs: [-3.6, -0.4, 0.3] } as const;

/** What the confidence in a passage is read from: its fit, the share of it that rests on sound-alikes, how much it says. */
export function signsOf(passage: Passage): number[] {
  const { aligned, response } = passage.window;
  const misheard = aligned.reduce((sum, { term, hit }) => sum + (hit.quality < 0.9 ? response.terms[term]!.weight : 0), 0) / response.weight;
  const weight = aligned.reduce((sum, { term, quality }) => sum + response.terms[term]!.weight * quality, 0);
  return [Math.min(1, passage.coverage), Math.min(1, misheard), Math.log(1 + weight)];
}

/** Words that a recogniser has no trust in at all it still wrote. */
const LEAST_HEARD = 0.01;

/**
 * How far the words of a passage were heard, 0 to 1: 1 where the recogniser doubts none of those that carry it, else its
 * own confidence in them, by what they weigh.
 * A number is right or wrong as a whole: no surer than the least sure word of it.
 */
export function heardOf({ window: { aligned, response }, quantity }: Passage, { heard }: Pick<Stream, "heard">): number {
  if (heard.size === 0) return 1;
  const least = (first: number, end: number) => {
    let lowest = 1;
    for (let place = first; place < end; place += 1) lowest = Math.min(lowest, heard.get(place) ?? 1);
    return lowest;
  };
  let weight = 0;
  let sure = 0;
  for (const { term, hit } of aligned) {
    weight += response.terms[term]!.weight;
    sure += response.terms[term]!.weight * least(hit.first, hit.end);
  }
  return Math.max(LEAST_HEARD, Math.min(weight > 0 ? sure / weight : 1, quantity === undefined ? 1 : least(quantity.first, quantity.end)));
}

/** The same of all words of a stretch of tokens: what was perhaps said there in other words. */
export function heardBetween({ heard }: Pick<Stream, "heard">, first: number, end: number): number {
  if (heard.size === 0 || end <= first) return 1;
  let sure = 0;
  for (let place = first; place < end; place += 1) sure += heard.get(place) ?? 1;
  return sure / (end - first);
}

/** How sure a passage is that was heard. What was not, says it with the chance of its words as well (`heardOf`). */
export function confidenceOf(passage: Passage): number {
  const { likelihood } = passage;
  if (likelihood !== undefined && passage.verdict === "wrong") return likelihood;
  if (likelihood !== undefined && passage.verdict === "right") return 1 / (1 + Math.exp(-BY_LIKELIHOOD) * (1 / likelihood - 1));
  return likelihoodOf(SAID, signsOf(passage));
}

/** Signs of an absence: the nearest passage's fit, whether a gate closed on it, whether nothing came near at all. */
export function absenceSigns(nearest: { score: number; closed: readonly unknown[] } | undefined): number[] {
  return nearest === undefined ? [0, 0, 1] : [Math.min(1, nearest.score), nearest.closed.length > 0 ? 1 : 0, 0];
}

/** For an element that was not found: how sure it is that it was not said. */
export function absenceConfidence(nearest: { score: number; closed: readonly unknown[] } | undefined): number {
  return likelihoodOf(ABSENT, absenceSigns(nearest));
}
