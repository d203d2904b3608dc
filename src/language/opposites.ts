import repairData from "./lexicon/repairs.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { stem } from "./stem.ts";

const setsOf = new Map<string, Set<number>>();
(repairData as LexiconFile<"repairs">).opposites.forEach((words, place) => {
  for (const word of words) setsOf.set(stem(word), (setsOf.get(stem(word)) ?? new Set()).add(place));
});

/** Whether two stems are of one set of opposites ("before", "after"), and not forms of one word ("back", "backwards"). */
export function areOpposite(one: string, other: string): boolean {
  const sets = setsOf.get(one);
  if (sets === undefined || one.startsWith(other) || other.startsWith(one)) return false;
  for (const set of setsOf.get(other) ?? []) if (sets.has(set)) return true;
  return false;
}
