import type { Finding } from "../problem/problem.ts";
import { elementsNeeded, itemsOf } from "../rubric/items.ts";
import { overlap } from "../rubric/jurisdictions.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { Place } from "../rubric/places.ts";
import { NO_SOURCE } from "../rubric/fields.ts";
import type { Fact, Item } from "../rubric/schema.ts";
import { findingAt } from "./finding.ts";

/** So many days before its date a fact is told about: time to look it up and to have the change read by somebody. */
const NOTICE_DAYS = 60;
const DAY_MILLISECONDS = 86_400_000;

/** Facts past or near the day by which somebody must look at them again. @param today as 2027-06-30 */
export function checkReviewDates(placed: PlacedRubric, today: string): Finding[] {
  return ofFacts(placed, "review_by", (fact, what, place) => {
    const days = Math.round((Date.parse(fact.review_by) - Date.parse(today)) / DAY_MILLISECONDS);
    if (days >= NOTICE_DAYS) return [];
    const past = days < 0;
    return [
      findingAt(
        place(),
        "SW-C11",
        past ? "warning" : "info",
        past ? `the fact of ${what} had to be reviewed by ${fact.review_by}` : `the fact of ${what} is to be reviewed by ${fact.review_by}, in ${days === 1 ? "1 day" : `${days} days`}`,
        `Compare it with the latest edition of '${fact.source}', correct what has changed, and set a new review_by.`,
      ),
    ];
  });
}

/** Facts that hold in other countries than the rubric's alone: what is right there belongs under 'elsewhere'. */
export function checkJurisdictions(placed: PlacedRubric): Finding[] {
  const { jurisdiction: own } = placed.rubric;
  return ofFacts(placed, "jurisdiction", ({ jurisdiction }, what, place) => {
    if (jurisdiction.some((code) => own.some((one) => overlap(one, code)))) return [];
    return [findingAt(place(), "SW-C30", "warning", `the fact of ${what} holds in ${jurisdiction.join(", ")}, and the rubric follows ${own.join(", ")}`)];
  });
}

/** What a check tells of every fact of the rubric. @param field of the fact whose line is told. */
export function ofFacts<Told>({ rubric, places }: PlacedRubric, field: keyof Fact, check: (fact: Fact, what: string, place: () => Place) => Told[]): Told[] {
  const of = (fact: Fact | undefined, what: string, place: () => Place) => (fact === undefined ? [] : check(fact, what, place));
  return [
    ...itemsOf(rubric).flatMap((item) => [
      ...of(item.fact, `'${item.id}'`, () => places.item(item.id, ["fact", field])),
      ...item.elements.flatMap((element, place) => of(element.fact, `'${item.id}', '${element.id}'`, () => places.element(item.id, place, ["fact", field]))),
    ]),
    ...rubric.unsafe.flatMap((statement, index) => of(statement.fact, `the unsafe statement '${statement.id}'`, () => places.unsafe(index, ["fact", field]))),
  ];
}

/** Critical items decide the result, so each must say on whose word, and how much of it is the least. */
export function checkCritical({ rubric, places }: PlacedRubric): Finding[] {
  return itemsOf(rubric)
    .filter(({ critical }) => critical)
    .flatMap((item) => {
      const findings: Finding[] = [];
      // Made critical by an override, it is the override that asks for more.
      const critical = () => places.item(item.id, [places.overrides(item.id, "critical") ? "critical" : "id"]);
      const sources = item.elements.map((element) => (element.fact ?? item.fact)?.source);
      if (sources.some((source) => source === undefined)) {
        findings.push(findingAt(critical(), "SW-C09", "error", `the critical item '${item.id}' has an element without a source`, "Give the item or each of its elements a fact with a source, jurisdiction and review_by."));
      } else if (standing(item, sources) < (item.minimum ?? elementsNeeded(item))) {
        findings.push(findingAt(places.item(item.id, ["fact"]), "SW-C09", "warning", `the critical item '${item.id}' rests on '${NO_SOURCE}'`, "Find a published source for it, or let the item not be critical."));
      }
      if (item.elements.length > 1 && item.minimum === undefined) {
        findings.push(findingAt(critical(), "SW-C10", "warning", `the critical item '${item.id}' has ${item.elements.length} elements and no minimum`, "Say with 'minimum' how many of them are the least that is safe."));
      }
      return findings;
    });
}

/** Elements that stand on a published source, or on the number of the supplied label, which goes before all others. */
function standing({ elements }: Item, sources: readonly (string | undefined)[]): number {
  return elements.filter(({ quantity }, place) => sources[place] !== NO_SOURCE || (quantity !== undefined && "label" in quantity)).length;
}
