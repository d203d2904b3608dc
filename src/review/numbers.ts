import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import { findingAt } from "./finding.ts";
import type { Readings } from "./readings.ts";

/** Numbers without a unit, and numbers in responses that nothing compares: the matcher would take any other in their place. */
export function checkNumbers({ rubric, places }: PlacedRubric, { numbers, written }: Pick<Readings, "numbers" | "written">): Finding[] {
  const findings: Finding[] = [];
  const stating = new Map(numbers.map((stated) => [stated.element, stated]));
  const writing = new Map(written.map(({ response, number }) => [response, number]));
  let number = 0;
  let response = 0;
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, place) => {
      if (expectedQuantity(element.quantity, rubric)?.unit === "number" && element.must === undefined) {
        findings.push(
          findingAt(places.element(item.id, place, ["quantity"]), "SW-C08", "warning", `the quantity of '${element.id}' has no unit, only 'number'`, "Name the unit, or give the element must-words: 'number' takes any number of anything for right."),
        );
      }
      element.say.forEach((phrase, index) => {
        const writtenOut = writing.get(response);
        response += 1;
        if (writtenOut === undefined) return;
        findings.push(
          findingAt(places.element(item.id, place, ["say", index]), "SW-C08", "warning", `'${phrase}' writes out '${writtenOut}', which the quantity of '${element.id}' does not compare there: any other number would earn it as well`, "Write {quantity} in place of number and unit."),
        );
      });
      const stated = stating.get(number);
      number += 1;
      if (stated === undefined) return;
      const named = `'${stated.first}'${stated.responses > 1 ? ` and ${stated.responses - 1} more` : ""}`;
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
