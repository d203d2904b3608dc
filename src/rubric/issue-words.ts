import type { z } from "zod";
import { unitCalled } from "../language/unit-words.ts";
import { nearestBySlip } from "../problem/nearest.ts";
import type { Fault } from "../problem/problem.ts";
import { describedAt, fieldsAt, formsAt } from "./form.ts";
import { slugOf } from "./slug.ts";

export type Issue = z.core.$ZodIssue;

/**
 * An issue of zod's as a person who writes YAML would be told of it. What a refinement of ours tells brings its mend along.
 * @param value what stands there.
 * @param schema of the whole that the issue's way leads through.
 */
export function inWords(issue: Issue, value: unknown, schema: z.ZodType): Fault {
  const { message } = issue;
  switch (issue.code) {
    case "invalid_type":
      return wrongKind(issue, value, schema);
    case "invalid_value":
      return wrongValue(issue.values.map(String), value);
    case "too_small":
      if (issue.origin === "array" || issue.origin === "string") return { message, mend: issue.origin === "array" ? "Add one, or take the field out." : "Write words here." };
      return { message: `${String(value)} is too small`, mend: `Write a number ${issue.inclusive === false ? "above" : "of at least"} ${issue.minimum}.` };
    case "too_big":
      return { message: `${String(value)} is too large`, mend: `Write a number of at most ${issue.maximum}.` };
    case "invalid_format":
      if (issue.format !== "date") return { message, mend: idMend(String(value)) };
      return /^\d{4}-\d\d-\d\d$/.test(String(value)) ? { message: `there is no such day as ${String(value)}`, mend: "Write a day that the calendar has." } : { message, mend: "Write year, month and day, such as 2027-06-30." };
    case "invalid_key": {
      const key = String(issue.path.at(-1));
      return { message: `'${key}' cannot be a name here: names are lower case, words joined by hyphens`, mend: idMend(key) };
    }
    case "invalid_union":
      return noneOf(issue, value, schema);
    case "custom":
      return { message, mend: (issue.params?.["mend"] as string | undefined) ?? "Correct this field." };
    default:
      return { message, mend: "Correct this field." };
  }
}

function idMend(written: string): string {
  const id = slugOf(written);
  return id === null ? "Write it like 'missed-dose'." : `Write '${id}'.`;
}

function wrongKind(issue: Extract<Issue, { code: "invalid_type" }>, value: unknown, schema: z.ZodType): Fault {
  const { path, expected } = issue;
  const fields = fieldsAt(schema, path, value);
  if (value === undefined) {
    const name = String(path.at(-1));
    const purpose = describedAt(schema, path);
    return { message: "it is missing", mend: `Add '${name}:'${fields === null ? "" : ` with ${fields.needed.join(", ")}`}.${purpose === undefined ? "" : ` ${purpose}`}` };
  }
  const message = `${KINDS[expected] ?? expected} ${expected === "object" || expected === "record" ? "were" : "was"} expected, not ${typeof value === "string" ? `the text '${shortened(value)}'` : kindOf(value)}`;
  const mend = (text: string): Fault => ({ message, mend: text });
  switch (expected) {
    case "string":
      if (value === null) return mend("Write a text here, or take the line out.");
      if (Array.isArray(value)) return mend("Put the text in quotes where brackets make a list of it, or write each as an entry of its own.");
      if (typeof value === "object") return mend("Put the text in quotes: a ': ' in it, or a '? ' before it, makes fields of it.");
      return asText(String(value), path, schema) ?? mend("Put it in quotes.");
    case "array":
    case "tuple":
      return mend(value === null || typeof value === "object" ? "Write a list: one entry a line with '- ' in front." : `Write a list: [${shortened(String(value))}], or one entry a line with '- ' in front.`);
    case "object":
    case "record":
      if (fields !== null && Array.isArray(value) && fields.names.includes(String(path.at(-1)))) return mend(`Write a name between '${String(path.at(-2))}' and '${String(path.at(-1))}': that of the element, which of an item without 'elements' is the item's own.`);
      return mend(fields === null ? `Write 'name: value' here, one a line${entryWords(schema, path)}.` : `Write fields, 'name: value' one a line: ${(fields.needed.length > 0 ? fields.needed : fields.names).join(", ")}.`);
    case "number":
    case "int":
      return mend(typeof value === "string" && value.trim() !== "" && Number.isFinite(Number(value)) ? `Write ${Number(value)} without quotes.` : typeof value === "number" ? `Write a whole number, such as ${Math.round(value)}.` : "Write digits, such as 2.");
    case "boolean":
      return mend(/^(yes|y|on|1)$/i.test(String(value)) ? "Write true." : /^(no|n|off|0)$/i.test(String(value)) ? "Write false." : "Write true or false.");
    default:
      return mend(`Write ${KINDS[expected] ?? expected} here.`);
  }
}

