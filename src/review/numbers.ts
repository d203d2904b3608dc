import { findQuantities } from "../language/quantity.ts";
import { tokenise } from "../language/token.ts";
import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { itemsOf } from "./facts.ts";
import { findingAt } from "./finding.ts";
import { expectedQuantity, utterancesOf } from "./utterances.ts";

/** Numbers without a unit, and numbers in responses that nothing compares: the matcher would take any other in their place. */
export function checkNumbers({ rubric, places }: PlacedRubric): Finding[] {
  const findings: Finding[] = [];
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, place) => {
      if (expectedQuantity(element.quantity, rubric)?.unit === "number" && element.must === undefined) {
        findings.push(
          findingAt(places.element(item.id, place, ["quantity"]), "SW-C08", "warning", `the quantity of '${element.id}' has no unit, only 'number'`, "Name the unit, or give the element must-words: 'number' takes any number of anything for right."),
        );
      }
      if (element.quantity !== undefined) return;
      const stating = element.say.map((phrase) => numberIn(phrase)).filter((text) => text !== null);
      // One wording among many that happens to count is no dose; most of them are.
      if (stating.length <= element.say.length / 2) return;
      const named = `'${stating[0]}'${stating.length > 1 ? ` and ${stating.length - 1} more` : ""}`;
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

/** "Every day" says that something is a habit; it is no number to check. */
const HABIT = /^(every|each) (single )?(day|night|morning|evening|time)$|^daily$/;

/** The first number with a unit that a phrase states. */
function numberIn(phrase: string): string | null {
  const words = utterancesOf(phrase, null)[0]?.split(" ") ?? [];
  return findQuantities(tokenise(words)).find(({ unit, vague, firm, text }) => unit !== null && unit !== "number" && firm && !vague && !HABIT.test(text))?.text ?? null;
}
