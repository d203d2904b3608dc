import type { ErrorCode, YAMLParseError } from "yaml";
import type { Fault } from "../problem/problem.ts";

export interface YamlFault extends Fault {
  /** Of the line that is at fault, 1-based; the parser's where it is not another. */
  line: number;
}

const IN_QUOTES = "Put the whole text in quotes where it begins with a sign ({, [, *, a quote), as in \"{quantity} each morning\"; a new field begins on a line of its own.";

/** What the parser's codes mean to somebody who does not know YAML's own words. */
const BY_CODE: Partial<Record<ErrorCode, Fault>> = {
  TAB_AS_INDENT: { message: "a tab stands where the line is indented", mend: "Write blanks in place of the tab." },
  UNEXPECTED_TOKEN: { message: "text stands behind what is complete already", mend: IN_QUOTES },
  DUPLICATE_KEY: { message: "this name stands twice among the fields of one thing", mend: "Take one of the two out." },
  BAD_INDENT: { message: "this line is indented otherwise than what it belongs to", mend: "Let it begin at the same column as its neighbours; an entry of a list begins with '- '." },
  BAD_SCALAR_START: { message: "a text cannot begin with this sign", mend: "Put the text in quotes." },
  BAD_DQ_ESCAPE: { message: "a '\\' in double quotes means something else here", mend: "Put the text in single quotes, or write '\\\\'." },
  BLOCK_IN_FLOW: { message: "a line with '- ' or 'name: value' stands inside brackets", mend: "Close the bracket before it, or part the entries by commas." },
  MISSING_CHAR: { message: "a bracket or a quote is not closed, or a comma is missing", mend: "Close it, or put a text that has brackets in it in quotes." },
  MULTILINE_IMPLICIT_KEY: { message: "a name before ':' goes over several lines", mend: "Write 'name: value' on one line, or put a text in quotes." },
  TAG_RESOLVE_FAILED: { message: "a text that begins with '!' means something else here", mend: "Put the text in quotes." },
  MULTIPLE_DOCS: { message: "the file holds several YAML documents", mend: "Take out the line '---', or make a file of each." },
  NON_STRING_KEY: { message: "a name before ':' must be a text", mend: "Put the name in quotes." },
};

/** As a text copied from a word processor or a web page has them. */
const NO_PLAIN_BLANK = /^ *[\u00a0\u2007\u202f]/;
const PLAIN_BLANKS = { message: "a blank of another kind (one at which no line breaks) stands before the text", mend: "Write plain blanks in its place." };

const CHECK = "Check the indentation and the quotes on this line and the one before.";

/**
 * What is wrong with a text that is no YAML, and how to mend it.
 * @param lines of the text.
 * @param at where the parser saw it, 1-based.
 */
export function yamlFault(error: YAMLParseError, lines: readonly string[], at: { line: number; col: number }): YamlFault {
  const fault = faultOf(error, lines, at);
  return { ...fault, message: `not well-formed YAML: ${fault.message}` };
}

function faultOf({ code, message }: YAMLParseError, lines: readonly string[], at: { line: number; col: number }): YamlFault {
  const line = lines[at.line - 1] ?? "";
  if (/^\s*-[^\s-]/.test(line) && code !== "MISSING_CHAR") return { line: at.line, message: "a '-' touches the word behind it", mend: "Write a blank behind the '-'." };
  if (NO_PLAIN_BLANK.test(line)) return { line: at.line, ...PLAIN_BLANKS };
  if ((code === "UNEXPECTED_TOKEN" || code === "MISSING_CHAR") && /\p{L}'$/u.test(line.slice(0, at.col - 1))) return { line: at.line, message: "a text in single quotes ends at its apostrophe", mend: "Put it in double quotes, or write the apostrophe twice." };
  if (code === "BLOCK_AS_IMPLICIT_KEY") return nested(lines, at);
  if (code === "BAD_INDENT" && /\]|\}/.test(message)) return { line: lineBefore(lines, at.line), message: "a bracket that opens here, or before, is not closed", mend: "Add the ']' or '}' at the end of what it holds." };
  if (code === "MISSING_CHAR" && /quote/.test(message)) return { line: at.line, message: "a quote that opens before this is not closed", mend: "Add the closing quote, or take the opening one out." };
  const known = BY_CODE[code];
  if (known === undefined) return { line: at.line, message, mend: CHECK };
  return { line: at.line, ...known };
}

/** Fields where a text has begun: the text has a ': ' in it, or the next line is indented too far. */
function nested(lines: readonly string[], { line: number, col }: { line: number; col: number }): YamlFault {
  const line = lines[number - 1] ?? "";
  const rest = line.slice(col - 1);
  if (/^\s*- /.test(rest)) return { line: number, message: "an entry that begins with '- ' stands among fields, 'name: value'", mend: "Let all that belongs together begin alike: a list with '- ' before each entry, as in '- id: ...'." };
  if (/:\s/.test(rest)) return { line: number, message: `the text '${rest.trim()}' has ': ' in it, which makes fields of it`, mend: "Put the whole text in quotes." };
  const next = lines.findIndex((candidate, place) => place >= number && candidate.trim() !== "" && !/^\s*#/.test(candidate));
  if (next < 0) return { line: number, message: "fields stand where a text has begun", mend: CHECK };
  if (NO_PLAIN_BLANK.test(lines[next]!)) return { line: next + 1, ...PLAIN_BLANKS };
  return { line: next + 1, message: "this line is indented further than what it belongs to", mend: "Let it begin at the same column as its neighbours." };
}

/** The nearest line before this that holds something. */
function lineBefore(lines: readonly string[], number: number): number {
  return Math.max(1, lines.findLastIndex((line, place) => place < number - 1 && line.trim() !== "") + 1);
}
