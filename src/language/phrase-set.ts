import { tokenise, type Token } from "./token.ts";

/** Where a phrase of the set stands in a run of tokens; `end` is exclusive. */
export interface PhraseHit<Value> {
  first: number;
  end: number;
  value: Value;
  /** Whether other words part its two ("take the cap off"): those between the first and the last are none of it. */
  parted: boolean;
}

/** Words behind a verb that other words may part from it: "take off", "take the cap off". */
const PARTICLES = new Set(["out", "in", "away", "off", "on", "up", "down", "back", "over"]);
/** Whose it is does not change a phrase: "hold your breath", "I hold my breath", "he holds the breath". */
const DETERMINERS = new Set(["my", "your", "his", "her", "their", "our", "the", "a", "an"]);
/** These point, and often at what was said: "it isn't that" is not "it isn't a ...", "make that" not "make your ...". */
const POINTERS = new Set(["this", "that"]);
/** "take the small grey cap off" has four words between. */
const LONGEST_GAP = 4;

interface Entry<Value> {
  stems: string[];
  parts: boolean;
  value: Value;
}

export interface PhraseSetOptions {
  /** Whether a closing particle may stand apart from its verb ("take the cap off"). */
  gaps?: boolean;
  /** `stem`: inflections of a word are alike. `text`: only the very word counts ("have you", not "had you"). */
  by?: "stem" | "text";
}

/** A closing particle may stand apart from its verb. */
const mayPart = (stems: readonly string[], gaps: boolean) => gaps && stems.length === 2 && PARTICLES.has(stems[1]!);
const longestFirst = (a: { stems: string[] }, b: { stems: string[] }) => b.stems.length - a.stems.length;

/** Many short phrases, found in one pass over the tokens. */
export class PhraseSet<Value> {
  private readonly byFirst = new Map<string, Entry<Value>[]>();
  private readonly by: "stem" | "text";
  private lazy: Record<string, [stems: string, value: Value][]> | null = null;
  private gaps = false;

  /** A set whose phrases were tokenised beforehand, by their first stem; each list is taken in when first needed. */
  static prepared<Value>(phrases: Record<string, [stems: string, value: Value][]>, { gaps = false }: Pick<PhraseSetOptions, "gaps"> = {}): PhraseSet<Value> {
    const set = new PhraseSet<Value>([]);
    set.lazy = phrases;
    set.gaps = gaps;
    return set;
  }

  /** @param phrases phrase and what it stands for. */
  constructor(phrases: Iterable<readonly [string, Value]>, { gaps = false, by = "stem" }: PhraseSetOptions = {}) {
    this.by = by;
    for (const [phrase, value] of phrases) {
      const stems = tokenise(phrase.split(/\s+/)).map((token) => token[by]);
      const first = stems[0];
      if (first === undefined) continue;
      const entry = { stems, parts: mayPart(stems, gaps), value };
      const list = this.byFirst.get(first);
      if (list) list.push(entry);
      else this.byFirst.set(first, [entry]);
    }
    for (const list of this.byFirst.values()) list.sort(longestFirst);
  }

  private entriesFor(first: string): Entry<Value>[] | undefined {
    const known = this.byFirst.get(first);
    if (known !== undefined || this.lazy === null || !Object.hasOwn(this.lazy, first)) return known;
    const entries = this.lazy[first]!.map(([text, value]) => {
      const stems = text.split(" ");
      return { stems, parts: mayPart(stems, this.gaps), value };
    });
    this.byFirst.set(first, entries.sort(longestFirst));
    return entries;
  }

  /** The longest phrase that starts at this token, or null. */
  at(tokens: readonly Token[], place: number): PhraseHit<Value> | null {
    const entries = this.entriesFor(tokens[place]?.[this.by] ?? "");
    if (entries === undefined) return null;
    for (const entry of entries) {
      const end = matchEnd(tokens, place, entry, this.by);
      if (end > 0) return hitOf(entry, place, end);
    }
    return null;
  }

  /** Every phrase that starts at this token, longest first. */
  allAt(tokens: readonly Token[], place: number): PhraseHit<Value>[] {
    const entries = this.entriesFor(tokens[place]?.[this.by] ?? "");
    if (entries === undefined) return [];
    const hits: PhraseHit<Value>[] = [];
    for (const entry of entries) {
      const end = matchEnd(tokens, place, entry, this.by);
      if (end > 0) hits.push(hitOf(entry, place, end));
    }
    return hits;
  }

  /** Every phrase in the tokens, by place; at one place the longest only, and none inside another. */
  find(tokens: readonly Token[], first = 0, end = tokens.length): PhraseHit<Value>[] {
    const hits: PhraseHit<Value>[] = [];
    for (let place = first; place < end; ) {
      const hit = this.at(tokens, place);
      if (hit !== null && hit.end <= end) {
        hits.push(hit);
        place = hit.end;
      } else place += 1;
    }
    return hits;
  }
}

function hitOf<Value>({ stems, value }: Entry<Value>, first: number, end: number): PhraseHit<Value> {
  return { first, end, value, parted: end - first > stems.length };
}

/** A set of phrases that stand for nothing but themselves. */
export function phraseList(phrases: readonly string[], options: PhraseSetOptions = {}): PhraseSet<true> {
  return new PhraseSet(phrases.map((phrase) => [phrase, true] as const), options);
}

function alike(spoken: string | undefined, written: string): boolean {
  return spoken === written || (spoken !== undefined && ((DETERMINERS.has(spoken) && DETERMINERS.has(written)) || (POINTERS.has(spoken) && POINTERS.has(written))));
}

function matchEnd<Value>(tokens: readonly Token[], place: number, entry: Entry<Value>, by: "stem" | "text"): number {
  const { stems } = entry;
  let plain = true;
  for (let k = 1; k < stems.length; k += 1) {
    if (!alike(tokens[place + k]?.[by], stems[k]!)) {
      plain = false;
      break;
    }
  }
  if (plain) return place + stems.length;
  if (!entry.parts) return 0;
  for (let gap = 1; gap <= LONGEST_GAP; gap += 1) {
    const token = tokens[place + gap];
    if (token === undefined || /[.?!;]/.test(tokens[place + gap - 1]!.after)) return 0;
    if (token[by] === stems[1]) return place + gap + 1;
  }
  return 0;
}
