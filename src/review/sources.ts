import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { ofFacts } from "./facts.ts";
import { findingAt } from "./finding.ts";

/** Sources of the rubric and of its own blocks that no fact names: they look as if something rested on them, and have no review date. */
export function checkSources(placed: PlacedRubric): Finding[] {
  const { rubric, places } = placed;
  const named = new Set(ofFacts(placed, "source", ({ source }) => [source]));
  return Object.keys(rubric.sources).flatMap((source) => {
    const place = named.has(source) ? null : places.idleSource(source);
    return place === null ? [] : [findingAt(place, "SW-C22", "info", `no fact names the source '${source}'`)];
  });
}
