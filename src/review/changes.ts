import { quantityWords } from "../rubric/quantity-words.ts";
import type { Quantity, Rubric } from "../rubric/schema.ts";
import { isWording, partsOf, type Part, type PartKind } from "./parts.ts";

/** One thing that an edit did to a rubric. */
export interface RubricChange {
  kind: PartKind;
  /** As `Part.id`. */
  id: string;
  /** The item that it is about, if it is about one. */
  item: string | null;
  /** The field that changed; null when the whole part came or went. */
  field: string | null;
  what: "added" | "removed" | "changed";
  /** False for what only people read: labels, sources, advice, history. */
  marks: boolean;
  /** One clause: "must: now also '(two|double)'". */
  text: string;
}

/** What an edit did, by item and element id, not by line: a block moved to another file is no change. Pure. */
export function changesBetween(before: Rubric, after: Rubric): RubricChange[] {
  const [old, fresh] = [byKey(partsOf(before)), byKey(partsOf(after))];
  const changes: RubricChange[] = [];
  for (const [key, part] of old) if (!fresh.has(key) && !comesWithItem(part, fresh)) changes.push(whole(part, "removed"));
  for (const [key, part] of fresh) {
    const was = old.get(key);
    if (was !== undefined) changes.push(...fieldChanges(was, part));
    else if (!comesWithItem(part, old)) changes.push(whole(part, "added"));
  }
  return changes;
}

const byKey = (parts: readonly Part[]) => new Map(parts.map((part) => [`${part.kind} ${part.id}`, part]));

/** An element whose item is not in the other version comes or goes with it. */
function comesWithItem(part: Part, other: ReadonlyMap<string, Part>): boolean {
  return part.kind === "element" && !other.has(`item ${itemName(part)}`);
}

function whole(part: Part, what: "added" | "removed"): RubricChange {
  const label = part.fields["label"];
  return { kind: part.kind, id: part.id, item: itemName(part), field: null, what, marks: part.kind !== "section", text: `${what}${typeof label === "string" ? `: ${label}` : ""}` };
}

function itemName({ kind, id }: Pick<Part, "kind" | "id">): string | null {
  if (kind === "item") return id;
  return kind === "element" ? id.slice(0, id.indexOf("/")) : null;
}

function fieldChanges(old: Part, fresh: Part): RubricChange[] {
  const names = [...new Set([...Object.keys(old.fields), ...Object.keys(fresh.fields)])];
  return names.flatMap((field): RubricChange[] => {
    const [was, is] = [old.fields[field], fresh.fields[field]];
    // What items a section holds is told by the items; only their order is left.
    if (field === "items" && old.kind === "section" && !sameMembers(was, is)) return [];
    if (sameValue(was, is)) return [];
    const reordered = Array.isArray(was) && Array.isArray(is) && sameMembers(was, is);
    return [{ kind: old.kind, id: old.id, item: itemName(old), field, what: "changed", marks: !isWording(old.kind, field), text: reordered ? `${plain(field)}: in another order` : `${plain(field)}: ${difference(was, is)}` }];
  });
}

function difference(was: unknown, is: unknown): string {
  if (isList(was) && isList(is) || isList(was) && is === undefined || was === undefined && isList(is)) {
    const [old, fresh] = [(was ?? []) as string[], (is ?? []) as string[]];
    const gained = fresh.filter((entry) => !old.includes(entry));
    const lost = old.filter((entry) => !fresh.includes(entry));
    return [gained.length > 0 ? `now also ${quoted(gained)}` : "", lost.length > 0 ? `no longer ${quoted(lost)}` : ""].filter((text) => text !== "").join("; ") || "a repeated entry";
  }
  if (isRecord(was) && isRecord(is) && !isQuantity(was) && !isQuantity(is)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => !sameValue(was[key], is[key]));
    return keys.map((key) => `${plain(key)} ${value(was[key])} -> ${value(is[key])}`).join("; ");
  }
  return `${value(was)} -> ${value(is)}`;
}

function value(given: unknown): string {
  if (given === undefined) return "none";
  if (typeof given === "string") return `'${given}'`;
  if (isQuantity(given)) return quantityWords(given);
  if (isList(given)) return quoted(given);
  if (Array.isArray(given)) return given.map(value).join(", ");
  if (isRecord(given)) return `(${Object.entries(given).map(([name, inner]) => `${plain(name)} ${value(inner)}`).join(", ")})`;
  return String(given);
}

const quoted = (list: readonly string[]) => list.map((entry) => `'${entry}'`).join(", ");
const plain = (name: string) => name.replaceAll("_", " ");
const isList = (given: unknown): given is string[] => Array.isArray(given) && given.every((entry) => typeof entry === "string");
const isRecord = (given: unknown): given is Record<string, unknown> => given !== null && typeof given === "object" && !Array.isArray(given);
const isQuantity = (given: unknown): given is Quantity => isRecord(given) && ("unit" in given || (Object.keys(given).length === 1 && typeof given["label"] === "string"));

/** JSON with keys in order: the order in which fields are written means nothing. */
function canonical(given: unknown): string {
  return JSON.stringify(given, (_key, inner: unknown) => (isRecord(inner) ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1))) : inner)) ?? "";
}

function sameValue(was: unknown, is: unknown): boolean {
  return canonical(was) === canonical(is);
}

function sameMembers(was: unknown, is: unknown): boolean {
  const sorted = (given: unknown) => (Array.isArray(given) ? given.map(canonical).sort().join("\n") : null);
  return sorted(was) === sorted(is);
}
