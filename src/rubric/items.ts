import type { Element, Item, Rubric, Section } from "./schema.ts";

/** All items, in the order of the sections. */
export function itemsOf({ sections }: { sections: readonly Pick<Section, "items">[] }): Item[] {
  return sections.flatMap(({ items }) => items);
}

/** All elements, in the order of their items. `place`: which of the item's own, from 0. */
export function elementsOf(rubric: { sections: readonly Pick<Section, "items">[] }): { item: Item; element: Element; place: number }[] {
  return itemsOf(rubric).flatMap((item) => item.elements.map((element, place) => ({ item, element, place })));
}

/** How many elements make the item complete. */
export function elementsNeeded({ needs, elements }: Item): number {
  return needs === "all" ? elements.length : needs;
}

/** Whether every condition of the item holds in the scenario; "not child" holds where "child" is none of its conditions. */
export function applies({ when = [] }: Item, { conditions }: Pick<Rubric["scenario"], "conditions">): boolean {
  return when.every((condition) => (condition.startsWith("not ") ? !conditions.includes(condition.slice("not ".length)) : conditions.includes(condition)));
}
