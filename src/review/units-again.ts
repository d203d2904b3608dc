import { unitCalled } from "../language/unit-words.ts";
import type { Unit } from "../language/units.ts";
import { readPhrase, type Slot } from "../matching/phrase.ts";
import type { Finding } from "../problem/problem.ts";
import { elementsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import type { Quantity } from "../rubric/schema.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import { findingAt } from "./finding.ts";
import { quantityInWords } from "./number-speech.ts";

/** `{quantity}` is said with its unit: what says the unit besides waits for "one tablet tablet". */
export function checkUnitsAgain({ rubric, places }: PlacedRubric): Finding[] {
  const check = (phrases: readonly string[] | undefined, quantity: Quantity | undefined, place: (index: number) => Place): Finding[] => {
    const expected = expectedQuantity(quantity, rubric);
    if (expected === null) return [];
    return (phrases ?? []).flatMap((phrase, index) => {
      const again = unitAgain(phrase, expected.unit);
      return again === null ? [] : [findingAt(place(index), "SW-C27", "warning", `'${phrase}' says the unit again: {quantity} stands for number and unit, here '${quantityInWords(expected)}'`, `Take '${again}' out.`)];
    });
  };
  return [
    ...elementsOf(rubric).flatMap(({ item, element, place: at }) => [
      ...(["say", "incorrect"] as const).flatMap((list) => check(element[list], element.quantity, (index) => places.element(item.id, at, [list, index]))),
      ...(element.elsewhere ?? []).flatMap(({ say, quantity }, other) => check(say, quantity ?? element.quantity, (index) => places.element(item.id, at, ["elsewhere", other, "say", index]))),
    ]),
    ...rubric.unsafe.flatMap(({ say, quantity }, at) => check(say, quantity, (index) => places.unsafe(at, ["say", index]))),
  ];
}

/** The words in which a phrase says the unit again behind `{quantity}`, as they are written; null where it does not. */
function unitAgain(phrase: string, unit: Unit): string | null {
  for (const slots of readPhrase(phrase)) {
    for (const [place, slot] of slots.entries()) {
      if (slot !== "quantity") continue;
      const behind = slots.slice(place + 1).map(wordsOf);
      const length = unit === "time-per-day" ? oftenLength(behind) : Number(behind[0]?.some((word) => isUnit(word, unit)) ?? false);
      if (length > 0) return behind.slice(0, length).map((words) => words.join("|")).join(" ");
    }
  }
  return null;
}

/** How many places at the start say how often besides: "times", "daily", "a day", "times a day". */
function oftenLength(places: readonly (readonly string[])[]): number {
  const has = (place: number, ...words: string[]) => words.some((word) => places[place]?.includes(word) === true);
  const times = has(0, "times", "time") ? 1 : 0;
  if (has(times, "daily")) return times + 1;
  return has(times, "a", "per") && has(times + 1, "day") ? times + 2 : times;
}

function wordsOf(slot: Slot): readonly string[] {
  return typeof slot === "string" ? [] : slot.words;
}

/** "Degrees" is the unit as well where degrees Celsius are meant. */
function isUnit(word: string, unit: Unit): boolean {
  const called = unitCalled(word);
  return called !== null && (called === unit || unit.startsWith(`${called}-`));
}
