import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import { findingAt } from "./finding.ts";

/** As the matcher reads it: letters small, blanks and the punctuation at the end say nothing. */
export function bareResponse(response: string): string {
  return response.toLowerCase().replace(/\s+/g, " ").replace(/[.,;:!?\s]+$/, "");
}

/** Responses that stand twice in one list: they add nothing, and make an element look better covered than it is. */
export function checkRepeats({ rubric, places }: PlacedRubric): Finding[] {
  const findings: Finding[] = [];
  const check = (phrases: readonly string[] | undefined, of: string, place: (index: number) => Place) => {
    const seen = new Set<string>();
    phrases?.forEach((phrase, index) => {
      const bare = bareResponse(phrase);
      if (seen.has(bare)) findings.push(findingAt(place(index), "SW-C19", "info", `'${phrase}' stands twice in ${of}`));
      seen.add(bare);
    });
  };
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, at) => {
      for (const list of ["say", "incorrect"] as const) check(element[list], `'${list}' of '${element.id}'`, (index) => places.element(item.id, at, [list, index]));
    });
  }
  rubric.unsafe.forEach(({ id, say }, at) => check(say, `the unsafe statement '${id}'`, (index) => places.unsafe(at, ["say", index])));
  return findings;
}
