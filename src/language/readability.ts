import { syllablesIn } from "./syllables.ts";

/** A passage counted. */
export interface TextCounts {
  sentences: number;
  words: number;
  syllables: number;
}

/**
 * Flesch-Kincaid grade: 0.39 words/sentences + 11.8 syllables/words - 15.59 (Kincaid, Fishburne, Rogers and Chissom
 * 1975, "Derivation of new readability formulas for Navy enlisted personnel", Research Branch Report 8-75).
 * @throws RangeError without a sentence or a word: a grade of nothing is no grade.
 */
export function fleschKincaidGrade({ sentences, words, syllables }: TextCounts): number {
  if (sentences <= 0 || words <= 0) throw new RangeError("a reading grade needs at least one sentence of one word");
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** @param words written words, punctuation attached; a sentence ends with `.`, `?` or `!`, or with the last word. */
export function countText(words: readonly string[]): TextCounts {
  let sentences = 0;
  let counted = 0;
  let syllables = 0;
  let open = false;
  for (const word of words) {
    const spoken = syllablesIn(word);
    if (spoken > 0) {
      counted += 1;
      syllables += spoken;
      open = true;
    }
    if (open && /[.?!…]["'”’)\]]*$/u.test(word) && !ABBREVIATION.test(word)) {
      sentences += 1;
      open = false;
    }
  }
  return { sentences: sentences + (open ? 1 : 0), words: counted, syllables };
}

/** A stop behind these ends no sentence. */
const ABBREVIATION = /^(mr|mrs|ms|dr|st|prof|e\.g|i\.e|etc|vs|no)\.$/i;
