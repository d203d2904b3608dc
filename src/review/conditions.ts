import { didYouMean } from "../problem/nearest.ts";
import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";

/**
 * Items that wait for a condition which the scenario does not have, or for one not to hold which it has: they are not
 * applicable for everybody. In a block that is what conditions are for; in the rubric itself it is a slip.
 */
export function checkConditions({ rubric, places }: PlacedRubric): Finding[] {
  const { conditions } = rubric.scenario;
  return itemsOf(rubric).flatMap((item) =>
    (item.when ?? []).flatMap((condition, index) => {
      const denied = condition.startsWith("not ");
      if (conditions.includes(denied ? condition.slice(4) : condition) !== denied || !places.isOwn(item.id, "when")) return [];
      if (denied) return [findingAt(places.item(item.id, ["when", index]), "SW-C20", "warning", `'${item.id}' applies only when '${condition}', but the scenario has that condition: it counts for nobody`, `Take the item or this condition out, or take '${condition.slice(4)}' from scenario.conditions.`)];
      const known = conditions.length === 0 ? "The scenario has none" : `The scenario has: ${conditions.join(", ")}`;
      return [findingAt(places.item(item.id, ["when", index]), "SW-C20", "warning", `'${item.id}' applies only when '${condition}', which is no condition of the scenario: it counts for nobody`, `${didYouMean(condition, conditions)}${known}. Add it under scenario.conditions, or correct the spelling.`)];
    }),
  );
}
