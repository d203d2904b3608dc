import type { Clause } from "./clauses.ts";
import type { Token } from "./token.ts";
import data from "./cues.yaml";

export const CUE_KINDS = [
  "begin",
  "reading",
  "time_remaining",
  "stop",
  "setup",
  "introduction",
  "greeting",
  "opening_question",
  "teach_back_request",
  "praise",
  "patient_question",
  "leave_taking",
  "no_leave_taking",
  "farewell_tail",
  "heading_after",
  "examiner_question",
  "feedback",
  "restart",
  "restart_of_a_step",
] as const;
export type CueKind = (typeof CUE_KINDS)[number];

/** One phrase of cues.yaml, ready to match. */
export type CueElement =
  | { type: "gap" }
  | { type: "words"; words: readonly string[]; number: boolean; optional: boolean };

export interface Cue {
  kind: CueKind;
  phrase: string;
  /** Said in consultations too: see `soundCues`. */
  weak: boolean;
  elements: readonly CueElement[];
}

/** Tokens `first` up to, not including, `end` say this cue. */
export interface CueMatch {
  kind: CueKind;
  phrase: string;
  weak: boolean;
  first: number;
  end: number;
}

/** How many words "..." may stand for. */
const GAP_WORDS = 3;
/** Shorter words are matched letter for letter: one wrong letter makes too many of them another word. */
const FUZZY_LENGTH = 6;

