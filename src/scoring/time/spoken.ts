import type { Role, Station } from "../../station/types.ts";
import type { Word } from "../../transcript/types.ts";

/** Everything one role uttered inside the station, marked stretches only, in order: words, and what could not be heard. */
export function utteredBy(station: Station, role: Role): Word[] {
  const { words } = station.transcript;
  return station.sentences
    .filter((sentence) => sentence.inStation && sentence.role === role)
    .flatMap((sentence) => words.slice(sentence.first, sentence.end))
    .filter((word) => word.kind !== "sound" && !station.excluded.some((span) => word.index >= span.first && word.index < span.end));
}

/** A lone dash or comma is written as a word and spoken as none. */
export function isSpokenWord(word: Word): boolean {
  return word.kind === "word" && /[\p{L}\p{N}]/u.test(word.text);
}

/** The words of one role inside the station. Noises and unheard words are no words. */
export function spokenBy(station: Station, role: Role): Word[] {
  return utteredBy(station, role).filter(isSpokenWord);
}

export function isEstimated(words: readonly Word[]): boolean {
  return words.some((word) => word.timing === "estimated");
}
