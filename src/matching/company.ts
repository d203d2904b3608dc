import type { CompiledElement } from "./compile.ts";
import type { Passage } from "./passages.ts";
import { firstFrom } from "./postings.ts";
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

/** Passages of a stream on which no gate closes, so that those around one are found without asking all. */
export class Fitting {
  /** In the order of their first tokens. */
  private readonly inOrder: readonly Passage[];
  private readonly byElement = new Map<CompiledElement, Passage[]>();

  constructor(passages: readonly Passage[]) {
    this.inOrder = [...passages].sort((a, b) => a.first - b.first);
    for (const passage of passages) {
      const others = this.byElement.get(passage.element);
      if (others === undefined) this.byElement.set(passage.element, [passage]);
      else others.push(passage);
    }
  }

  get all(): readonly Passage[] {
    return this.inOrder;
  }

  of(element: CompiledElement): readonly Passage[] {
    return this.byElement.get(element) ?? [];
  }

  /** Place in `all` of the first passage that is still around one that starts at this token. */
  firstAround(token: number): number {
    return firstFrom(this.inOrder, token - AROUND + 1);
  }
}

/** @param worth of a passage as a witness of what is spoken of, 0 to 1. */
export function companyOf(passage: Passage, fitting: Fitting, items: Items, worth: (passage: Passage) => number): Company {
  const { element, first, end } = passage;
  const { place } = items.get(element.item)!;
  const company: Company = { own: 0, ownItem: 0, nextItem: 0, otherItem: 0, farOff: 0, farAround: 0, sharing: 0, better: 0 };
  const mine = worth(passage);
  for (const other of fitting.of(element)) {
    const weight = worth(other);
    company.own += weight;
    if (weight > mine) company.better = 1;
  }
  let nearWeight = 0;
  let aroundWeight = 0;
  const { all } = fitting;
  for (let k = fitting.firstAround(first); k < all.length && all[k]!.first < first + AROUND; k += 1) {
    const other = all[k]!;
    if (other.element === element) continue;
    const weight = worth(other);
    const overlaps = other.first < end && first < other.end;
    if (overlaps && weight > company.sharing) company.sharing = weight;
    const apart = Math.abs(other.first - first);
    const ownItem = other.element.item === element.item;
    if (!overlaps && !ownItem) {
      const between = Math.abs(items.get(other.element.item)!.place - place);
      const off = between / items.size;
      aroundWeight += weight;
      company.farAround += weight * off;
      if (apart < NEAR) {
        nearWeight += weight;
        company.farOff += weight * off;
        if (weight > company.otherItem) company.otherItem = weight;
        if (weight > company.nextItem && between <= NEXT) company.nextItem = weight;
      }
    }
    if (ownItem && apart < NEAR && weight > company.ownItem) company.ownItem = weight;
  }
  if (nearWeight > 0) company.farOff /= nearWeight;
  if (aroundWeight > 0) company.farAround /= aroundWeight;
  return company;
}

/** Tokens on either side that are right beside a passage. */
const BESIDE = 20;

/** How likely what is said around a passage is said: the most likely passage of each kind, 0 where there is none. */
export interface Around {
  /** Of its item, near by and in other words. */
  ownItem: number;
  /** Of items next to it in the rubric, near by. */
  nextItem: number;
  /** Of items further off, right beside it. */
  farItem: number;
  /** Of other elements, in some of its words. */
  sharing: number;
  /** Of its element, in some of its words, and elsewhere. */
  own: number;
  elsewhere: number;
}

export function aroundPassage(passage: Passage, fitting: Fitting, items: Items, likelihood: (passage: Passage) => number): Around {
  const { element, first, end } = passage;
  const { place } = items.get(element.item)!;
  const around: Around = { ownItem: 0, nextItem: 0, farItem: 0, sharing: 0, own: 0, elsewhere: 0 };
  const most = (kind: keyof Around, value: number) => {
    if (value > around[kind]) around[kind] = value;
  };
  const overlaps = (other: Passage) => other.first < end && first < other.end;
  for (const other of fitting.of(element)) most(overlaps(other) ? "own" : "elsewhere", likelihood(other));
  const { all } = fitting;
  for (let k = fitting.firstAround(first); k < all.length && all[k]!.first < first + AROUND; k += 1) {
    const other = all[k]!;
    const likely = likelihood(other);
    if (other.element !== element && overlaps(other)) most("sharing", likely);
    const apart = Math.abs(other.first - first);
    if (other.element.item === element.item) {
      if (apart < NEAR && !overlaps(other)) most("ownItem", likely);
    } else if (Math.abs(items.get(other.element.item)!.place - place) <= NEXT) {
      if (apart < NEAR) most("nextItem", likely);
    } else if (apart < BESIDE) most("farItem", likely);
  }
  return around;
}

/** How many tokens are near the passage, its own not counted: with few, what is near by tells nothing. */
export function isAlone({ first, end }: Pick<Passage, "first" | "end">, { tokens }: Stream): boolean {
  return Math.min(tokens.length, end + NEAR) - Math.max(0, first - NEAR) - (end - first) <= LEAST_AROUND;
}
