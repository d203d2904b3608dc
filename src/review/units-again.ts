import { unitCalled } from "../language/unit-words.ts";
import type { Unit } from "../language/units.ts";
import { readPhrase, type Slot } from "../matching/phrase.ts";

/** How often: "a day" and "times" are in the number already. */
const OFTEN = /^(times?|a|per|daily)$/;

/** The unit that a phrase says again behind `{quantity}`, which stands for number and unit; null where it does not. */
export function unitAgain(phrase: string, unit: Unit): string | null {
  for (const slots of readPhrase(phrase)) {
    for (const [place, slot] of slots.entries()) {
      if (slot !== "quantity") continue;
      const [next, after] = [wordsOf(slots[place + 1]), wordsOf(slots[place + 2])];
      const again = unit === "time-per-day" ? next.find((word) => OFTEN.test(word) && (!/^(a|per)$/.test(word) || after.includes("day"))) : next.find((word) => isUnit(word, unit));
      if (again !== undefined) return again;
    }
  }
  return null;
}

function wordsOf(slot: Slot | undefined): readonly string[] {
  return slot === undefined || typeof slot === "string" ? [] : slot.words;
}

/** "Degrees" is the unit as well where degrees Celsius are meant. */
function isUnit(word: string, unit: Unit): boolean {
  const called = unitCalled(word);
  return called !== null && (called === unit || unit.startsWith(`${called}-`));
}
