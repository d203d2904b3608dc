import { conceptsOf } from "../language/lexicon.ts";
import { tokenise, type Token } from "../language/token.ts";
import { NAME, readPhrase, type Slot } from "./phrase.ts";
import type { Term } from "./response.ts";
import type { WordGroup } from "./word-group.ts";

/** A phrase read once: its variants, and the stems any of them uses. */
export interface PreparedPhrase {
  text: string;
  variants: Slot[][];
  stems: Set<string>;
  words: Set<string>;
}

/** Reads each phrase of a rubric once, however many passes go over it. */
export class Phrasebook {
  private readonly known = new Map<string, PreparedPhrase>();
  private readonly termKeys = new Map<string, Term["keys"]>();
  private readonly wordTokens = new Map<string, Token[]>();

  read(text: string): PreparedPhrase {
    let prepared = this.known.get(text);
    if (prepared === undefined) {
      prepared = { text, variants: readPhrase(text), stems: new Set(), words: new Set() };
      for (const variant of prepared.variants) {
        for (const slot of variant) {
          if (typeof slot === "string") continue;
          for (const word of slot.words) {
            for (const token of this.tokensOf(word)) {
              prepared.stems.add(token.stem);
              prepared.words.add(token.text);
            }
          }
        }
      }
      this.known.set(text, prepared);
    }
    return prepared;
  }

  /** Whether any variant of a phrase has the words of a notion, one behind the other; at a place of alternatives each of them must. @param unit of its number */
  says({ variants }: PreparedPhrase, group: WordGroup, unit: string | null = null): boolean {
    const single = new Set(group.runs.flatMap((run) => (run.length === 1 ? run[0]! : [])));
    const one = (word: string) => this.keysAt([word]).some((keys) => [...keys].some((key) => single.has(key)));
    return variants.some((given) => {
      // The number brings its unit along.
      const slots = given.map((slot): Slot => (slot === "quantity" && unit !== null ? { words: [unit] } : slot));
      if (slots.some((slot) => typeof slot !== "string" && slot.words.every(one))) return true;
      return this.runs(slots, group.runs.filter(({ length }) => length > 1));
    });
  }

  /** Whether a phrase has the words of a notion, one behind the other, in any of its variants. */
  names({ variants }: PreparedPhrase, group: WordGroup): boolean {
    return variants.some((slots) => this.runs(slots, group.runs));
  }

  private runs(slots: readonly Slot[], runs: WordGroup["runs"]): boolean {
    const places = slots.flatMap((slot) => (typeof slot === "string" ? [new Set(slot === "name" ? [NAME] : [])] : this.keysAt(slot.words)));
    return runs.some((run) => places.some((_, start) => run.every((keys, place) => keys.some((key) => places[start + place]?.has(key) === true))));
  }

  /** Keys at each token of a slot; of several words that stand for one another, those of all. */
  private keysAt(words: readonly string[]): Set<string>[] {
    const places: Set<string>[] = [];
    for (const word of words) {
      this.tokensOf(word).forEach(({ stem }, place) => {
        const keys = (places[place] ??= new Set());
        keys.add(stem);
        for (const set of conceptsOf(stem)) keys.add(set);
      });
    }
    return places;
  }

  /** One list for all the terms that have these words, so that what it finds in a transcript is looked up once. */
  keysFor(words: string, make: () => Term["keys"]): Term["keys"] {
    let keys = this.termKeys.get(words);
    if (keys === undefined) this.termKeys.set(words, (keys = make()));
    return keys;
  }

  tokensOf(word: string): Token[] {
    let tokens = this.wordTokens.get(word);
    if (tokens === undefined) {
      tokens = tokenise([word]);
      this.wordTokens.set(word, tokens);
    }
    return tokens;
  }
}
