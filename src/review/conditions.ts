import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";

/**
 * Items that wait for a condition which the scenario does not have: they are not applicable for everybody. In a block
 * that is what conditions are for; in the rubric itself it is a slip.
 */
export function checkConditions({ rubric, places }: PlacedRubric): Finding[] {
  const { conditions } = rubric.scenario;
  return itemsOf(rubric).flatMap((item) =>
    (item.when ?? []).flatMap((condition, index) => {
      if (condition.startsWith("not ") || conditions.includes(condition) || !places.isOwn(item.id, "when")) return [];
      const known = conditions.length === 0 ? "The scenario has none" : `The scenario has: ${conditions.join(", ")}`;
      return [findingAt(places.item(item.id, ["when", index]), "SW-C20", "warning", `'${item.id}' applies only when '${condition}', which is no condition of the scenario: it counts for nobody`, `${known}. Add it under scenario.conditions, or correct the spelling.`)];
    }),
  );
}
