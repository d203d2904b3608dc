import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import { findingAt } from "./finding.ts";
import type { Readings } from "./readings.ts";

/** Numbers without a unit, and numbers in responses that nothing compares: the matcher would take any other in their place. */
export function checkNumbers({ rubric, places }: PlacedRubric, stated: Readings["numbers"]): Finding[] {
  const findings: Finding[] = [];
  const stating = new Map(stated.map((numbers) => [numbers.element, numbers]));
  let number = 0;
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, place) => {
      if (expectedQuantity(element.quantity, rubric)?.unit === "number" && element.must === undefined) {
        findings.push(
          findingAt(places.element(item.id, place, ["quantity"]), "SW-C08", "warning", `the quantity of '${element.id}' has no unit, only 'number'`, "Name the unit, or give the element must-words: 'number' takes any number of anything for right."),
        );
      }
      const numbers = stating.get(number);
      number += 1;
      if (numbers === undefined) return;
      const named = `'${numbers.first}'${numbers.responses > 1 ? ` and ${numbers.responses - 1} more` : ""}`;
      findings.push(
        findingAt(
          places.element(item.id, place, ["say"]),
          "SW-C08",
          "info",
          `most responses of '${element.id}' state a number (${named}) that nothing compares`,
          "Write {quantity} in its place and give the element a quantity with value and unit, so that a wrong number is incorrect.",
        ),
      );
    });
  }
  return findings;
}
