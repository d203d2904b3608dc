/** A phrase of the lexicon that opens with "is" or "was", in every form of "be": whoever edits the list writes it once. */
export function formsOfBe(phrase: string): string[] {
  return /^(is|was) /.test(phrase) ? ["is", "are", "was", "were", "be", "being"].map((form) => phrase.replace(/^(is|was) /, `${form} `)) : [phrase];
}