const NUMBER_WORD = /^(?:\d+|a|an|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|thirty)$/;
const WORD = /^[\p{L}\p{N}'-]+$/u;

/** Rough speech-to-text writes "im" and "youre": cues are matched without apostrophes on both sides. */
function withoutApostrophe(norm: string): string {
  return norm.includes("'") ? norm.replaceAll("'", "") : norm;
}

function compile(kind: CueKind, phrase: string): Cue {
  const weak = phrase.startsWith("~");
  const elements = phrase.replace(/^~\s*/, "").split(/\s+/).map((piece): CueElement => {
    if (piece === "...") return { type: "gap" };
    const optional = piece.endsWith("?");
    const words = (optional ? piece.slice(0, -1) : piece).split("|");
    const bad = words.find((word) => !WORD.test(word) || (word !== "NUMBER" && word !== word.toLowerCase()));
    if (bad !== undefined) throw new Error(`cues.yaml, ${kind}, "${phrase}": "${bad}" is not a word in lower case`);
    return { type: "words", words: words.filter((word) => word !== "NUMBER").map(withoutApostrophe), number: words.includes("NUMBER"), optional };
  });
  if (elements[0]?.type !== "words" || elements[0].optional) throw new Error(`cues.yaml, ${kind}, "${phrase}": must open with a word that is not optional`);
  if (elements[elements.length - 1]?.type === "gap") throw new Error(`cues.yaml, ${kind}, "${phrase}": must not end with "..."`);
  return { kind, phrase, weak, elements };
}

/**
 * Checks and compiles the cues. Throws an `Error` naming the group and the phrase at fault; it is a fault of
 * the program's own data, which a test finds before a person does.
 */
export function compileCues(source: unknown): Cue[] {
  if (typeof source !== "object" || source === null || Array.isArray(source)) throw new Error("cues.yaml: must be groups of phrases");
  const groups = source as Record<string, unknown>;
  const unknown = Object.keys(groups).find((key) => !(CUE_KINDS as readonly string[]).includes(key));
  if (unknown !== undefined) throw new Error(`cues.yaml: "${unknown}" is not a group; the groups are ${CUE_KINDS.join(", ")}`);
  return CUE_KINDS.flatMap((kind) => {
    const phrases = groups[kind];
    if (!Array.isArray(phrases) || phrases.length === 0) throw new Error(`cues.yaml: the group "${kind}" must be a list of phrases`);
    return phrases.map((phrase) => {
      if (typeof phrase !== "string") throw new Error(`cues.yaml, ${kind}: ${JSON.stringify(phrase)} is not text; put it in quotes`);
      return compile(kind, phrase.trim());
    });
  });
}

/** True when the words differ by at most one letter: changed, added or left out. */
export function nearlyEqual(a: string, b: string): boolean {
  if (a === b) return true;
  const longer = a.length - b.length;
  if (longer > 1 || longer < -1) return false;
  let at = 0;
  while (at < a.length && at < b.length && a.charCodeAt(at) === b.charCodeAt(at)) at++;
  return a.slice(longer < 0 ? at : at + 1) === b.slice(longer > 0 ? at : at + 1);
}

function says(element: CueElement & { type: "words" }, norm: string): boolean {
  if (element.number && NUMBER_WORD.test(norm)) return true;
  return element.words.some((word) => word === norm || (word.length >= FUZZY_LENGTH && nearlyEqual(word, norm)));
}

/** The end of the longest match of the elements from `element` on, at token `at`; -1 if there is none. */
function matchFrom(cue: Cue, element: number, tokens: readonly string[], at: number): number {
  const here = cue.elements[element];
  if (here === undefined) return at;
  if (here.type === "gap") {
    for (let skip = 0; skip <= GAP_WORDS; skip++) {
      const end = matchFrom(cue, element + 1, tokens, at + skip);
      if (end >= 0) return end;
    }
    return -1;
  }
  const norm = tokens[at];
  if (norm !== undefined && says(here, norm)) {
    const end = matchFrom(cue, element + 1, tokens, at + 1);
    if (end >= 0) return end;
  }
  return here.optional ? matchFrom(cue, element + 1, tokens, at) : -1;
}

/** Cues by the words that open them (`compile` sees to it that every cue opens with a word). */
interface Openings {
  exact: ReadonlyMap<string, readonly number[]>;
  /** Opening words that are matched with a wrong letter too. */
  fuzzy: readonly string[];
  /** Cues that open with any number. */
  number: readonly number[];
}

function openingsOf(cues: readonly Cue[]): Openings {
  const exact = new Map<string, number[]>();
  const number: number[] = [];
  cues.forEach(({ elements: [first] }, at) => {
    if (first?.type !== "words") return;
    if (first.number) number.push(at);
    for (const word of first.words) exact.set(word, [...(exact.get(word) ?? []), at]);
  });
  return { exact, number, fuzzy: [...exact.keys()].filter((word) => word.length >= FUZZY_LENGTH) };
}

/** Cues that can begin with this word, in their order. */
function openedBy({ exact, fuzzy, number }: Openings, norm: string): readonly number[] {
  const found = [...(exact.get(norm) ?? [])];
  if (NUMBER_WORD.test(norm)) found.push(...number);
  // One letter left out is the shortest that may pass for a fuzzy word.
  if (norm.length >= FUZZY_LENGTH - 1) for (const word of fuzzy) if (word !== norm && nearlyEqual(word, norm)) found.push(...exact.get(word)!);
  return [...new Set(found)].sort((a, b) => a - b);
}

const CUES = compileCues(data);
const OPENINGS = openingsOf(CUES);

/** Every cue said, by place; of one kind the longest at a place. */
export function findCues(tokens: readonly Pick<Token, "norm">[], cues: readonly Cue[] = CUES): CueMatch[] {
  const found: CueMatch[] = [];
  const norms = tokens.map((token) => withoutApostrophe(token.norm));
  const openings = cues === CUES ? OPENINGS : openingsOf(cues);
  // Speech uses few different words: each is looked up once.
  const opened = new Map<string, readonly Cue[]>();
  for (let at = 0; at < norms.length; at++) {
    const norm = norms[at]!;
    let candidates = opened.get(norm);
    if (candidates === undefined) {
      candidates = openedBy(openings, norm).map((which) => cues[which]!);
      opened.set(norm, candidates);
    }
    if (candidates.length === 0) continue;
    const best = new Map<CueKind, CueMatch>();
    for (const cue of candidates) {
      const end = matchFrom(cue, 0, norms, at);
      const other = best.get(cue.kind);
      // Of two phrases at one place the longer says more; a phrase that is not weak beats one that is.
      const better = end > at && (other === undefined || (cue.weak === other.weak ? end > other.end : other.weak));
      if (better) best.set(cue.kind, { kind: cue.kind, phrase: cue.phrase, weak: cue.weak, first: at, end });
    }
    found.push(...best.values());
  }
  return found;
}

/** What only somebody says who runs the clock. */
export const OFFICIAL: readonly CueKind[] = ["begin", "reading", "time_remaining", "stop"];
/** What opens the talk. */
export const OPENINGS_OF_TALK: readonly CueKind[] = ["greeting", "introduction", "opening_question"];

/** Kinds whose phrases support each other, how many tokens apart they may stand to do so, and a kind that supports them by coming before. */
const FAMILIES: readonly { kinds: readonly CueKind[]; reach: number; after?: CueKind }[] = [
  { kinds: OFFICIAL, reach: 10 },
  { kinds: ["setup"], reach: 15 },
  { kinds: ["examiner_question", "feedback"], reach: 40, after: "leave_taking" },
];
/** So soon behind "you may begin" somebody greets. */
const GREETED_WITHIN = 5;
/** In speech without full stops "okay stop there" stops the clock only in the last part of all talk: a share of its words. */
const LATE_SHARE = 0.85;
/** What stands before it there. Behind other words ("keep it on the shelf leave it there") it is said of a thing. */
const CALLS_A_HALT = /^(ok|okay|alright|right|lovely|great|good|thanks|thank|you|bye|ta|cheers)$/;
/** A weak phrase with at most so many other words in its clause is nearly all of it. */
const NEARLY_ALL = 3;

/** Drops weak cues that nothing supports, and words as of a leave-taking that a longer phrase shows to be none ("take care not to"). */
export function soundCues(matches: readonly CueMatch[], clauses: readonly Clause[], tokens: readonly Pick<Token, "norm">[]): CueMatch[] {
  const none = matches.filter((match) => match.kind === "no_leave_taking");
  return matches.filter((match) => {
    if (match.kind === "leave_taking" && none.some((other) => other.first < match.end && match.first < other.end && (other.first < match.first || (other.first === match.first && other.end > match.end)))) return false;
    if (!match.weak) return true;
    const clause = clauses.find((each) => each.first <= match.first && match.first < each.end);
    if (clause !== undefined && clause.end - clause.first <= match.end - match.first + NEARLY_ALL) return true;
    if (match.kind === "begin" && matches.some((other) => OPENINGS_OF_TALK.includes(other.kind) && other.first >= match.end && other.first - match.end <= GREETED_WITHIN)) return true;
    if (match.kind === "stop" && clause?.closed === false && match.first >= LATE_SHARE * tokens.length && CALLS_A_HALT.test(tokens[match.first - 1]?.norm ?? "")) return true;
    const family = FAMILIES.find((each) => each.kinds.includes(match.kind));
    if (family === undefined) return false;
    const close = (other: CueMatch): boolean => other.first - match.end <= family.reach && match.first - other.end <= family.reach;
    if (matches.some((other) => other.kind === family.after && other.end <= match.first && match.first - other.end <= family.reach)) return true;
    return matches.some((other) => !other.weak && family.kinds.includes(other.kind) && close(other));
  });
}
