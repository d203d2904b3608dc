import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Element, Item } from "../rubric/schema.ts";
import { findingAt } from "./finding.ts";
import type { Readings } from "./readings.ts";
import { bareResponse } from "./repeats.ts";
import type { Confusion, RubricFigures } from "./types.ts";

/** At most so many responses may earn another item of their rubric (issue 4). */
export const MOST_CONFUSED = 0.02;
/** When half of what may be said for one item earns another, the two are one to the listener. */
const INSEPARABLE = 0.5;
/** Fewer wordings than this catch only one person's way to say it (issue 4). */
const FEWEST_RESPONSES = 3;

export interface PhraseReview {
  findings: Finding[];
  confusion: Confusion[];
  figures: Pick<RubricFigures, "responses" | "utterances" | "unearned" | "confused" | "share">;
}

/** Tells what every acceptable response earns besides or instead of its own element, at the line where it stands. */
export function reviewPhrases(placed: PlacedRubric, readings: Readings): PhraseReview {
  const { rubric, places } = placed;
  const findings: Finding[] = [];
  const confusion: Confusion[] = [];
  const figures = { responses: 0, utterances: readings.utterances, unearned: 0, confused: 0, share: 0 };
  const notable = new Map(readings.responses.map((reading) => [reading.response, reading]));
  const elements = itemsOf(rubric).flatMap((item) => item.elements.map((element, place) => ({ item, element, place })));
  for (const item of itemsOf(rubric)) {
    let itemResponses = 0;
    const takers = new Map<string, number>();
    item.elements.forEach((element, elementPlace) => {
      const different = new Set(element.say.map(bareResponse)).size;
      if (different < FEWEST_RESPONSES) {
        findings.push(findingAt(places.element(item.id, elementPlace, ["say"]), "SW-C14", "info", `'${element.id}' has ${different === 1 ? "only one acceptable response" : `only ${different} acceptable responses`}`, `Add responses in other people's words, ${FEWEST_RESPONSES} at least.`));
      }
      element.say.forEach((response, responsePlace) => {
        const reading = notable.get(figures.responses);
        figures.responses += 1;
        itemResponses += 1;
        if (reading === undefined) return;
        const place = places.element(item.id, elementPlace, ["say", responsePlace]);
        const { missed, effects, unsafe } = reading;
        if (missed !== null) {
          figures.unearned += 1;
          findings.push(findingAt(place, "SW-C01", "warning", `'${missed.said}' does not earn '${element.id}' of '${item.id}': ${missed.why}`, missed.mend));
        }
        if (effects.some(({ effect }) => effect === "earns")) figures.confused += 1;
        for (const effect of effects) {
          if (effect.effect === "earns") takers.set(effect.other, (takers.get(effect.other) ?? 0) + 1);
          confusion.push({ item: item.id, element: element.id, response, ...effect, place });
        }
        if (unsafe !== null) {
          findings.push(findingAt(place, "SW-C04", "error", `'${unsafe.said}' is taken for the unsafe statement '${unsafe.statement}'`, "Change the response, or give the unsafe statement a must-word or not_with that keeps it out."));
        }
      });
    });
    for (const [other, count] of takers) {
      if (count / itemResponses < INSEPARABLE) continue;
      findings.push(findingAt(places.item(item.id, ["id"]), "SW-C05", "warning", `'${item.id}' cannot be told from '${other}': ${count} of its ${itemResponses} responses earn that as well`, "Make one item of the two, or give each a must-word of its own."));
    }
  }
  for (const { statement, phrase, said, why, mend } of readings.unfound) {
    findings.push(findingAt(places.unsafe(statement, ["say", phrase]), "SW-C23", "warning", `'${said}' is not found for the unsafe statement '${rubric.unsafe[statement]!.id}': ${why}`, mend));
  }
  for (const { element: number, phrase, said, why, mend } of readings.untold) {
    const { item, element, place } = elements[number]!;
    findings.push(findingAt(places.element(item.id, place, ["incorrect", phrase]), "SW-C24", "warning", `'${said}', a wrong statement of '${element.id}' of '${item.id}', is not told when it is made: ${why}`, mend));
  }
  for (const { element: number, must } of readings.idle) {
    const { item, element, place } = elements[number]!;
    findings.push(findingAt(places.element(item.id, place, ["must", must]), "SW-C25", "warning", `no response of '${element.id}' has the must-word '${element.must![must]}', so it keeps nothing out`, "Write a word that the responses have, or take it out."));
  }
  for (const { list, owner, phrase } of readings.light) findings.push(lightFinding(placed, elements, { list, owner, phrase }));
  for (const { question: number, list, phrase, said, why, mend } of readings.questions) {
    const { id } = rubric.scenario.questions[number]!;
    const told = { says: `is not heard as the patient's question '${id}'`, answer: `does not answer the patient's question '${id}'`, incorrect: `is not told as a wrong reply to '${id}'` }[list];
    findings.push(findingAt(places.top(["scenario", "questions", number, list, phrase]), "SW-C28", "warning", `'${said}' ${told}: ${why}`, mend));
  }
  figures.share = figures.responses === 0 ? 0 : figures.confused / figures.responses;
  // Neighbours share words; so few as the bar allows are told and need no mending.
  findings.push(...confusion.map((entry) => confusionFinding(entry, figures.share > MOST_CONFUSED ? "warning" : "info")));
  if (figures.share > MOST_CONFUSED) {
    findings.push(findingAt(places.top(["id"]), "SW-C06", "warning", `${figures.confused} of ${figures.responses} acceptable responses (${(100 * figures.share).toFixed(1)}%) earn another item as well, more than ${100 * MOST_CONFUSED}%`, "Mend the responses that SW-C02 names; --confusion shows them in a table."));
  }
  return { findings, confusion, figures };
}

