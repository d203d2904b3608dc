import type { CompiledElement } from "./compile.ts";
import type { Passage } from "./passages.ts";
import type { Stream } from "./stream.ts";

/** Tokens on either side that are near by. */
const NEAR = 40;
/** Tokens on either side that are still around. */
const AROUND = 120;
/** Items so few places apart are next to each other: who follows the rubric's order speaks of one beside the other. */
const NEXT = 2;
/** With fewer tokens around it, what is near by tells nothing. */
const LEAST_AROUND = 20;

/** Items of the rubric: how many elements each has, and its place. */
export type Items = ReadonlyMap<string, { elements: number; place: number }>;

export function itemsOf(elements: readonly CompiledElement[]): Items {
  const items = new Map<string, { elements: number; place: number }>();
  for (const { item } of elements) {
    const known = items.get(item);
    if (known === undefined) items.set(item, { elements: 1, place: items.size });
    else known.elements += 1;
  }
  return items;
}

/** What else is said in a passage's words and near them: the worth of the best passages of each kind. */
export interface Company {
  /** Passages of its element together, itself among them. */
  own: number;
  /** Of other elements of its item, near by. */
  ownItem: number;
  /** Of items that stand next to its own in the rubric, near by and in other words. */
  nextItem: number;
  /** Of other items, near by and in other words. */
  otherItem: number;
  /** Mean distance in the rubric, 0 to 1 of its items, of the items near by; and of those further around. Weighed by their worth. */
  farOff: number;
  farAround: number;
  /** Of other elements, in some of the same words. */
  sharing: number;
  /** 1 where another passage of its element is worth more, else 0. */
  better: number;
}

/**
 * @param fitting passages of the stream on which no gate closes.
 * @param worth of a passage as a witness of what is spoken of, 0 to 1.
 */
export function companyOf(passage: Passage, fitting: readonly Passage[], items: Items, worth: (passage: Passage) => number): Company {
  const { element, first, end } = passage;
  const { place } = items.get(element.item)!;
  const company: Company = { own: 0, ownItem: 0, nextItem: 0, otherItem: 0, farOff: 0, farAround: 0, sharing: 0, better: 0 };
  let nearWeight = 0;
  let aroundWeight = 0;
  const mine = worth(passage);
  for (const other of fitting) {
    const weight = worth(other);
    if (other.element === element) {
      company.own += weight;
      if (weight > mine) company.better = 1;
      continue;
    }
    const overlaps = other.first < end && first < other.end;
    if (overlaps && weight > company.sharing) company.sharing = weight;
    const apart = Math.abs(other.first - first);
    if (apart >= AROUND) continue;
    if (!overlaps && other.element.item !== element.item) {
      const off = Math.abs(items.get(other.element.item)!.place - place) / items.size;
      aroundWeight += weight;
      company.farAround += weight * off;
      if (apart < NEAR) {
        nearWeight += weight;
        company.farOff += weight * off;
      }
    }
    if (apart >= NEAR) continue;
    if (other.element.item === element.item) company.ownItem = Math.max(company.ownItem, weight);
    else if (!overlaps) {
      company.otherItem = Math.max(company.otherItem, weight);
      if (Math.abs(items.get(other.element.item)!.place - place) <= NEXT) company.nextItem = Math.max(company.nextItem, weight);
    }
  }
  if (nearWeight > 0) company.farOff /= nearWeight;
  if (aroundWeight > 0) company.farAround /= aroundWeight;
  return company;
}

/** How many tokens are near the passage, its own not counted: with few, what is near by tells nothing. */
export function isAlone({ first, end }: Passage, { tokens }: Stream): boolean {
  return Math.min(tokens.length, end + NEAR) - Math.max(0, first - NEAR) - (end - first) <= LEAST_AROUND;
}
