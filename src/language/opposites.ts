import repairData from "./lexicon/repairs.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { stem } from "./stem.ts";

/** By stem the sets of words that replace one another in a repair, by their number. */
export const oppositeSets = new Map<string, Set<number>>();
(repairData as LexiconFile<"repairs">).opposites.forEach((words, place) => {
  for (const word of words) oppositeSets.set(stem(word), (oppositeSets.get(stem(word)) ?? new Set()).add(place));
});

/** Whether two stems are of one set of opposites ("before", "after"), and not forms of one word ("back", "backwards"). */
export function areOpposite(one: string, other: string): boolean {
  const sets = oppositeSets.get(one);
  if (sets === undefined || one.startsWith(other) || other.startsWith(one)) return false;
  for (const set of oppositeSets.get(other) ?? []) if (sets.has(set)) return true;
  return false;
}
