/*
 * How a word sounds, roughly: its consonants without voice ("b" is "p") and every run of vowels as one "A". Sound codes
 * (sound.ts) leave vowels out, so that words split in pieces ("in jacked", "wharf a ring") agree with half the language
 * by them; here the pieces must have the syllables of the word too. The spelling rules are those of everyday English,
 * in southern British speech: an r that no vowel follows is not heard, nor is an h. Common practice, no source.
 */

/** In this order: each is written by the letters that the ones before it left. */
const RULES: readonly (readonly [RegExp, string])[] = [
  [/[^a-z]/g, ""],
  // Silent letters.
  [/^(?:kn|gn|pn)/, "n"],
  [/^wr/, "r"],
  [/^ps/, "s"],
  [/^x/, "s"],
  [/^gh/, "g"],
  [/igh/g, "i"],
  [/gh/g, ""],
  [/mb$/, "m"],
  // Endings: "fridges", "needle", "glucose", "jacked".
  [/([sxzc]|ch|sh|[cdg]g?)es$/, "$1as"],
  [/([^aeiouylrw])les?$/, "$1al"],
  [/([aeiouy][^aeiouy]+)e(s?)$/, "$1$2'"],
  [/([^aeiouytd])ed$/, "$1t"],
  [/([aeiouy])ed$/, "$1t"],
  // Two letters, one sound; "j", "ch" and "sh" are taken for one another.
  [/ph/g, "f"],
  [/th/g, "0"],
  [/tch|dg|[cs]h|[tsc]i(?=[oa])|j/g, "X"],
  [/g(?=e|i[aeou]|y|'|s')/g, "X"],
  [/qu/g, "kw"],
  [/ck/g, "k"],
  [/sc(?=[eiy])/g, "s"],
  [/c(?=[eiy'])/g, "s"],
  [/[cqg]/g, "k"],
  [/x/g, "ks"],
  [/nk(s?)$/, "n$1"],
  // Voice.
  [/b/g, "p"],
  [/d/g, "t"],
  [/v/g, "f"],
  [/z/g, "s"],
  [/h|'/g, ""],
  [/([aeiouy])w/g, "$1"],
  [/[aeiouy]+/g, "A"],
  [/r(?![A])(?!$)/g, ""],
  [/([^A])\1+/g, "$1"],
];

const made = new Map<string, string>();
const MOST_KEPT = 50_000;

/**
 * The sounds of one written word. An r at its end stays, as "r": whether it is heard follows from what comes next.
 * @param word lower case letters.
 */
export function skeletonOf(word: string): string {
  const known = made.get(word);
  if (known !== undefined) return known;
  if (made.size >= MOST_KEPT) made.clear();
  const skeleton = RULES.reduce((text, [from, to]) => text.replace(from, to), word).toUpperCase().replace(/R$/, "r");
  made.set(word, skeleton);
  return skeleton;
}

/** Pieces said together: sounds that meet are one ("la" and "an"), and an r is heard before a vowel only. */
export function saidTogether(left: string, right: string): string {
  if (left.endsWith("r")) return saidTogether(right.startsWith("A") ? `${left.slice(0, -1)}R` : left.slice(0, -1), right);
  return left.endsWith(right.charAt(0)) ? left + right.slice(1) : left + right;
}

/** The whole of what is said together. */
export function heardSkeleton(skeleton: string): string {
  return skeleton.endsWith("r") ? skeleton.slice(0, -1) : skeleton;
}
