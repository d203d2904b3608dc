import type { ResultKey } from "./result.ts";

/** Candidate, then station and attempt where they are there, apart by underscores: `A017_eye-drops_2.vtt`, `A017.vtt`. */
export const DEFAULT_PATTERN = "{candidate}[_{station}[_{attempt}]]";

/** What the file's name says; a part that the name leaves out is absent. */
export interface NameParts {
  key: Partial<ResultKey>;
  /** The pattern's other names: for the analysis. */
  columns: Record<string, string>;
}

/** Reads names of one pattern. Null when the name does not follow it. */
export type NameReader = (path: string) => NameParts | null;

const KEYS = ["candidate", "station", "attempt"] as const;
const PLACEHOLDER = /\{([^{}]*)\}|([[\]])|([^{}[\]]+)/gy;

/**
 * Compiles a pattern: text that stands as it is, `{candidate}`, `{station}`, `{attempt}`, any other `{name}` as a column,
 * and `[...]` around what may be missing. The file's ending is no part of it. A pattern with slashes is held against the
 * end of the path, one without against the file's name.
 *
 * A value ends at the first occurrence of the character that follows it in the pattern, and the last value may not hold
 * the character before it, so that a name can be read in one way only. Letters with accents are the same in one piece
 * and in two (NFC), as systems write names of files in either way.
 * @throws Error with a sentence when the pattern cannot be used.
 */
export function nameReader(pattern: string): NameReader {
  const tokens = tokensOf(pattern.normalize("NFC"));
  const names: string[] = [];
  let source = "";
  let open = 0;
  tokens.forEach((token, place) => {
    if (token.kind === "text") source += escapeForRegExp(token.text);
    else if (token.kind === "open") [source, open] = [`${source}(?:`, open + 1];
    else if (token.kind === "close") {
      if (open === 0) throw new Error("a ']' stands in it without a '['");
      [source, open] = [`${source})?`, open - 1];
    } else {
      if (names.includes(token.text)) throw new Error(`{${token.text}} stands in it twice`);
      if (!/^[\p{L}\p{N}_ -]+$/u.test(token.text)) throw new Error(`{${token.text}} is not a name: use letters, digits and hyphens`);
      names.push(token.text);
      const ends = boundary(tokens, place);
      source += `([^/${escapeForClass(ends)}]+)`;
    }
  });
  if (open > 0) throw new Error("a '[' stands in it without a ']'");
  if (!names.includes("candidate")) throw new Error("it does not name {candidate}");
  // A pattern with folders may stand at the end of a longer path.
  const whole = new RegExp(`^${pattern.includes("/") ? "(?:.*/)?" : ""}${source}$`, "u");
  return (path) => {
    const match = whole.exec(stem(pattern.includes("/") ? path : path.slice(path.lastIndexOf("/") + 1)).normalize("NFC"));
    return match === null ? null : partsOf(names, match);
  };
}

function partsOf(names: readonly string[], match: RegExpExecArray): NameParts {
  const parts: NameParts = { key: {}, columns: {} };
  names.forEach((name, place) => {
    const value = match[place + 1]?.trim();
    if (value === undefined || value === "") return;
    if ((KEYS as readonly string[]).includes(name)) parts.key[name as keyof ResultKey] = value;
    else parts.columns[name] = value;
  });
  return parts;
}

/** The path without its ending: `a/b.c.vtt` is `a/b.c`. A dot at the start of a name is no ending. */
export function stem(path: string): string {
  return path.replace(/(?<=[^/])\.[^./]*$/, "");
}

interface Token {
  kind: "text" | "name" | "open" | "close";
  text: string;
}

function tokensOf(pattern: string): Token[] {
  const tokens: Token[] = [];
  PLACEHOLDER.lastIndex = 0;
  while (PLACEHOLDER.lastIndex < pattern.length) {
    const at = PLACEHOLDER.lastIndex;
    const match = PLACEHOLDER.exec(pattern);
    if (match === null) throw new Error(`'${pattern.slice(at)}' cannot be read: braces must come in pairs`);
    if (match[1] !== undefined) tokens.push({ kind: "name", text: match[1].trim() });
    else if (match[2] !== undefined) tokens.push({ kind: match[2] === "[" ? "open" : "close", text: match[2] });
    else tokens.push({ kind: "text", text: match[3]! });
  }
  return tokens;
}

/** The character at which the value of this placeholder ends. */
function boundary(tokens: readonly Token[], place: number): string {
  const after = tokens.slice(place + 1).find(({ kind }) => kind === "text" || kind === "name");
  if (after?.kind === "name") throw new Error(`{${tokens[place]!.text}} and {${after.text}} stand side by side: nothing tells where one ends`);
  if (after !== undefined) return after.text[0]!;
  const text = tokens.slice(0, place).findLast(({ kind }) => kind === "text")?.text ?? "";
  return text.at(-1) ?? "";
}

function escapeForRegExp(text: string): string {
  return text.replace(/[$()*+./?[\\\]^{|}]/g, "\\$&");
}

function escapeForClass(character: string): string {
  return /[\]\\^-]/.test(character) ? `\\${character}` : character;
}
