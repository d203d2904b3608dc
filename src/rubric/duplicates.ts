import { CATALOGUE } from "../problem/catalogue.ts";
import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "./items.ts";
import { findingIn, type Place, type RubricPlaces } from "./places.ts";
import type { Rubric } from "./schema.ts";

/** Ids that stand twice, each told where it stands again. */
export function duplicates({ sections, unsafe, scenario }: Pick<Rubric, "sections" | "unsafe" | "scenario">, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const report = (what: string, id: string, place: Place) => findings.push(findingIn(place, { code: "SW-R06", severity: "error", message: `${what} '${id}' stands twice`, mend: CATALOGUE["SW-R06"].mend }));
  again(sections).forEach(({ id, index }) => report("the section", id, places.section(index)));
  const items = itemsOf({ sections });
  const seen = new Map<string, number>();
  for (const { id } of items) {
    const before = seen.get(id) ?? 0;
    seen.set(id, before + 1);
    if (before > 0) report("the item", id, places.occurrences(id)[before] ?? places.item(id, ["id"]));
  }
  for (const item of items) again(item.elements).forEach(({ id, index }) => report(`in '${item.id}', the element`, id, places.element(item.id, index, ["id"])));
  again(unsafe).forEach(({ id, index }) => report("the unsafe statement", id, places.unsafe(index, ["id"])));
  again(scenario.questions).forEach(({ id, index }) => report("the patient's question", id, places.top(["scenario", "questions", index, "id"])));
  return findings;
}

/** Where an id stands a second time, or more often. */
export function again(all: readonly { id: string }[]): { id: string; index: number }[] {
  const ids = all.map(({ id }) => id);
  return ids.flatMap((id, index) => (ids.indexOf(id) === index ? [] : [{ id, index }]));
}