/** A few small words: what they are there to tell is told of everybody. */
function lightFinding({ rubric, places }: PlacedRubric, elements: readonly { item: Item; element: Element; place: number }[], { list, owner, phrase }: Readings["light"][number]): Finding {
  const effect = { say: "earns", incorrect: "states wrongly", unsafe: "says", cue: "gives the cue of" }[list];
  const mend = list === "cue" ? "Say more in it." : "Say more in it, or give it a must-word that has to be said near it.";
  if (list === "cue") {
    const { id, cue } = itemsOf(rubric).filter((item) => item.cue !== undefined)[owner]!;
    return findingAt(places.item(id, ["cue", "patient", cue!.patient.indexOf(phrase)]), "SW-C26", "warning", `'${phrase}' is of words that everybody says: who says them in any sentence ${effect} '${id}'`, mend);
  }
  if (list === "unsafe") {
    const { id, say } = rubric.unsafe[owner]!;
    return findingAt(places.unsafe(owner, ["say", say.indexOf(phrase)]), "SW-C26", "warning", `'${phrase}' is of words that everybody says: who says them in any sentence ${effect} the unsafe statement '${id}'`, mend);
  }
  const { item, element, place } = elements[owner]!;
  return findingAt(places.element(item.id, place, [list, (element[list] ?? []).indexOf(phrase)]), "SW-C26", "warning", `'${phrase}' is of words that everybody says: who says them in any sentence ${effect} '${element.id}' of '${item.id}'`, mend);
}

function confusionFinding({ said, item, other, otherElement, effect, place }: Confusion, severity: "warning" | "info"): Finding {
  const target = other === otherElement ? `'${other}'` : `'${otherElement}' of '${other}'`;
  if (effect === "earns") {
    return findingAt(place, "SW-C02", severity, `'${said}', a response of '${item}', earns ${target} as well`, `Leave out what belongs to '${other}', or give that a must-word or not_with that keeps this out.`);
  }
  return findingAt(place, "SW-C03", "warning", `'${said}', a response of '${item}', counts as said wrongly for ${target}`, `Look at the denials and at 'incorrect' of '${other}': they take this in.`);
}
