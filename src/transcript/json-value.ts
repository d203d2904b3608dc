import { parse, type AnyNode, type ValueNode } from "@humanwhocodes/momoa";
import type { FindingLog } from "./finding-log.ts";

/** A value of the JSON text and the line on which it stands. */
export type JsonValue = { line: number } & (
  | { type: "object"; members: Map<string, JsonValue> }
  | { type: "array"; items: JsonValue[] }
  | { type: "string"; value: string }
  | { type: "number"; value: number }
  | { type: "boolean"; value: boolean }
  | { type: "null" }
);

/** Deepest nesting read: a transcript needs about six levels. */
const DEEPEST = 64;

/**
 * Parses JSON and keeps the lines. What JSON5 forgives (a comma too many, a comment, NaN) is forgiven with a finding;
 * anything else is SW-T05 with its line.
 */
export function parseJson(text: string, log: FindingLog): JsonValue {
  refuseDepth(text, log);
  try {
    return toValue(parse(text, { mode: "json" }).body);
  } catch (strict) {
    try {
      const value = toValue(parse(text, { mode: "json5" }).body);
      const { line } = placeOf(strict, text);
      log.add({ code: "SW-T16", severity: "info", line, message: "the JSON is not strictly well formed here (a comma too many, a comment or NaN) and was read all the same" });
      return value;
    } catch {
      throw refusal(strict, text, log);
    }
  }
}

function refusal(error: unknown, text: string, log: FindingLog): Error {
  const { line, column, ends } = placeOf(error, text);
  const message = ends ? "the JSON ends before it is complete" : "the JSON is not well formed here";
  return log.refuse("SW-T05", message, { line, ...(column === undefined ? {} : { column }), mend: "Export the file again, or check brackets, commas and quotes." });
}

function placeOf(error: unknown, text: string): { line: number; column?: number; ends: boolean } {
  const at = error as { line?: number; column?: number; message?: string };
  // The parser gives the place of the last token read; where text runs out, the end of the file is the better place.
  let ends = false;
  try {
    JSON.parse(text);
  } catch (native) {
    const { message } = native as Error;
    const position = /position (\d+)/.exec(message)?.[1];
    ends = /end of JSON input|Unterminated string/i.test(message) || Number(position) >= text.trimEnd().length;
  }
  if (ends || at.line === undefined) return { line: text.trimEnd().split(/\r\n|\n|\r/).length, ends };
  return { line: at.line, ...(at.column === undefined ? {} : { column: at.column }), ends };
}

/** Parsers and walkers of trees call themselves, so depth is checked before they run. Brackets inside strings do not count. */
function refuseDepth(text: string, log: FindingLog): void {
  let depth = 0;
  for (const match of text.matchAll(/"[^"\\]*(?:\\.[^"\\]*)*"?|[[{]|[\]}]/gs)) {
    const sign = match[0][0];
    if (sign === "[" || sign === "{") depth += 1;
    else if (sign === "]" || sign === "}") depth -= 1;
    if (depth > DEEPEST) {
      const line = text.slice(0, match.index).split(/\r\n|\n|\r/).length;
      throw log.refuse("SW-T05", `the JSON is nested more than ${DEEPEST} levels deep, which no transcript is`, { line });
    }
  }
}

function toValue(node: ValueNode | AnyNode): JsonValue {
  const { line } = node.loc.start;
  switch (node.type) {
    case "Object":
      return {
        line,
        type: "object",
        members: new Map(node.members.map((member) => [member.name.type === "String" ? member.name.value : member.name.name, toValue(member.value)])),
      };
    case "Array":
      return { line, type: "array", items: node.elements.map((element) => toValue(element.value)) };
    case "String":
      return { line, type: "string", value: node.value };
    case "Number":
      return { line, type: "number", value: node.value };
    case "Boolean":
      return { line, type: "boolean", value: node.value };
    default:
      return { line, type: "null" };
  }
}
