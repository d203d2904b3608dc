import type { Role, Station } from "../../station/types.ts";
import type { Word } from "../../transcript/types.ts";

/** The words of one role inside the station, marked stretches only, in order. Noises and unheard words are no words. */
export function spokenBy(station: Station, role: Role): Word[] {
  const { words } = station.transcript;
  return station.sentences
    .filter((sentence) => sentence.inStation && sentence.role === role)
    .flatMap((sentence) => words.slice(sentence.first, sentence.end))
    .filter((word) => word.kind === "word" && !station.excluded.some((span) => word.index >= span.first && word.index < span.end));
}

export function isEstimated(words: readonly Word[]): boolean {
  return words.some((word) => word.timing === "estimated");
}
