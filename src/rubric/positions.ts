import { isMap, isSeq, LineCounter, parseDocument, type Document, type Node } from "yaml";
import type { z } from "zod";
import type { PositionedYaml } from "./positioned-yaml.ts";
import type { Finding } from "../problem/problem.ts";

/** A rubric has no use for thousands of aliases; more is a mistake or an attack. */
const MAX_ALIASES = 50;

/** @param file as the person named it, for messages. */
export function readYaml(text: string, file: string): PositionedYaml {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  const findings = document.errors.map((error): Finding => {
    const { line, col } = lines.linePos(error.pos[0]);
    return {
      code: "SW-R02",
      severity: "error",
      file,
      line,
      column: col,
      message: `not well-formed YAML: ${error.message}`,
      mend: "Check the indentation and the quotes on this line and the one before.",
    };
  });
  const data: unknown = findings.length === 0 ? document.toJS({ maxAliasCount: MAX_ALIASES }) : null;
  return { file, data, findings, positionOf: (path) => position(document, lines, path) };
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
  return error.issues.flatMap((issue) => flatten(issue)).map((issue): Finding => {
    const path = [...at, ...issue.path];
    const unknownKey = issue.code === "unrecognized_keys" ? issue.keys[0] : undefined;
    const { line, column } = yaml.positionOf(unknownKey === undefined ? path : [...path, unknownKey]);
    const mend = hint(issue);
    return {
      code: "SW-R03",
      severity: "error",
      file: yaml.file,
      line,
      column,
      message: `${path.length === 0 ? "the file" : path.map(String).join(".")}: ${lowerFirst(issue.message)}`,
      ...(mend !== undefined && { mend }),
    };
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

function hint(issue: z.core.$ZodIssue): string | undefined {
  switch (issue.code) {
    case "unrecognized_keys":
      return `Remove ${issue.keys.map((key) => `'${key}'`).join(", ")} or correct the spelling.`;
    case "invalid_type":
      return issue.message.includes("undefined") ? "Add this field." : `Write a ${issue.expected} here.`;
    case "invalid_value":
      return `Choose one of: ${issue.values.map(String).join(", ")}.`;
    case "custom":
      return issue.params?.["mend"] as string | undefined;
    default:
      return undefined;
  }
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
