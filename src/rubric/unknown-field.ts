import type { z } from "zod";
import { nearest, nearestBySlip } from "../problem/nearest.ts";
import type { Fault } from "../problem/problem.ts";
import { fieldsAt, objectsOf } from "./form.ts";
import { itemSchema, rubricSchema } from "./schema.ts";

/**
 * What to tell of a field that the form does not have.
 * @param path of what has the field, and its value.
 * @returns with the name of the field that was meant, where one is near.
 */
export function unknownField(key: string, schema: z.ZodType, path: readonly PropertyKey[], value: unknown): { told: Fault; name?: string } {
  const message = `there is no field '${key}' here`;
  const written = value !== null && typeof value === "object" ? Object.keys(value) : [];
  const open = (fieldsAt(schema, path, value)?.names ?? []).filter((name) => !written.includes(name));
  // What has its place elsewhere is no slip of the pen.
  const owners = objectsOf(schema).filter(({ names }) => names.includes(key));
  if (owners.length > 0) return { told: { message, mend: `'${key}' belongs to ${[...new Set(owners.map(({ way }) => ownerWords(way)))].join(" or ")}: move it there, or take it out.` } };
  const name = nearest(key, open);
  // A block or responses file with what only a rubric has.
  const abroad = schema === rubricSchema || schema === itemSchema ? [] : objectsOf(rubricSchema).filter(({ names }) => names.includes(key));
  if (abroad.length > 0 && nearestBySlip(key, open) === undefined) return { told: { message, mend: `'${key}' belongs to ${[...new Set(abroad.map(({ way }) => (way.length === 0 ? "a rubric" : ownerWords(way))))].join(" or ")}: write it in the rubric, or take it out.` } };
  // "{ source: common practice, no source }": in braces a comma ends the text.
  if (/\s/.test(key) && (value as Record<string, unknown>)[key] === null) return { told: { message, mend: `Put a text that has a comma in it in quotes, as "..., ${key}": in braces a comma ends it.` } };
  if (name !== undefined) return { told: { message, mend: `Did you mean '${name}'?` }, name };
  if (key === "<<") return { told: { message, mend: "Write the fields out: merge keys are not read." } };
  return { told: { message, mend: open.length === 0 ? "Take it out." : `Take it out, or write one of: ${open.join(", ")}.` } };
}

/** By the name of what has the fields. */
const OWNERS: Readonly<Record<string, string>> = {
  "": "the top of the file",
  sections: "an entry of its own under 'sections'",
  items: "an item",
  elements: "an element",
  unsafe: "an unsafe statement",
  order: "a pair of 'order'",
  questions: "a question of 'scenario.questions'",
  label: "an entry of 'scenario.label'",
  sources: "an entry of 'sources'",
  corrections: "an entry of 'corrections'",
};

function ownerWords(way: readonly string[]): string {
  const name = way.at(-1) ?? "";
  return (way.join(".") === "pass.unsafe" ? undefined : OWNERS[name]) ?? `'${way.slice(way[0] === "scenario" || way[0] === "pass" ? 0 : -1).join(".")}'`;
}
