import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "../rubric/items.ts";
import type { PlacedRubric } from "../rubric/load.ts";
import type { RubricPlaces, Place } from "../rubric/places.ts";
import type { Rubric } from "../rubric/schema.ts";
import { findingAt } from "./finding.ts";

/** A passage that must or must not earn something. */
export interface Example {
  text: string;
  must: "earns" | "misses";
  of: { item: string; element: string } | { statement: string };
  place: (places: RubricPlaces) => Place;
}

/** The rubric's examples: those of its elements, then those of its unsafe statements. */
export function examplesOf(rubric: Rubric): Example[] {
  const found: Example[] = [];
  const add = (examples: Partial<Record<Example["must"], readonly string[]>> | undefined, of: Example["of"], place: (places: RubricPlaces, path: PropertyKey[]) => Place) => {
    for (const must of ["earns", "misses"] as const) {
      examples?.[must]?.forEach((text, index) => found.push({ text, must, of, place: (places) => place(places, ["examples", must, index]) }));
    }
  };
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, index) => add(element.examples, { item: item.id, element: element.id }, (places, path) => places.element(item.id, index, path)));
  }
  rubric.unsafe.forEach((statement, index) => add(statement.examples, { statement: statement.id }, (places, path) => places.unsafe(index, path)));
  return found;
}

/** @param failed which of `examplesOf` do not hold, from 0. */
export function checkExamples({ rubric, places }: PlacedRubric, failed: readonly number[]): Finding[] {
  const failing = new Set(failed);
  return examplesOf(rubric).flatMap(({ text, must, of, place }, number) => {
    if (!failing.has(number)) return [];
    const target = "item" in of ? `'${of.element}' of '${of.item}'` : `the unsafe statement '${of.statement}'`;
    return must === "earns"
      ? [findingAt(place(places), "SW-C07", "error", `the example '${text}' must earn ${target}, and does not`, "Add a response in words like these, or move the example to 'misses'.")]
      : [findingAt(place(places), "SW-C07", "error", `the example '${text}' must not earn ${target}, and does`, "Add a must-word or not_with that keeps it out, or move the example to 'earns'.")];
  });
}
