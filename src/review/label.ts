import { compareQuantity } from "../language/quantity-compare.ts";
import { findQuantities } from "../language/quantity.ts";
import { tokenise } from "../language/token.ts";
import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { quantityWords } from "../rubric/quantity-words.ts";
import { findingAt } from "./finding.ts";

/** Entries of the supplied label whose words state numbers, and none of them the one that is compared: a slip in either makes right speech wrong. */
export function checkLabel({ rubric, places }: PlacedRubric): Finding[] {
  return Object.entries(rubric.scenario.label).flatMap(([name, { text, quantity }]) => {
    if (quantity === undefined || "label" in quantity) return [];
    const numbers = findQuantities(tokenise(text.split(/\s+/)));
    if (numbers.length === 0 || numbers.some((number) => compareQuantity(number, quantity) === "right")) return [];
    const said = numbers.map((number) => `'${number.text}'`).join(", ");
    return [findingAt(places.top(["scenario", "label", name, "quantity"]), "SW-C29", "warning", `the label's '${name}' reads ${said}, and its quantity is ${quantityWords(quantity)}`)];
  });
}
