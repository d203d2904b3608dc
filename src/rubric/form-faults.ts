import type { z } from "zod";
import { unitCalled } from "../language/unit-words.ts";
import { nearest, nearestBySlip } from "../problem/nearest.ts";
import type { Finding } from "../problem/problem.ts";
import { describedAt, fieldsAt, formsAt, objectsOf } from "./form.ts";
import { itemSchema, rubricSchema } from "./schema.ts";
import type { PositionedYaml } from "./positioned-yaml.ts";

type Issue = z.core.$ZodIssue;

interface Told {
  message: string;
  mend: string;
}

/**
 * Turns zod's issues into findings with file, line, column and a way to mend each.
 * @param schema the form that was asked for, of the part that the issues are of.
 * @param at the way to that part.
 */
export function findingsOf(error: z.ZodError, yaml: PositionedYaml, schema: z.ZodType, at: readonly PropertyKey[] = []): Finding[] {
  if (yaml.data === null || yaml.data === undefined) {
    return [{ code: "SW-R03", severity: "error", file: yaml.file, line: 1, column: 1, message: "the file is empty", mend: "'saidwell rubric new' prints a rubric to start from." }];
  }
  const finding = (path: readonly PropertyKey[], place: readonly PropertyKey[], { message, mend }: Told): Finding => ({ code: "SW-R03", severity: "error", file: yaml.file, ...yaml.positionOf([...at, ...place]), message: `${placeWords([...at, ...path], yaml.data)}: ${lowerFirst(message)}`, mend });
  const issues = error.issues.flatMap((issue) => flatten(issue, valueAt(yaml.data, [...at, ...issue.path])));
  // A file of another form is that alone: what it has and has not follows from it.
  const form = issues.find((issue): issue is Extract<Issue, { code: "invalid_value" }> => issue.code === "invalid_value" && issue.path.join() === "saidwell" && at.length === 0);
  const claim = String(valueAt(yaml.data, ["saidwell"]));
  if (form !== undefined && FORM.test(claim) && !form.values.some((value) => String(value).split("@")[0] === claim.split("@")[0])) return [finding(form.path, form.path, { message: `this is '${claim}', and '${form.values.map(String).join()}' belongs here`, mend: `Name a file that starts with 'saidwell: ${form.values.map(String).join()}', or write that here if it is one.` })];
  const meant = new Set<string>();
  const strange = issues.flatMap((issue) => {
    if (issue.code !== "unrecognized_keys") return [];
    const value = valueAt(yaml.data, [...at, ...issue.path]);
    return issue.keys.map((key) => {
      const { told, name } = unknownField(key, schema, issue.path, value);
      if (name !== undefined) meant.add(JSON.stringify([...issue.path, name]));
      return finding(issue.path, [...issue.path, key], told);
    });
  });
  // A field whose name has a slip in it is not missing besides.
  const others = issues.filter((issue) => issue.code !== "unrecognized_keys" && !meant.has(JSON.stringify(issue.path)));
  return [...strange, ...others.map((issue) => finding(issue.path, issue.path, inWords(issue, valueAt(yaml.data, [...at, ...issue.path]), schema)))].sort((a, b) => a.line! - b.line! || a.column! - b.column!);
}

/** What the first line of one of our files says. */
const FORM = /^(rubric|block|responses|corrections)@\d+$/;

/** A union fails with the issues of every branch; the branch that knows most of what is written, or got furthest, is what the person meant. */
function flatten(issue: Issue, value: unknown): Issue[] {
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return [issue];
  const meant = [...issue.errors].sort((a, b) => strangers(a) - strangers(b) || depth(b) - depth(a))[0]!;
  if (depth(meant) === 0 && meant.every(({ code }) => code === "invalid_type" || code === "invalid_value")) return [issue];
  return meant.flatMap((inner) => flatten({ ...inner, path: [...issue.path, ...inner.path] }, valueAt(value, inner.path)));
}

function strangers(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => sum + (issue.code === "unrecognized_keys" && issue.path.length === 0 ? issue.keys.length : 0), 0);
}

function depth(issues: readonly Issue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length + (issue.code === "unrecognized_keys" ? 1 : 0)));
}

