import type { Transcript } from "../transcript/types.ts";
import type { WordSpan } from "./types.ts";

/** The words of a span as written, noises and what could not be heard among them. */
export function textsIn({ words }: Transcript, { first, end }: WordSpan): string[] {
  return words.slice(first, end).map(({ text }) => text);
}

/** The same without noises and what could not be heard. */
export function spokenTextsIn({ words }: Transcript, { first, end }: WordSpan): string[] {
  return words.slice(first, end).filter(({ kind }) => kind === "word").map(({ text }) => text);
}

/** Whether a full stop, a question mark or an exclamation mark closes the word, within quotes and brackets too. */
export function closesSentence(text: string): boolean {
  return /[.?!]["')]*$/.test(text);
}
