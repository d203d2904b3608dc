import type { CompiledRubric } from "../matching/compile.ts";
import type { Response } from "../matching/response.ts";
import type { Finding } from "../problem/problem.ts";
import { elementsOf, itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import { findingAt } from "./finding.ts";
import type { Readings } from "./readings.ts";

type LightPhrase = Readings["light"][number];

/** So few small words stand in any talk: "it is", "no", "do it again". */
const FEW_WORDS = 3;

/** Phrases of a few words too small to weigh, with no must-word: their exact run, which stands in any talk, is all they ask for. */
export function lightPhrases({ elements, unsafe, cues }: CompiledRubric): LightPhrase[] {
  const among = (list: LightPhrase["list"], owner: number, must: readonly unknown[], responses: readonly Response[]): LightPhrase[] =>
    must.length > 0 ? [] : [...new Set(responses.flatMap(({ text, literal, length }) => (literal && length <= FEW_WORDS ? [text] : [])))].map((phrase) => ({ list, owner, phrase }));
  return [
    ...elements.flatMap(({ must, say, incorrect }, owner) => [...among("say", owner, must, say), ...among("incorrect", owner, must, incorrect)]),
    ...unsafe.flatMap(({ must, say }, owner) => among("unsafe", owner, must, say)),
    ...cues.flatMap(({ says }, owner) => among("cue", owner, [], says)),
  ];
}

/** What a phrase of a few small words is there to tell is told of everybody. */
export function lightFinding({ rubric, places }: PlacedRubric, { list, owner, phrase }: LightPhrase): Finding {
  const tell = (place: Place, effect: string, mend?: string) => findingAt(place, "SW-C26", "warning", `'${phrase}' is of words that everybody says: who says them in any sentence ${effect}`, mend);
  if (list === "cue") {
    const { id, cue } = itemsOf(rubric).filter((item) => item.cue !== undefined)[owner]!;
    // A cue has no must-words.
    return tell(places.item(id, ["cue", "patient", cue!.patient.indexOf(phrase)]), `gives the cue of '${id}'`, "Say more in the phrase.");
  }
  if (list === "unsafe") {
    const { id, say } = rubric.unsafe[owner]!;
    return tell(places.unsafe(owner, ["say", say.indexOf(phrase)]), `says the unsafe statement '${id}'`);
  }
  const { item, element, place } = elementsOf(rubric)[owner]!;
  return tell(places.element(item.id, place, [list, (element[list] ?? []).indexOf(phrase)]), `${list === "say" ? "earns" : "states wrongly"} '${element.id}' of '${item.id}'`);
}
