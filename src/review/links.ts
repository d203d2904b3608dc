import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";

/** Unsafe statements that take the wrong statements of an element which has none: the link tells nothing. */
export function checkLinks({ rubric, places }: PlacedRubric): Finding[] {
  const without = new Set(itemsOf(rubric).flatMap(({ id, elements }) => elements.filter(({ incorrect = [] }) => incorrect.length === 0).map((element) => `${id}/${element.id}`)));
  return rubric.unsafe.flatMap(({ id, wrong_of: wrongOf = [] }, index) =>
    wrongOf.flatMap((key, at) => (without.has(key) ? [findingAt(places.unsafe(index, ["wrong_of", at]), "SW-C31", "warning", `'${id}' takes the wrong statements of '${key}', which has none`)] : [])),
  );
}