/** What each entry has whose name is of one's own choice. */
function entryWords(schema: z.ZodType, path: readonly PropertyKey[]): string {
  const fields = fieldsAt(schema, [...path, "name"], undefined);
  return fields === null ? "" : `, each with a name of your own and ${fields.needed.join(", ")}`;
}

/** A number where a text must have a form of its own: quotes alone would not do. */
function asText(text: string, path: readonly PropertyKey[], schema: z.ZodType): Fault | null {
  const [form] = formsAt(schema, path);
  const parsed = form?.safeParse(text);
  if (parsed === undefined || parsed.success) return null;
  return inWords({ ...parsed.error.issues[0]!, path: [...path] }, text, schema);
}

/** So many values can be read at a glance. */
const FEW = 8;

function wrongValue(values: readonly string[], value: unknown): Fault {
  const all = values.length === 1 ? `Write '${values[0]}'` : `Choose one of: ${values.join(", ")}`;
  if (value === undefined) return { message: "it is missing", mend: values.length === 1 ? `Add '${values[0]}'.` : `Add it, one of: ${values.join(", ")}.` };
  if (typeof value === "object") return { message: `${kindOf(value)} cannot stand here`, mend: `${all}.` };
  const written = String(value);
  // Units are mostly known by another name, "mL" or "tablets".
  const unit = unitCalled(written);
  const near = unit !== null && values.includes(unit) ? unit : nearestBySlip(written, values);
  return { message: `'${written}' is none of the values that may stand here`, mend: near === undefined || values.length === 1 ? `${all}.` : `Did you mean '${near}'?${values.length > FEW ? "" : ` ${all}.`}` };
}

/** None of the kinds that may stand here. A union with a message of its own says how to write each. */
function noneOf(issue: Extract<Issue, { code: "invalid_union" }>, value: unknown, schema: z.ZodType): Fault {
  const fields = formsAt(schema, issue.path).flatMap((form) => fieldsAt(form, [], undefined)?.needed.join(" and ") ?? []);
  if (fields.length > 0) return { message: value === undefined ? "it is missing" : `${typeof value === "object" ? kindOf(value) : `'${String(value)}'`} cannot stand here`, mend: `Write fields, 'name: value': ${fields.join(", or ")}.` };
  const kinds = issue.errors.flat().flatMap((inner) => (inner.code === "invalid_type" ? [ONE[inner.expected] ?? inner.expected] : inner.code === "invalid_value" ? inner.values.map((text) => `'${String(text)}'`) : "origin" in inner && inner.origin === "array" ? [ONE["tuple"]!] : []));
  const mend = `Write ${[...new Set(kinds)].join(" or ") || "another value"}.`;
  if (value === undefined) return { message: "it is missing", mend };
  const own = issue.message === "Invalid input" ? null : issue.message;
  return { message: own === null ? `${typeof value === "object" ? kindOf(value) : `'${String(value)}'`} cannot stand here` : own, mend };
}

/** What zod expects, as a person who writes YAML calls it. */
const KINDS: Readonly<Record<string, string>> = { object: "fields ('name: value')", record: "fields ('name: value')", array: "a list", tuple: "a list", string: "a text", number: "a number", int: "a whole number", boolean: "true or false" };
/** The same where one of several may be chosen. */
const ONE: Readonly<Record<string, string>> = { ...KINDS, number: "a number such as 2", tuple: "a range such as [4, 6]", int: "a whole number such as 2" };

function kindOf(value: unknown): string {
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "fields";
  return typeof value === "string" ? "a text" : String(value);
}

/** So much of a text is quoted in a message. */
const SHOWN = 40;
const shortened = (text: string) => (text.length <= SHOWN ? text : `${text.slice(0, SHOWN)}...`);
