import type { Passage } from "./passages.ts";

/**
 * Chance that a careful reader agrees with the verdict, from the fit: a logistic curve. Set by hand, not yet
 * calibrated: `npm run bench:stations` prints how many errors it leaves outside "listen".
 */
const CURVE = { steepness: 11, middle: 0.52 } as const;
/** A passage that rests on sound-alikes is less sure than its fit says. */
const HEARING_COST = 0.25;

export function confidenceOf(passage: Passage): number {
  const { aligned, response } = passage.window;
  const misheard = aligned.reduce((sum, { term, hit }) => sum + (hit.quality < 0.9 ? response.terms[term]!.weight : 0), 0) / response.weight;
  return logistic(passage.coverage) * (1 - HEARING_COST * Math.min(1, misheard * 2));
}

/** For an element that was not found: how sure it is that it was not said, from the nearest passage's fit. */
export function absenceConfidence(nearest: { score: number; closed: readonly unknown[] } | undefined): number {
  if (nearest === undefined) return 0.97;
  return nearest.closed.length > 0 ? 1 - 0.45 * logistic(nearest.score) : 1 - logistic(nearest.score - 0.04);
}

function logistic(score: number): number {
  return 1 / (1 + Math.exp(-CURVE.steepness * (score - CURVE.middle)));
}
