import type { CompiledRubric } from "../matching/compile.ts";
import type { Passage } from "../matching/passages.ts";
import { UtteranceReader, type UtteranceReading } from "../matching/utterance.ts";
import type { Finding } from "../problem/problem.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import type { Element, Item } from "../rubric/schema.ts";
import { itemsOf } from "./facts.ts";
import { findingAt } from "./finding.ts";
import { applies } from "./length.ts";
import { whyNot } from "./reasons.ts";
import type { Confusion, RubricFigures } from "./types.ts";
import { expectedQuantity, utterancesOf } from "./utterances.ts";

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

/** Says every acceptable response to the matcher, each alone, and tells what it earns besides or instead of its own element. */
export function reviewPhrases(placed: PlacedRubric, compiled: CompiledRubric): PhraseReview {
  const { rubric, places } = placed;
  const reader = new UtteranceReader(compiled);
  const counted = new Set(itemsOf(rubric).filter((item) => applies(item, rubric)).map(({ id }) => id));
  const findings: Finding[] = [];
  const confusion: Confusion[] = [];
  const figures = { responses: 0, utterances: 0, unearned: 0, confused: 0, share: 0 };
  const readings = new Map<string, UtteranceReading>();
  const read = (said: string): UtteranceReading => {
    const known = readings.get(said) ?? reader.read(said);
    readings.set(said, known);
    return known;
  };
  for (const item of itemsOf(rubric)) {
    let itemResponses = 0;
    const takers = new Map<string, number>();
    item.elements.forEach((element, elementPlace) => {
      const quantity = expectedQuantity(element.quantity, rubric);
      if (element.say.length < FEWEST_RESPONSES) {
        findings.push(findingAt(places.element(item.id, elementPlace, ["say"]), "SW-C14", "info", `'${element.id}' has ${element.say.length === 1 ? "only one acceptable response" : `only ${element.say.length} acceptable responses`}`, `Add responses in other people's words, ${FEWEST_RESPONSES} at least.`));
      }
      element.say.forEach((response, responsePlace) => {
        const place = places.element.bind(places, item.id, elementPlace, ["say", responsePlace]);
        const said = utterancesOf(response, quantity);
        const variants = said.map((text) => ({ text, reading: read(text) }));
        figures.responses += 1;
        figures.utterances += said.length;
        itemResponses += 1;
        const missed = variants.find(({ reading }) => !earns(reading, item, element));
        if (missed !== undefined) {
          figures.unearned += 1;
          findings.push(unearned(missed, item, element, reader.lacksMust(missed.text, item.id, element.id), place()));
        }
        const effects = effectsOf(variants, item, counted);
        if (effects.some(({ effect }) => effect === "earns")) figures.confused += 1;
        for (const effect of effects) {
          if (effect.effect === "earns") takers.set(effect.other, (takers.get(effect.other) ?? 0) + 1);
          const entry: Confusion = { item: item.id, element: element.id, response, ...effect, place: place() };
          confusion.push(entry);
        }
        for (const { text, reading } of variants) {
          const [unsafe] = reading.unsafe;
          if (unsafe === undefined) continue;
          findings.push(findingAt(place(), "SW-C04", "error", `'${text}' is taken for the unsafe statement '${unsafe.statement}'`, "Change the response, or give the unsafe statement a must-word or not_with that keeps it out."));
          break;
        }
      });
    });
    for (const [other, count] of takers) {
      if (count / itemResponses < INSEPARABLE) continue;
      findings.push(findingAt(places.item(item.id, ["id"]), "SW-C05", "warning", `'${item.id}' cannot be told from '${other}': ${count} of its ${itemResponses} responses earn that as well`, "Make one item of the two, or give each a must-word of its own."));
    }
  }
  figures.share = figures.responses === 0 ? 0 : figures.confused / figures.responses;
  // Neighbours share words; so few as the bar allows are told and need no mending.
  findings.push(...confusion.map((entry) => confusionFinding(entry, figures.share > MOST_CONFUSED ? "warning" : "info")));
  if (figures.share > MOST_CONFUSED) {
    findings.push(findingAt(places.top(["id"]), "SW-C06", "warning", `${figures.confused} of ${figures.responses} acceptable responses (${(100 * figures.share).toFixed(1)}%) earn another item as well, more than ${100 * MOST_CONFUSED}%`, "Mend the responses that SW-C02 names; --confusion shows them in a table."));
  }
  return { findings, confusion, figures };
}

const isOf = (passage: Passage, item: Item, element: Element) => passage.element.item === item.id && passage.element.element === element.id;

export function earns({ kept }: UtteranceReading, item: Item, element: Element): boolean {
  return kept.some((passage) => passage.verdict === "right" && isOf(passage, item, element));
}

function unearned({ text, reading }: { text: string; reading: UtteranceReading }, item: Item, element: Element, lacksMust: boolean, place: Place): Finding {
  const { why, mend } = whyNot(reading, item, element, lacksMust);
  return findingAt(place, "SW-C01", "warning", `'${text}' does not earn '${element.id}' of '${item.id}': ${why}`, mend);
}

type Effect = Pick<Confusion, "said" | "other" | "otherElement" | "effect">;

/** What the variants do to other items, each other item and effect once. */
function effectsOf(variants: readonly { text: string; reading: UtteranceReading }[], item: Item, counted: ReadonlySet<string>): Effect[] {
  const effects = new Map<string, Effect>();
  for (const { text, reading } of variants) {
    for (const { element, verdict } of reading.kept) {
      if (element.item === item.id || !counted.has(element.item) || (verdict !== "right" && verdict !== "wrong")) continue;
      const effect = verdict === "right" ? "earns" : "contradicts";
      const key = `${element.item} ${effect}`;
      if (!effects.has(key)) effects.set(key, { said: text, other: element.item, otherElement: element.element, effect });
    }
  }
  return [...effects.values()];
}

function confusionFinding({ said, item, other, otherElement, effect, place }: Confusion, severity: "warning" | "info"): Finding {
  const target = other === otherElement ? `'${other}'` : `'${otherElement}' of '${other}'`;
  if (effect === "earns") {
    return findingAt(place, "SW-C02", severity, `'${said}', a response of '${item}', earns ${target} as well`, `Leave out what belongs to '${other}', or give that a must-word or not_with that keeps this out.`);
  }
  return findingAt(place, "SW-C03", "warning", `'${said}', a response of '${item}', counts as said wrongly for ${target}`, `Look at the denials and at 'incorrect' of '${other}': they take this in.`);
}
