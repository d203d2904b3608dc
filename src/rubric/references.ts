import type { Finding } from "../problem/problem.ts";
import { duplicates } from "./duplicates.ts";
import { checkNumberPlaces } from "./number-places.ts";
import { itemsOf } from "./items.ts";
import { findingIn, type Place, type RubricPlaces } from "./places.ts";
import { didYouMean, nearOrAll } from "../problem/nearest.ts";
import { NO_SOURCE } from "./fields.ts";
import type { Fact, Quantity, Rubric } from "./schema.ts";

type Loaded = Omit<Rubric, "hash">;

/**
 * Finds ids that stand twice, names that lead nowhere and numbers that nothing compares: faults that would make a mark
 * wrong without a word.
 * @returns findings, none when all is well.
 */
export function checkReferences(rubric: Loaded, places: RubricPlaces): Finding[] {
  return [...duplicates(rubric, places), ...dangling(rubric, places), ...checkNumberPlaces(rubric, places), ...passRule(rubric, places)];
}

function dangling(rubric: Loaded, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const items = itemsOf(rubric);
  const itemIds = new Set(items.map((item) => item.id));
  const anItem = (typed: string) => nearOrAll(typed, [...itemIds], "Name an item's id. The items are");
  const report = (place: Place, message: string, mend: string) => findings.push(findingIn(place, { code: "SW-R05", severity: "error", message, mend }));
  rubric.order.forEach((pair, index) => {
    for (const side of ["first", "then"] as const) {
      if (!itemIds.has(pair[side])) report(places.top(["order", index, side]), `the order pair names '${pair[side]}', which is no item`, anItem(pair[side]));
    }
  });
  rubric.scenario.questions.forEach((question, index) => {
    const at = ["scenario", "questions", index];
    question.answered_by?.forEach((target, place) => {
      if (!itemIds.has(target)) report(places.top([...at, "answered_by", place]), `the question is answered by '${target}', which is no item`, anItem(target));
    });
    if (question.answered_by === undefined && question.answer === undefined) report(places.top(at), "the question has neither 'answered_by' nor 'answer'", "Name the items that answer it with 'answered_by: [ID]', or write what answers it under 'answer'.");
  });
  const source = (fact: Fact | undefined, place: (path: PropertyKey[]) => Place) => {
    if (fact === undefined || fact.source === NO_SOURCE || Object.hasOwn(rubric.sources, fact.source)) return;
    report(place(["fact", "source"]), `the source '${fact.source}' is not among 'sources'`, `${didYouMean(fact.source, [...Object.keys(rubric.sources), NO_SOURCE])}Add it there, or write '${NO_SOURCE}'.`);
  };
  const labels = Object.entries(rubric.scenario.label).flatMap(([name, { quantity }]) => (quantity === undefined ? [] : [name]));
  const label = (quantity: Quantity | undefined, place: (path: PropertyKey[]) => Place) => {
    if (quantity === undefined || !("label" in quantity) || labels.includes(quantity.label)) return;
    report(place(["quantity", "label"]), `the label has no quantity '${quantity.label}'`, labels.length === 0 ? "Add it under scenario.label." : `${didYouMean(quantity.label, labels)}Add it under scenario.label, or name one of: ${labels.join(", ")}.`);
  };
  for (const item of items) {
    source(item.fact, (path) => places.item(item.id, path));
    item.elements.forEach((element, index) => {
      const place = (path: PropertyKey[]) => places.element(item.id, index, path);
      source(element.fact, place);
      label(element.quantity, place);
      element.elsewhere?.forEach(({ quantity }, at) => label(quantity, (path) => place(["elsewhere", at, ...path])));
    });
  }
  const elements = items.flatMap((item) => item.elements.map((element) => `${item.id}/${element.id}`));
  rubric.unsafe.forEach(({ id, fact, quantity, wrong_of: wrongOf, contradicts }, index) => {
    const place = (path: PropertyKey[]) => places.unsafe(index, path);
    source(fact, place);
    label(quantity, place);
    const named = (field: "wrong_of" | "contradicts", keys: readonly string[] | undefined, does: string) =>
      keys?.forEach((key, at) => {
        if (!elements.includes(key)) report(place([field, at]), `the unsafe statement '${id}' ${does} '${key}', which is no element`, `${didYouMean(key, elements)}Name an element as ITEM/ELEMENT.`);
      });
    named("wrong_of", wrongOf, "takes the wrong statements of");
    named("contradicts", contradicts, "contradicts");
  });
  for (const [name, { quantity }] of Object.entries(rubric.scenario.label)) {
    if (quantity !== undefined && "label" in quantity) report(places.top(["scenario", "label", name, "quantity"]), `'${name}' of the label takes its number from the label`, "Write its value and unit here.");
  }
  return findings;
}

/** More critical items than there are can never be met; a share of the total written as a fraction passes everybody. */
function passRule({ sections, pass }: Loaded, places: RubricPlaces): Finding[] {
  if (pass.minimum > 0 && pass.minimum < 1) return [findingIn(places.top(["pass", "minimum"]), { code: "SW-R03", severity: "error", message: `pass.minimum: ${pass.minimum} is less than one per cent`, mend: `It is per cent of the total: write ${Math.round(100 * pass.minimum)} for ${Math.round(100 * pass.minimum)}%, or 0 for none.` })];
  const critical = itemsOf({ sections }).filter((item) => item.critical).length;
  if (pass.critical === "all" || pass.critical <= critical) return [];
  return [findingIn(places.top(["pass", "critical"]), { code: "SW-R03", severity: "error", message: `pass.critical: ${pass.critical} critical items must be met, but the rubric has ${critical === 0 ? "none" : `only ${critical}`}`, mend: "Lower the number, write 'all', or mark more items as critical." })];
}
