import { isMap, isSeq, LineCounter, parseDocument, visit, type Document, type Node } from "yaml";
import type { z } from "zod";
import type { PositionedYaml } from "./positioned-yaml.ts";
import type { Finding } from "../problem/problem.ts";

/** A rubric has no use for thousands of aliases; more is a mistake or an attack. */
const MAX_ALIASES = 50;

/** What is most often behind a fault of the YAML, by the parser's code. */
const MENDS: Partial<Record<string, string>> = {
  TAB_AS_INDENT: "Write blanks in place of the tab.",
  BLOCK_AS_IMPLICIT_KEY: "Put a text that has ': ' in it in quotes, or check the indentation.",
  UNEXPECTED_TOKEN: "Put the whole text in quotes where it begins with {, [ or a quote, as in \"{quantity} each morning\".",
  DUPLICATE_KEY: "Take one of the two out.",
};

/** @param file as the person named it, for messages. */
export function readYaml(text: string, file: string): PositionedYaml {
  const lines = new LineCounter();
  let document: Document;
  try {
    document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  } catch (error) {
    // The parser goes down as deep as the text does.
    if (!(error instanceof RangeError)) throw error;
    return unreadable(file, { file, line: 1, column: 1, message: "its parts are nested too deeply to be read", mend: "Check the brackets and the indentation." });
  }
  // What follows the first is mostly its consequence, and sends people to lines that are right.
  const [earliest] = [...document.errors].sort((a, b) => a.pos[0] - b.pos[0]);
  const findings = (earliest === undefined ? [] : [earliest]).map((error): Finding => {
    const { line, col } = lines.linePos(error.pos[0]);
    const several = error.code === "MULTIPLE_DOCS";
    return {
      code: "SW-R02",
      severity: "error",
      file,
      line,
      column: col,
      message: several ? "the file holds several YAML documents" : `not well-formed YAML: ${error.message}`,
      mend: several ? "Take out the line '---', or make a file of each." : (MENDS[error.code] ?? "Check the indentation and the quotes on this line and the one before."),
    };
  });
  if (findings.length > 0) return { file, data: null, findings, positionOf: (path) => position(document, lines, path) };
  try {
    const data: unknown = document.toJS({ maxAliasCount: MAX_ALIASES });
    return { file, data, findings, positionOf: (path) => position(document, lines, path) };
  } catch (error) {
    // So the package tells of aliases that lead nowhere, or that make more of a text than its size lets expect.
    if (!(error instanceof ReferenceError) && !(error instanceof RangeError)) throw error;
    const excessive = !/unresolved/i.test(error.message);
    const { line, col } = lines.linePos(firstAlias(document));
    return unreadable(file, {
      file,
      line,
      column: col,
      message: excessive ? `its aliases ('*name') repeat more than ${MAX_ALIASES} parts` : `not well-formed YAML: ${error.message}`,
      mend: excessive ? "Write out what is repeated." : "Name an anchor ('&name') that stands before the alias, or put the text in quotes.",
    });
  }
}

function unreadable(file: string, { line = 1, column = 1, ...told }: Omit<Finding, "code" | "severity">): PositionedYaml {
  return { file, data: null, findings: [{ code: "SW-R02", severity: "error", line, column, ...told }], positionOf: () => ({ line, column }) };
}

/** Where the first alias stands; the start of the text without one. */
function firstAlias(document: Document): number {
  let offset = 0;
  visit(document, {
    Alias: (_key, node) => {
      offset = node.range?.[0] ?? 0;
      return visit.BREAK;
    },
  });
  return offset;
}

