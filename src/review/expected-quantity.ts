import type { ExpectedQuantity } from "../language/quantity.ts";
import type { Quantity, Rubric } from "../rubric/schema.ts";

/** The rubric's number; the scenario's label goes before it. */
export function expectedQuantity(quantity: Quantity | undefined, rubric: Rubric): ExpectedQuantity | null {
  if (quantity === undefined) return null;
  return "label" in quantity ? expectedQuantity(rubric.scenario.label[quantity.label]?.quantity, rubric) : quantity;
}
