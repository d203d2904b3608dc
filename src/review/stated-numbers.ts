import { findQuantities } from "../language/quantity.ts";
import { tokenise } from "../language/token.ts";
import type { Readings } from "./readings.ts";
import type { SaidElement } from "./utterances.ts";

/** Elements without a quantity of which most responses state a number. */
export function statedNumbers(elements: readonly SaidElement[]): Readings["numbers"] {
  return elements.flatMap(({ element, said }, place) => {
    if (element.quantity !== undefined) return [];
    const stating: string[] = [];
    for (const [tried, variants] of said.entries()) {
      // One wording among many that happens to count is no dose; most of them are. What is left cannot make it most any more.
      if (stating.length + said.length - tried <= said.length / 2) return [];
      const number = numberIn(variants[0] ?? "");
      if (number !== null) stating.push(number);
    }
    return stating.length <= said.length / 2 ? [] : [{ element: place, first: stating[0]!, responses: stating.length }];
  });
}

/** "Every day" says that something is a habit; it is no number to check. */
const HABIT = /^(every|each) (single )?(day|night|morning|evening|time)$|^daily$/;

/** The first number with a unit that a sentence states. */
function numberIn(said: string): string | null {
  return findQuantities(tokenise(said.split(" "))).find(({ unit, vague, firm, text }) => unit !== null && unit !== "number" && firm && !vague && !HABIT.test(text))?.text ?? null;
}
