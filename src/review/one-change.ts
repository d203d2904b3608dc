import { itemsOf } from "../rubric/items.ts";
import type { Item, Rubric } from "../rubric/schema.ts";
import type { RubricChange } from "./changes.ts";
import { elementOf, itemOf } from "./parts.ts";

/**
 * The old rubric with one change of the new one made in it: marking with it shows what that change does by itself.
 * May be a rubric that the loader would refuse (a quantity that no phrase uses); it only serves to be marked with.
 */
export function withChange(before: Rubric, after: Rubric, change: RubricChange): Rubric {
  const rubric = structuredClone(before);
  const { kind, id, field } = change;
  const elementId = id.slice(id.indexOf("/") + 1);
  switch (kind) {
    case "item":
      if (field === null) wholeItem(rubric, after, id, change.what);
      else take(itemOf(rubric, id)!, itemOf(after, id)!, field);
      break;
    case "element": {
      const [item, source] = [itemOf(rubric, change.item!)!, itemOf(after, change.item!)!];
      if (field !== null) take(elementOf(item, elementId)!, elementOf(source, elementId)!, field);
      else item.elements = change.what === "added" ? [...item.elements, elementOf(source, elementId)!] : item.elements.filter((element) => element.id !== elementId);
      break;
    }
    case "section":
      if (field === "items") sortItems(rubric, after, id);
      break;
    case "label":
      if (field === null && change.what === "removed") delete rubric.scenario.label[id];
      else rubric.scenario.label[id] = after.scenario.label[id]!;
      break;
    case "question":
      rubric.scenario.questions = listWith(rubric.scenario.questions, after.scenario.questions, (entry) => entry.id === id, field);
      break;
    case "unsafe":
      rubric.unsafe = listWith(rubric.unsafe, after.unsafe, (entry) => entry.id === id, field);
      break;
    case "order":
      rubric.order = listWith(rubric.order, after.order, ({ first, then }) => `${first} > ${then}` === id, field);
      break;
    case "scenario":
    case "time":
    case "pass":
      take(rubric[kind], after[kind], field!);
      break;
    case "rubric":
      break;
  }
  return tidy(rubric, after);
}

/** Takes out names that lead nowhere now: a question or pair of the order may name an item that only one version has. */
function tidy(rubric: Rubric, after: Rubric): Rubric {
  const ids = new Set(itemsOf(rubric).map(({ id }) => id));
  rubric.order = rubric.order.filter(({ first, then }) => ids.has(first) && ids.has(then));
  rubric.scenario.questions = rubric.scenario.questions.map((question) => ({ ...question, ...(question.answered_by && { answered_by: question.answered_by.filter((id) => ids.has(id)) }) }));
  rubric.scenario.label = { ...after.scenario.label, ...rubric.scenario.label };
  rubric.sections = rubric.sections.filter(({ items }) => items.length > 0);
  return rubric;
}

function take(target: object, source: object, field: string): void {
  const value = (source as Record<string, unknown>)[field];
  if (value === undefined) delete (target as Record<string, unknown>)[field];
  else (target as Record<string, unknown>)[field] = value;
}

function wholeItem(rubric: Rubric, after: Rubric, id: string, what: RubricChange["what"]): void {
  if (what === "removed") {
    rubric.sections = rubric.sections.map((section) => ({ ...section, items: section.items.filter((item) => item.id !== id) }));
    return;
  }
  const home = after.sections.find(({ items }) => items.some((item) => item.id === id))!;
  const item: Item = itemOf(after, id)!;
  const there = rubric.sections.find((section) => section.id === home.id);
  if (there === undefined) rubric.sections.push({ ...home, items: [item] });
  else {
    // Where it stands in the new rubric: what is said near by is judged by the order of the items.
    const behind = new Set(home.items.slice(home.items.findIndex((other) => other.id === id) + 1).map((other) => other.id));
    const place = there.items.findIndex((other) => behind.has(other.id));
    there.items.splice(place < 0 ? there.items.length : place, 0, item);
  }
}

function sortItems(rubric: Rubric, after: Rubric, id: string): void {
  const order = after.sections.find((section) => section.id === id)!.items.map((item) => item.id);
  rubric.sections.find((section) => section.id === id)!.items.sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
}

/** One entry of a list added, removed, or with one field as in the new version. */
function listWith<T extends object>(list: readonly T[], after: readonly T[], is: (entry: T) => boolean, field: string | null): T[] {
  const fresh = after.find(is);
  if (fresh === undefined) return list.filter((entry) => !is(entry));
  if (!list.some(is)) return [...list, fresh];
  const changed = (entry: T) => {
    const copy = { ...entry };
    take(copy, fresh, field!);
    return copy;
  };
  return list.map((entry) => (is(entry) ? changed(entry) : entry));
}
