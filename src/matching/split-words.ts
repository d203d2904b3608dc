import { wordWeight } from "../language/lexicon.ts";
import { likeness, type SoundIndex } from "../language/sound.ts";
import { heardSkeleton, saidTogether, skeletonOf } from "../language/sound-skeleton.ts";
import { isTradeWord, stem } from "../language/stem.ts";
import type { Token } from "../language/token.ts";

/*
 * Two finders, because each hears what the other misses. Sound codes leave vowels out and keep letters that a spelling
 * rule would hold for silent: they find "glargine" in "glar gene", "double" in "dub bull", "prednisolone" in "pred nice
 * alone". All sounds, vowels too, part short words and plain ones from what they only resemble: they find "glucose" in
 * "glue coast", "methotrexate" in "method tracks ate", "simvastatin" in "sim va statin".
 */

/** A word of the rubric that so many tokens may have been. */
export interface SplitWord {
  text: string;
  parts: number;
}

/** So many little words may be one long word of the rubric ("farm assist", "in hail her", "i be pro fen"). */
const MOST_PARTS = 4;
/** Of these by sound codes alone; shorter pieces of words are everyday words. */
const BY_CODES = { shortest: 6, long: 7, part: 3 } as const;

/**
 * Words that the tokens from here on may be the pieces of by their sound codes. A shorter word, of six letters, only where
 * the first piece is a word and none of the trade's ("lance it", "dub bull", but no "bloods" of "bull dose").
 */
export function splitBySoundCodes(tokens: readonly Token[], place: number, sounds: SoundIndex): readonly SplitWord[] {
  const start = tokens[place]!;
  let joined = start.text;
  let known = isKnown(start);
  const shortest = known || start.text.length < BY_CODES.part ? BY_CODES.long : BY_CODES.shortest;
  for (let parts = 2; parts <= MOST_PARTS; parts += 1) {
    const next = tokens[place + parts - 1];
    // Nobody splits a word over a comma.
    if (next === undefined || tokens[place + parts - 2]!.after !== "") return [];
    joined += next.text;
    // Everyday words that merely sound like a long one together ("lovely to", leaflet) were meant as they are.
    known &&= isKnown(next);
    if (joined.length < shortest || known) continue;
    const found = sounds.alike(joined).filter((word) => word.length >= shortest && (word.length >= BY_CODES.long || joined.length <= word.length + 1));
    if (found.length > 0) return found.map((text) => ({ text, parts }));
  }
  return [];
}

/** Shorter words, and those of fewer sounds, are what many everyday words say together ("back in", "not on"). */
const SHORTEST = { word: 5, skeleton: 5, prefix: 3 } as const;
/**
 * Words that sound alike must look alike too (Jaro-Winkler), the shorter the more, by sounds from five on. Set on clean
 * talk and drills, where whatever is found is wrong: 187000 words give some 350 words of five sounds, 90 of six, 30
 * of more, nearly all of them another form of what was said ("swallow in", swallowing) or of no use to a rubric.
 */
const LEAST_LIKENESS = [0.8, 0.72, 0.7, 0.62] as const;
/** Everyday words alone ("farmer cyst", "method tracks ate") are one long word only where they have so many of its sounds. */
const PLAIN_WORDS_SOUND = 8;
/** A "t" behind a word of so many sounds is the recogniser's own ("glue coast"). */
const T_BEHIND = 6;

/** Finds the words of a rubric that a recogniser may have split into shorter ones, by all their sounds, vowels too. */
export class SplitIndex {
  private readonly words = new Map<string, string[]>();
  private readonly prefixes = new Set<string>();
  /** Each word with its sounds behind it: worked out beforehand for the shipped rubrics, where starting must be fast. */
  readonly sounds: readonly string[];

  constructor(sounds: readonly string[]) {
    this.sounds = sounds;
    for (let at = 0; at < sounds.length; at += 2) {
      const [word, skeleton] = [sounds[at]!, sounds[at + 1]!];
      const list = this.words.get(skeleton);
      if (list === undefined) this.words.set(skeleton, [word]);
      else list.push(word);
      this.prefixes.add(skeleton.slice(0, SHORTEST.prefix));
    }
  }

  /** @param vocabulary the rubric's words. */
  static of(vocabulary: Iterable<string>): SplitIndex {
    const sounds: string[] = [];
    for (const word of vocabulary) {
      if (word.length < SHORTEST.word || !/^[a-z]+$/.test(word) || wordWeight(stem(word)) === 0) continue;
      const skeleton = heardSkeleton(skeletonOf(word));
      if (skeleton.length >= SHORTEST.skeleton) sounds.push(word, skeleton);
    }
    return new SplitIndex(sounds);
  }

  /** Words that the tokens from here on may be the pieces of; the fewest pieces that are one. */
  at(tokens: readonly Token[], place: number): readonly SplitWord[] {
    const start = tokens[place]!;
    let joined = start.text;
    let skeleton = skeletonOf(joined);
    let known = isKnown(start);
    for (let parts = 2; parts <= MOST_PARTS; parts += 1) {
      const next = tokens[place + parts - 1];
      if (next === undefined || tokens[place + parts - 2]!.after !== "") return [];
      joined += next.text;
      skeleton = saidTogether(skeleton, skeletonOf(next.text));
      known &&= isKnown(next);
      const heard = heardSkeleton(skeleton);
      if (heard.length >= SHORTEST.prefix && !this.prefixes.has(heard.slice(0, SHORTEST.prefix))) return [];
      const found = this.words.get(heard) ?? (heard.length > T_BEHIND && heard.endsWith("T") ? this.words.get(heard.slice(0, -1)) : undefined);
      if (found === undefined || (known && heard.length < PLAIN_WORDS_SOUND)) continue;
      const least = LEAST_LIKENESS[Math.min(heard.length - SHORTEST.skeleton, LEAST_LIKENESS.length - 1)]!;
      const alike = found.filter((word) => likeness(joined, word) >= least);
      if (alike.length > 0) return alike.map((text) => ({ text, parts }));
    }
    return [];
  }
}

const isKnown = ({ text, stem: stemmed }: Token) => isTradeWord(text) || wordWeight(stemmed) === 0;
