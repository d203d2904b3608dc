import type { FindingCode } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import { findingIn, type Place } from "../rubric/places.ts";

/** Codes of the review: all start with C. */
export type ReviewCode = Extract<FindingCode, `SW-C${string}`>;

export function findingAt(place: Place, code: ReviewCode, severity: Finding["severity"], message: string, mend: string): Finding {
  return findingIn(place, { code, severity, message, mend });
}
