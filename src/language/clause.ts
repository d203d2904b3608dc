import type { Token } from "./token.ts";

/** Tokens `first` up to, not including, `end`. Clauses tile the tokens. */
export interface Clause {
  first: number;
  end: number;
}

/** Behind "and" or a comma these begin a new clause: a subject, or a verb told to the patient. */
const CLAUSE_OPENERS = new Set([
  "you", "i", "we", "it", "he", "she", "they", "there", "then", "make", "remember", "always", "never", "do", "if", "when",
  "once", "just", "only", "please", "keep", "use", "take", "put", "hold", "wait", "press", "breathe", "check", "let",
  "come", "see", "go", "call", "ring", "get", "bring", "tell", "ask", "try", "start", "stop", "leave", "give", "clean", "wipe", "rinse", "wash",
  "shake", "blow", "tilt", "lean", "aim", "point", "look", "pull", "push", "turn", "dial", "inject", "change", "throw", "store", "count", "pinch",
  "speak", "talk", "contact", "phone", "show", "carry", "write", "close", "open", "spray", "squeeze", "drop", "your", "my",
]);

/** Speech without any punctuation is still not one clause: nothing reaches further than this many tokens. */
export const LONGEST_CLAUSE = 24;

/**
 * Parts tokens into clauses: at punctuation, at "but" and "so", and at "and" before a new subject or instruction.
 * @param breaks token positions before which a sentence or turn ends, whatever the punctuation.
 */
export function clausesOf(tokens: readonly Token[], breaks: ReadonlySet<number> = new Set()): Clause[] {
  const clauses: Clause[] = [];
  let first = 0;
  for (let place = 1; place <= tokens.length; place += 1) {
    if (place < tokens.length && !breaks.has(place) && !startsClause(tokens, place, first)) continue;
    clauses.push({ first, end: place });
    first = place;
  }
  return tokens.length === 0 ? [] : clauses;
}

function startsClause(tokens: readonly Token[], place: number, first: number): boolean {
  const before = tokens[place - 1]!;
  const token = tokens[place]!;
  const next = tokens[place + 1];
  if (/^[.?!;:]$/.test(before.after)) return true;
  if (place - first >= LONGEST_CLAUSE) return true;
  const opens = (candidate: Token | undefined) => candidate !== undefined && CLAUSE_OPENERS.has(candidate.text);
  if (/^[,-]$/.test(before.after) && (opens(token) || token.text === "and" || token.text === "so")) return opens(token) || opens(next);
  if (token.text === "but" || (token.text === "so" && next?.text !== "that" && next?.text !== "much")) return true;
  if (token.text === "and" || token.text === "then") return opens(next);
  return token.text === "if" && place - first > 2;
}
