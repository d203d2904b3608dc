import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";

/** Sources of the rubric and of its own blocks that no fact names: they look as if something rested on them, and have no review date. */
export function checkSources({ rubric, places }: PlacedRubric): Finding[] {
  const facts = [...itemsOf(rubric).flatMap((item) => [item.fact, ...item.elements.map(({ fact }) => fact)]), ...rubric.unsafe.map(({ fact }) => fact)];
  const named = new Set(facts.flatMap((fact) => (fact === undefined ? [] : [fact.source])));
  return Object.keys(rubric.sources).flatMap((source) => {
    const place = named.has(source) ? null : places.idleSource(source);
    return place === null ? [] : [findingAt(place, "SW-C22", "info", `no fact names the source '${source}'`)];
  });
}
