import type { CompiledRubric, CompiledStatement } from "./compile.ts";
import { mustHoldsInside, notWithHolds } from "./must-words.ts";
import type { Passage } from "./passages.ts";
import type { Postings } from "./postings.ts";
import { remembered } from "./remembered.ts";
import type { Stream } from "./stream.ts";
import type { UnsafeMatch } from "./types.ts";
import { othersNotWith, takenBack, unsafeMatch, UNSAFE_ACCEPTED } from "./unsafe.ts";

/*
 * "Never give antihistamine first" has its own element, and whoever states that wrongly has stated the unsafe thing,
 * in words that the element's wrong statements hold and the unsafe statement's need not repeat (`wrong_of`).
 */

/** Closer than the fit of a wrong statement: of drills, right sayings of another element fitted up to 0.84. With what the statement itself must name, its own measure will do. */
const CLOSE = 0.85;

/** By element the statements that its wrong statements amount to. */
const statementsOf = remembered((rubric: CompiledRubric): ReadonlyMap<string, readonly CompiledStatement[]> => {
  const by = new Map<string, CompiledStatement[]>();
  for (const statement of rubric.unsafe) for (const key of statement.wrongOf) by.set(key, [...(by.get(key) ?? []), statement]);
  return by;
});

/**
 * Unsafe statements that wrong statements of elements amount to, each told once.
 * @param kept passages that stand for their elements; a wrong number amounts to nothing here, and neither does the contrary of what is right.
 * @param told statements found in their own words.
 */
export function unsafeByWrong(rubric: CompiledRubric, kept: readonly Passage[], told: readonly UnsafeMatch[], postings: Postings, stream: Stream): UnsafeMatch[] {
  const found: UnsafeMatch[] = [];
  for (const { verdict, quantity, window, element } of kept) {
    if (verdict !== "wrong" || quantity !== undefined || !element.incorrect.includes(window.response)) continue;
    for (const amounted of statementsOf(rubric).get(`${element.item}/${element.element}`) ?? []) {
      const { statement, must } = amounted;
      if ([...told, ...found].some((other) => other.statement === statement)) continue;
      if (window.coverage < CLOSE && !(must.length > 0 && window.coverage >= UNSAFE_ACCEPTED && mustHoldsInside(must, postings, stream, window))) continue;
      if (!notWithHolds(othersNotWith(amounted, window.response), postings, stream, window)) continue;
      found.push(unsafeMatch(amounted, window, stream, takenBack(window, [], stream)));
    }
  }
  return found;
}
