import { likelihoodOf, logOddsOf } from "../matching/curve.ts";
import type { Attempt, Judgement, Matches } from "../matching/types.ts";
import type { Item } from "../rubric/schema.ts";
import type { JudgedElement } from "./elements.ts";
import weights from "./sureness.json" with { type: "json" };

/*
 * How sure an element's mark is, seen beside the whole sheet: what is found in a station that has little more likely fits
 * by chance, and what both readers almost take for said was more likely said in other words. It decides what a person is
 * asked to listen to, never the mark: that stays what was said. Logistic curves, fitted by `npm run fit:sureness`
 * (tests/bench/fit-sureness.ts) on annotated talk that no rubric was widened by.
 */

/** In the order of the weights in sureness.json, behind the intercept. */
export const COMPLETE_SIGNS = ["confidence of its best passage (log-odds)", "share of the station's elements found", "one passage only", "how likely it is said (log-odds)", "how likely it is said wrongly (log-odds)"] as const;
export const ABSENT_SIGNS = [
  "score of the nearest passage",
  "nothing near",
  "what it must name is not named",
  "share of its item's other elements found",
  "its item has no other element",
  "not told but asked",
  "how likely it is said (log-odds)",
  "how likely it is said wrongly (log-odds)",
] as const;

/** Log-odds beyond these are no surer. */
const SUREST = 6;

/** What came nearest to an element, and what both readers together make of it. */
export interface Near {
  nearest: Attempt | undefined;
  /** How likely the likeliest saying says it rightly, and wrongly, 0 to 1; undefined where the second reader knows nothing of it. */
  judged: Judgement | undefined;
}

export function nearOf({ nearest, judged }: Pick<Matches, "nearest" | "judged">, item: string, element: string): Near {
  const own = (one: { item: string; element: string }) => one.item === item && one.element === element;
  return { nearest: nearest.find(own), judged: judged.find(own) };
}

/** Where the second reader knows nothing, what it mostly says: the means over the talk that the curves were fitted on. */
function judgedSigns({ judged }: Near, content: "complete" | "absent"): number[] {
  return judged === undefined ? weights.unknown[content] : [logOddsOf(judged.right, SUREST), logOddsOf(judged.wrong, SUREST)];
}

/** @param found share of all elements of the station that are complete, 0 to 1. */
export function completeSigns({ confidence, inTime }: JudgedElement, near: Near, found: number): number[] {
  return [logOddsOf(confidence, SUREST), found, inTime.length === 1 ? 1 : 0, ...judgedSigns(near, "complete")];
}

/** @param others the item's other elements. */
export function absentSigns(near: Near, item: Item, others: readonly JudgedElement[]): number[] {
  const { nearest } = near;
  return [
    nearest?.score ?? 0,
    nearest === undefined ? 1 : 0,
    nearest?.closed.includes("must") === true ? 1 : 0,
    others.length === 0 ? 0 : others.filter(({ content }) => content === "complete").length / others.length,
    others.length === 0 ? 1 : 0,
    item.kind === "tell" ? 0 : 1,
    ...judgedSigns(near, "absent"),
  ];
}

/** The chance, 0 to 1, that a careful reader gives the element the same mark. */
export function surenessOf(element: JudgedElement, near: Near, item: Item, others: readonly JudgedElement[], found: number): number {
  if (element.content === "complete") {
    // What the recogniser doubts is no surer for all that was found elsewhere.
    const heard = element.best?.heard ?? 1;
    return heard * likelihoodOf(weights.complete, completeSigns({ ...element, confidence: element.confidence / heard }, near, found));
  }
  if (element.content !== "absent") return element.confidence;
  const absent = (near.nearest?.heard ?? 1) * likelihoodOf(weights.absent, absentSigns(near, item, others));
  // What was said after the limit was hardly said before it as well: as sure as that passage, the mark is right either way.
  const late = Math.max(0, ...element.late.map(({ confidence }) => confidence));
  return late + (1 - late) * absent;
}
