import { isMap, isSeq, LineCounter, parseDocument, visit, type Document, type Node } from "yaml";
import type { PositionedYaml } from "./positioned-yaml.ts";
import type { Finding } from "../problem/problem.ts";
import { yamlFault } from "./yaml-faults.ts";

/** A rubric has no use for thousands of aliases; more is a mistake or an attack. */
const MAX_ALIASES = 50;

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
  // A text that begins with '!' would lose its first word with no more than a warning.
  const [earliest] = [...document.errors, ...document.warnings].sort((a, b) => a.pos[0] - b.pos[0]);
  const findings = (earliest === undefined ? [] : [earliest]).map((error): Finding => {
    const at = lines.linePos(error.pos[0]);
    const { line, message, mend } = yamlFault(error, text.split(/\r?\n/), at);
    return { code: "SW-R02", severity: "error", file, line, column: line === at.line ? at.col : 1, message, mend };
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
