import { CATALOGUE, type FindingCode } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import { findingIn, type Place } from "../rubric/places.ts";

/** Codes of the review: all start with C. */
export type ReviewCode = Extract<FindingCode, `SW-C${string}`>;

/** @param mend absent where it names nothing of this finding alone: the code's own. */
export function findingAt(place: Place, code: ReviewCode, severity: Finding["severity"], message: string, mend: string = CATALOGUE[code].mend): Finding {
  return findingIn(place, { code, severity, message, mend });
}
