import { itemsOf } from "../rubric/items.ts";
import type { Element, Item, Rubric } from "../rubric/schema.ts";

/** What of a rubric an edit can touch. */
export type PartKind = "rubric" | "scenario" | "label" | "question" | "time" | "pass" | "section" | "item" | "element" | "order" | "unsafe";

/** A part of a rubric that keeps its name while what it says is edited. */
export interface Part {
  kind: PartKind;
  /** The id; `item/element` of an element, `first > then` of an order pair, empty where there is only one. */
  id: string;
  fields: Readonly<Record<string, unknown>>;
}

/** Fields that people read and that no mark depends on. */
const WORDS: Partial<Record<PartKind, readonly string[]>> = {
  rubric: ["title", "version", "jurisdiction", "sources", "history"],
  scenario: ["task", "setting"],
  label: ["text"],
  section: ["title"],
  item: ["label", "fact", "advice", "section"],
  element: ["label", "fact", "examples"],
  order: ["reason"],
  unsafe: ["label", "fact", "examples"],
};

/** Whether a field is only read by people. */
export function isWording(kind: PartKind, field: string): boolean {
  return WORDS[kind]?.includes(field) === true;
}

/** Everything in a rubric, by part; two parts with the same kind and id are the same part of two versions. */
export function partsOf(rubric: Rubric): Part[] {
  const { scenario, time, pass, sections } = rubric;
  const parts: Part[] = [
    { kind: "rubric", id: "", fields: { title: rubric.title, version: rubric.version, jurisdiction: rubric.jurisdiction, sources: rubric.sources, history: rubric.history } },
    { kind: "scenario", id: "", fields: { task: scenario.task, setting: scenario.setting, counselled: scenario.counselled, conditions: scenario.conditions } },
    { kind: "time", id: "", fields: { ...time } },
    { kind: "pass", id: "", fields: { ...pass } },
  ];
  for (const [id, fields] of Object.entries(scenario.label)) parts.push({ kind: "label", id, fields });
  for (const { id, ...fields } of scenario.questions) parts.push({ kind: "question", id, fields });
  for (const section of sections) {
    parts.push({ kind: "section", id: section.id, fields: { title: section.title, items: section.items.map(({ id }) => id) } });
    for (const item of section.items) {
      parts.push({ kind: "item", id: item.id, fields: itemFields(item, section.id) });
      for (const { id, ...fields } of item.elements) parts.push({ kind: "element", id: `${item.id}/${id}`, fields });
    }
  }
  for (const { first, then, ...fields } of rubric.order) parts.push({ kind: "order", id: `${first} > ${then}`, fields });
  for (const { id, ...fields } of rubric.unsafe) parts.push({ kind: "unsafe", id, fields });
  return parts;
}

function itemFields({ id: _id, elements: _elements, ...fields }: Item, section: string): Record<string, unknown> {
  return { ...fields, section };
}

/** @returns undefined when the rubric has no such item */
export function itemOf(rubric: Rubric, id: string): Item | undefined {
  return itemsOf(rubric).find((item) => item.id === id);
}

export function elementOf(item: Item | undefined, id: string): Element | undefined {
  return item?.elements.find((element) => element.id === id);
}
