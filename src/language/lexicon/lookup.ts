import { tokenise } from "../token.ts";
import type { LexiconFile } from "./schema.ts";

/**
 * The lexicon turned into tables to look words up in, as plain data: 15,000 entries are too many to read at every
 * start. `src/build/stems.mjs` writes it to lookup.json; a test says when that is stale.
 */
export interface Lookup {
  /** For a stem of a rubric, the keys it may be found by, parted by blanks. */
  written: Record<string, string>;
  /** For a stem that was heard, the keys it may stand for. */
  spoken: Record<string, string>;
  /** Phrases by their first stem: all stems parted by blanks, and the key. */
  writtenPhrases: Record<string, [stems: string, key: string][]>;
  spokenPhrases: Record<string, [stems: string, key: string][]>;
}

export function buildLookup(synonyms: LexiconFile<"synonyms">, wordings: LexiconFile<"wordings">): Lookup {
  const lookup: Lookup = { written: {}, spoken: {}, writtenPhrases: {}, spokenPhrases: {} };
  const enter = (side: "written" | "spoken", entry: string, key: string) => {
    // "hold-breath" names a set that has no single word; it is an entry for rubrics, never spoken.
    const stems = tokenise(entry.split(/\s+/)).map((token) => token.stem);
    const first = stems[0];
    if (first === undefined) return;
    if (stems.length === 1) {
      const keys = keysIn(lookup[side], first);
      if (!keys.includes(key)) lookup[side][first] = [...keys, key].join(" ");
    } else (Object.hasOwn(lookup[`${side}Phrases`], first) ? lookup[`${side}Phrases`][first]! : (lookup[`${side}Phrases`][first] = [])).push([stems.join(" "), key]);
  };
  for (const [letter, sets] of [["s", synonyms.same], ["n", synonyms.near]] as const) {
    sets.forEach((entries, place) => {
      for (const entry of entries) {
        enter("written", entry, `${letter}${place}`);
        enter("spoken", entry, `${letter}${place}`);
      }
    });
  }
  const heads = ([["w", wordings.sure], ["l", wordings.likely]] as const).flatMap(([letter, all]) => Object.entries(all).map(([head, alternatives], place) => ({ head, alternatives, key: `${letter}${place}` })));
  // Not for what the head is the same as: "normal" may stand for "regular", and still says nothing of "every day".
  for (const { alternatives, key } of heads) for (const alternative of alternatives) enter("spoken", alternative, key);
  for (const { head, key } of heads) {
    enter("written", head, key);
    if (head.includes(" ")) enter("spoken", head, key);
  }
  return lookup;
}

/** The keys of a table's entry. */
export function keysIn(table: Record<string, string>, stemmed: string): string[] {
  return Object.hasOwn(table, stemmed) ? table[stemmed]!.split(" ") : [];
}
