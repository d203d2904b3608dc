import type { Finding } from "../problem/problem.ts";
import { elementsOf, itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import { findingAt } from "./finding.ts";
import { lightFinding } from "./light-phrases.ts";
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
          findings.push(findingAt(place, "SW-C04", "error", `'${unsafe.said}' is taken for the unsafe statement '${unsafe.statement}'`));
        }
      });
    });
    for (const [other, count] of takers) {
      if (count / itemResponses < INSEPARABLE) continue;
      findings.push(findingAt(places.item(item.id, ["id"]), "SW-C05", "warning", `'${item.id}' cannot be told from '${other}': ${count} of its ${itemResponses} responses earn that as well`));
    }
  }
  findings.push(...idleFindings(placed, readings));
  figures.share = figures.responses === 0 ? 0 : figures.confused / figures.responses;
  // Neighbours share words; so few as the bar allows are told and need no mending.
  findings.push(...confusion.map((entry) => confusionFinding(entry, figures.share > MOST_CONFUSED ? "warning" : "info")));
  if (figures.share > MOST_CONFUSED) {
    findings.push(findingAt(places.top(["id"]), "SW-C06", "warning", `${figures.confused} of ${figures.responses} acceptable responses (${(100 * figures.share).toFixed(1)}%) earn another item as well, more than ${100 * MOST_CONFUSED}%`, "Mend the responses that SW-C02 names; --confusion shows them in a table."));
  }
  return { findings, confusion, figures };
}

/** Phrases and must-words that do nothing, or that anybody's words do: of unsafe and wrong statements, and of the patient's questions. */
function idleFindings(placed: PlacedRubric, readings: Readings): Finding[] {
  const { rubric, places } = placed;
  const findings: Finding[] = [];
  const elements = elementsOf(rubric);
  for (const { statement, phrase, said, why, mend } of readings.unfound) {
    findings.push(findingAt(places.unsafe(statement, ["say", phrase]), "SW-C23", "warning", `'${said}' is not found for the unsafe statement '${rubric.unsafe[statement]!.id}': ${why}`, mend));
  }
  for (const { element: number, phrase, said, why, mend } of readings.untold) {
    const { item, element, place } = elements[number]!;
    findings.push(findingAt(places.element(item.id, place, ["incorrect", phrase]), "SW-C24", "warning", `'${said}', a wrong statement of '${element.id}' of '${item.id}', is not told when it is made: ${why}`, mend));
  }
  for (const { element: number, must } of readings.idle) {
    const { item, element, place } = elements[number]!;
    findings.push(findingAt(places.element(item.id, place, ["must", must]), "SW-C25", "warning", `no response of '${element.id}' has the must-word '${element.must![must]}', so it keeps nothing out`));
  }
  findings.push(...readings.light.map((light) => lightFinding(placed, light)));
  for (const { question: number, list, phrase, said, why, mend } of readings.questions) {
    const { id } = rubric.scenario.questions[number]!;
    const told = { says: `is not heard as the patient's question '${id}'`, answer: `does not answer the patient's question '${id}'`, incorrect: `is not told as a wrong reply to '${id}'` }[list];
    findings.push(findingAt(places.top(["scenario", "questions", number, list, phrase]), "SW-C28", "warning", `'${said}' ${told}: ${why}`, mend));
  }
  return findings;
}

function confusionFinding({ said, item, other, otherElement, effect, place }: Confusion, severity: "warning" | "info"): Finding {
  const target = other === otherElement ? `'${other}'` : `'${otherElement}' of '${other}'`;
  if (effect === "earns") {
    return findingAt(place, "SW-C02", severity, `'${said}', a response of '${item}', earns ${target} as well`, `Leave out what belongs to '${other}', or give that a must-word or not_with that keeps this out.`);
  }
  return findingAt(place, "SW-C03", "warning", `'${said}', a response of '${item}', counts as said wrongly for ${target}`, `Look at the denials and at 'incorrect' of '${other}': they take this in.`);
}
