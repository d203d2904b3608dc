import { AUXILIARIES } from "./question-form.ts";
import { speechPhrases } from "./speech-phrases.ts";
import type { Token } from "./token.ts";

const TAGS = speechPhrases("tags");
const LEADING_TAGS = speechPhrases("leading_tags");

/** A tag of so many words is a question of its own; "okay?" and "all right?" only hold the listener. */
export const ASKING_TAG = 3;

/** Cuts "okay?", "does that make sense?" from behind a statement; a sentence that is all tag stays whole. */
export function withoutTag(tokens: readonly Token[], first: number, end: number): number {
  for (let place = Math.max(first + 1, end - 5); place < end; place += 1) {
    const hit = TAGS.at(tokens, place);
    if (hit === null || hit.end !== end) continue;
    const before = tokens[place - 1]!;
    if (before.after === "," || place - first >= 4) return place;
  }
  return end;
}

/** Behind a tag in mid-sentence at most so many words are asked with it. */
const BEHIND_A_TAG = 9;

/** Whether "..., don't you?" makes a question of the statement before it, and "..., don't you, not just at first?" of both. */
export function endsInLeadingTag(tokens: readonly Token[], first: number, end: number): boolean {
  for (let place = Math.max(first + 3, end - BEHIND_A_TAG - 3); place < end; place += 1) {
    const tag = LEADING_TAGS.at(tokens, place);
    if (tag !== null && tag.end < end && end - tag.end <= BEHIND_A_TAG && tokens[place - 1]!.after === "," && tokens[tag.end - 1]!.after === "," && !/^(and|then|so|but|okay|right|because)$/.test(tokens[tag.end]!.text)) return true;
  }
  for (let place = Math.max(first + 1, end - 5); place < end; place += 1) {
    if (LEADING_TAGS.at(tokens, place)?.end === end && tokens[place - 1]!.after === ",") return true;
  }
  return false;
}

/** So far behind a statement its tag may stand. */
const TAG_REACH = 12;

/** "It can't get through, can it": a verb taken up again with a pronoun asks for no more than a nod. */
export function isTag(tokens: readonly Token[], place: number, first: number): boolean {
  const verb = tokens[place]!.text;
  const denied = tokens[place + 1]?.text === "not";
  const subject = tokens[place + (denied ? 2 : 1)];
  if (place === first || !AUXILIARIES.has(verb) || !/^(it|he|she|they|we|there)$/.test(subject?.text ?? "")) return false;
  // "Three months, is it, no": speakers ask themselves.
  if (tokens[place - 1]!.after === "," && subject!.after === "," && /^(no|yes|yeah|well|um|uh|er|erm|let|hang|i)$/.test(tokens[place + (denied ? 3 : 2)]?.text ?? "")) return true;
  for (let k = Math.max(first, place - TAG_REACH); k < place - 1; k += 1) {
    if (tokens[k]!.text === verb && (tokens[k + 1]!.text === "not") !== denied) return true;
  }
  return false;
}
