import type { Match } from "./types.ts";

/** Whether two matches are of one element: its id is the item's own. */
export function sameElement(one: Pick<Match, "item" | "element">, other: Pick<Match, "item" | "element">): boolean {
  return one.item === other.item && one.element === other.element;
}
