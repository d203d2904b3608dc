import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { checkConditions } from "./conditions.ts";
import { checkExamples } from "./examples.ts";
import { checkCritical, checkJurisdictions, checkReviewDates } from "./facts.ts";
import { checkLabel } from "./label.ts";
import { checkLength, speakingTime } from "./length.ts";
import { checkLinks } from "./links.ts";
import { checkNumbers } from "./numbers.ts";
import { checkOrder } from "./order.ts";
import { reviewPhrases } from "./phrases.ts";
import type { Readings } from "./readings.ts";
import { checkRepeats } from "./repeats.ts";
import { checkSources } from "./sources.ts";
import type { CheckReport, Confusion, FileReview, RubricFigures } from "./types.ts";
import { checkUnitsAgain } from "./units-again.ts";

export interface RubricReview {
  findings: Finding[];
  confusion: Confusion[];
  figures: RubricFigures;
}

/**
 * Whether a rubric that can be read is sound. Pure.
 * @param today as 2027-06-30: facts with an earlier review date are told.
 * @param readings of this rubric's phrases: `readPhrases`, now or in an earlier check.
 */
export function reviewRubric(placed: PlacedRubric, today: string, readings: Readings): RubricReview {
  const { rubric } = placed;
  const phrases = reviewPhrases(placed, readings);
  const speaking = speakingTime(rubric, readings.speaking);
  const items = itemsOf(rubric);
  return {
    findings: [
      ...checkCritical(placed),
      ...checkConditions(placed),
      ...checkRepeats(placed),
      ...checkSources(placed),
      ...checkReviewDates(placed, today),
      ...checkJurisdictions(placed),
      ...checkNumbers(placed, readings),
      ...checkUnitsAgain(placed),
      ...checkLabel(placed),
      ...checkOrder(placed),
      ...checkLinks(placed),
      ...checkLength(placed, speaking),
      ...checkExamples(placed, readings.examples),
      ...phrases.findings,
    ],
    confusion: phrases.confusion,
    figures: {
      items: items.length,
      critical: items.filter(({ critical }) => critical).length,
      elements: items.reduce((sum, { elements }) => sum + elements.length, 0),
      ...phrases.figures,
      speaking,
    },
  };
}

/** Puts what was found in order, each finding once: a block that three rubrics include is mended once. */
export function reportOf(files: FileReview[], findings: readonly Finding[], { version, today }: { version: string; today: string }): CheckReport {
  const once = new Map<string, Finding>();
  for (const finding of findings) {
    const { file, line, column, code, message } = finding;
    // Why a response earns nothing may differ from rubric to rubric; it is one response all the same.
    const key = JSON.stringify([file, line, column, code, ...(code === "SW-C01" ? [] : [message])]);
    if (!once.has(key)) once.set(key, finding);
  }
  const sorted = [...once.values()].sort((a, b) => compare(a.file, b.file) || (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0) || compare(a.code, b.code) || compare(a.message, b.message));
  const count = (severity: Finding["severity"]) => sorted.filter((finding) => finding.severity === severity).length;
  return { form: "saidwell/rubric-check@1", version, today, files, findings: sorted, counts: { errors: count("error"), warnings: count("warning"), notes: count("info") } };
}

/** By character codes, so that the order is the same on every machine. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