/** @returns with the name of the field that was meant, where one is near. */
function unknownField(key: string, schema: z.ZodType, path: readonly PropertyKey[], value: unknown): { told: Told; name?: string } {
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

/** What is wrong and how to mend it. What a refinement of ours tells brings its mend along. */
function inWords(issue: Issue, value: unknown, schema: z.ZodType): Told {
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
      if (issue.format !== "date") return { message, mend: `Write ${slugOf(value) === null ? "it like 'missed-dose'" : `'${slugOf(value)}'`}.` };
      return /^\d{4}-\d\d-\d\d$/.test(String(value)) ? { message: `there is no such day as ${String(value)}`, mend: "Write a day that the calendar has." } : { message, mend: "Write year, month and day, such as 2027-06-30." };
    case "invalid_key": {
      const key = String(issue.path.at(-1));
      return { message: `'${key}' cannot be a name here: names are lower case, words joined by hyphens`, mend: `Write ${slugOf(key) === null ? "it like 'missed-dose'" : `'${slugOf(key)}'`}.` };
    }
    case "invalid_union":
      return noneOf(issue, value, schema);
    case "custom":
      return { message, mend: (issue.params?.["mend"] as string | undefined) ?? "Correct this field." };
    default:
      return { message, mend: "Correct this field." };
  }
}

function wrongKind(issue: Extract<Issue, { code: "invalid_type" }>, value: unknown, schema: z.ZodType): Told {
  const { path, expected } = issue;
  const fields = fieldsAt(schema, path, value);
  if (value === undefined) {
    const name = String(path.at(-1));
    const purpose = describedAt(schema, path);
    return { message: "it is missing", mend: `Add '${name}:'${fields === null ? "" : ` with ${fields.needed.join(", ")}`}.${purpose === undefined ? "" : ` ${purpose}`}` };
  }
  const message = `${KINDS[expected] ?? expected} ${expected === "object" || expected === "record" ? "were" : "was"} expected, not ${typeof value === "string" ? `the text '${shortened(value)}'` : kindOf(value)}`;
  const mend = (text: string): Told => ({ message, mend: text });
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
function asText(text: string, path: readonly PropertyKey[], schema: z.ZodType): Told | null {
  const [form] = formsAt(schema, path);
  const parsed = form?.safeParse(text);
  if (parsed === undefined || parsed.success) return null;
  return inWords({ ...parsed.error.issues[0]!, path: [...path] }, text, schema);
}

/** So many values can be read at a glance. */
const FEW = 8;

function wrongValue(values: readonly string[], value: unknown): Told {
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
function noneOf(issue: Extract<Issue, { code: "invalid_union" }>, value: unknown, schema: z.ZodType): Told {
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

/** A name as ids are written; null where nothing of it can stay. */
function slugOf(value: unknown): string | null {
  const slug = String(value).normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^[^a-z]+|-+$/g, "");
  return slug === "" ? null : slug;
}

/** Lists whose entries have a name of their own. */
const ENTRIES: Readonly<Record<string, string>> = { sections: "section", items: "item", elements: "element", questions: "question", unsafe: "unsafe statement" };

/** The way to a place as a person would say it: "item 'dose', fact.review_by", "order, entry 1, severity". */
function placeWords(path: readonly PropertyKey[], data: unknown): string {
  const parts: string[] = [];
  let value = data;
  let open = false;
  for (const key of path) {
    value = valueAt(value, [key]);
    if (typeof key === "number") {
      const list = parts.at(-1) ?? "";
      const id = valueAt(value, ["id"]);
      const name = ENTRIES[list.split(".").at(-1)!];
      if (name !== undefined && typeof id === "string") {
        parts.pop();
        // An item's name says where it is: no need to say its section besides.
        if (name !== "element") parts.length = 0;
        parts.push(`${name} '${id}'`);
      } else parts.push(`entry ${key + 1}`);
      open = false;
    } else if (open) {
      parts[parts.length - 1] = `${parts.at(-1)}.${String(key)}`;
    } else {
      parts.push(String(key));
      open = true;
    }
  }
  return parts.length === 0 ? "the file" : parts.join(", ");
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) {
    if (value === null || typeof value !== "object") return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