/** The position of the deepest part of the path that the text really has. */
function position(document: Document, lines: LineCounter, path: readonly PropertyKey[]) {
  let node: unknown = document.contents;
  let offset = rangeStart(node) ?? 0;
  for (const key of path) {
    if (isMap(node)) {
      const pair = node.items.find((candidate) => String((candidate.key as { value?: unknown })?.value) === String(key));
      if (pair === undefined) break;
      offset = rangeStart(pair.key) ?? offset;
      node = pair.value;
    } else if (isSeq(node)) {
      node = node.items[Number(key)];
      offset = rangeStart(node) ?? offset;
    } else {
      break;
    }
  }
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function rangeStart(node: unknown): number | undefined {
  return (node as Node | null)?.range?.[0];
}

/** Turns zod's issues into findings with file, line, column and a way to mend each. */
export function findingsOf(error: z.ZodError, yaml: PositionedYaml, at: readonly PropertyKey[] = []): Finding[] {
  if (yaml.data === null || yaml.data === undefined) {
    return [{ code: "SW-R03", severity: "error", file: yaml.file, line: 1, column: 1, message: "the file is empty", mend: "'saidwell rubric new' prints a rubric to start from." }];
  }
  return error.issues.flatMap((issue) => flatten(issue)).map((issue): Finding => {
    const path = [...at, ...issue.path];
    const unknownKey = issue.code === "unrecognized_keys" ? issue.keys[0] : undefined;
    const { line, column } = yaml.positionOf(unknownKey === undefined ? path : [...path, unknownKey]);
    const { message, mend } = inWords(issue, valueAt(yaml.data, path));
    return { code: "SW-R03", severity: "error", file: yaml.file, line, column, message: `${path.length === 0 ? "the file" : path.map(String).join(".")}: ${lowerFirst(message)}`, mend };
  });
}

/** A union fails with the issues of every branch; the branch that got furthest is what the person meant. */
function flatten(issue: z.core.$ZodIssue): z.core.$ZodIssue[] {
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return [issue];
  const furthest = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0]!;
  if (depth(furthest) === 0 && furthest.every((inner) => inner.code === "invalid_type")) return [issue];
  return furthest.flatMap((inner) => flatten({ ...inner, path: [...issue.path, ...inner.path] }));
}

function depth(issues: z.core.$ZodIssue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length + (issue.code === "unrecognized_keys" ? 1 : 0)));
}

/** What is wrong and how to mend it. What a refinement of ours tells brings its mend along. */
function inWords(issue: z.core.$ZodIssue, value: unknown): { message: string; mend: string } {
  const { message } = issue;
  switch (issue.code) {
    case "unrecognized_keys":
      return { message, mend: `Remove ${issue.keys.map((key) => `'${key}'`).join(", ")} or correct the spelling.` };
    case "invalid_type":
      if (value === undefined) return { message: "it is missing", mend: "Add this field." };
      if (issue.expected === "string" && typeof value !== "object") return { message: `a text was expected, not ${String(value)}`, mend: "Put it in quotes." };
      if (issue.expected === "string" && value !== null && !Array.isArray(value)) return { message: `a text was expected, not ${kindOf(value)}`, mend: "Put the text in quotes: a ': ' in it makes fields of it." };
      return { message: `${KINDS[issue.expected] ?? issue.expected} was expected, not ${kindOf(value)}`, mend: `Write ${KINDS[issue.expected] ?? issue.expected} here.` };
    case "invalid_value":
      if (value === undefined) return { message: "it is missing", mend: `Add it: ${issue.values.map(String).join(", ")}.` };
      return { message: typeof value === "object" ? "this is none of the values that may stand here" : `'${String(value)}' is none of the values that may stand here`, mend: `Choose one of: ${issue.values.map(String).join(", ")}.` };
    case "too_small":
      if (issue.origin === "array" || issue.origin === "string") return { message, mend: issue.origin === "array" ? "Add one, or take the field out." : "Write words here." };
      return { message, mend: `Write a number ${issue.inclusive === false ? "above" : "of at least"} ${issue.minimum}.` };
    case "too_big":
      return { message, mend: `Write a number of at most ${issue.maximum}.` };
    case "invalid_format":
      return { message, mend: issue.format === "date" ? "Write year, month and day, such as 2027-06-30." : "Write it like 'missed-dose'." };
    case "invalid_union":
      // A union of kinds with a message of its own says how to write each.
      if (value === undefined) return { message: "it is missing", mend: "Add this field." };
      return { message: message === "Invalid input" ? `${kindOf(value)} cannot stand here` : message, mend: `Write ${[...new Set(issue.errors.flat().map((inner) => (inner.code === "invalid_type" ? (KINDS[inner.expected] ?? inner.expected) : null)).filter((kind) => kind !== null))].join(" or ") || "another value"} here.` };
    case "custom":
      return { message, mend: (issue.params?.["mend"] as string | undefined) ?? "Correct this field." };
    default:
      return { message, mend: "Correct this field." };
  }
}

/** What zod expects, as a person who writes YAML calls it. */
const KINDS: Record<string, string> = { object: "fields ('name: value')", record: "fields ('name: value')", array: "a list", tuple: "a list", string: "a text", number: "a number", int: "a whole number", boolean: "true or false" };

function kindOf(value: unknown): string {
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "fields";
  return typeof value === "string" ? "a text" : String(value);
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
