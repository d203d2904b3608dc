import { CLOCK } from "./clock.ts";
import marksYaml from "./marks.yaml";
import type { Word } from "./types.ts";

type MarkVocabulary = Record<"unintelligible" | "sounds" | "doubtTags" | "formatTags" | "standIns" | "insertions", string[]>;

const vocabulary = marksYaml as MarkVocabulary;
const UNINTELLIGIBLE = new Set(vocabulary.unintelligible);
const SOUNDS = new Set(vocabulary.sounds);
const DOUBT_TAGS = new Set(vocabulary.doubtTags);
const FORMAT_TAGS = new Set(vocabulary.formatTags);
const STAND_INS = new Set(vocabulary.standIns);
const INSERTIONS = new Set(vocabulary.insertions);

/** In round brackets or asterisks a mark is short; a longer one is a sentence in brackets. */
const MOST_ROUND_WORDS = 4;

/**
 * What a bracketed stretch is.
 * `text`: ordinary speech, brackets and all. `doubt`: speech that the transcriber doubts.
 * Otherwise the kind of the one Word that it becomes.
 */
export type MarkSense = "text" | "doubt" | Word["kind"];

/** `[...]`. By convention square brackets hold what is not speech; doubt, stand-ins and insertions are told apart. */
export function senseOfSquare(inner: string): MarkSense {
  const words = wordsOf(inner);
  if (words.length === 0) return /\?/.test(inner) ? "unintelligible" : /[♪♫]/.test(inner) ? "sound" : "text";
  if (words.some((word) => UNINTELLIGIBLE.has(word))) return "unintelligible";
  if (/\?\s*$/.test(inner)) return "doubt";
  if (words.some((word) => SOUNDS.has(word))) return "sound";
  if (words.every((word) => STAND_INS.has(word) || /^\d+$/.test(word))) return words.every((word) => /^\d+$/.test(word)) ? "text" : "word";
  if (words.length === 1 && INSERTIONS.has(words[0] ?? "")) return "text";
  return "sound";
}

/** `(...)`, `{...}` and `*...*`: speech unless the words are known for something else. */
export function senseOfRound(inner: string): MarkSense {
  const words = wordsOf(inner.replace(new RegExp(CLOCK, "g"), ""));
  if (words.length === 0) return /^\s*\?+\s*$/.test(inner) ? "unintelligible" : "text";
  const first = words[0] ?? "";
  const last = words[words.length - 1] ?? "";
  if (words.length > MOST_ROUND_WORDS) return "text";
  if (UNINTELLIGIBLE.has(first) || UNINTELLIGIBLE.has(last)) return "unintelligible";
  return SOUNDS.has(first) || SOUNDS.has(last) ? "sound" : "text";
}

/** A tag such as `<UNSURE>`, `</UNSURE>`, `<UNIN/>`, `<i>`. */
export type TagSense = "doubt-on" | "doubt-off" | "format" | "unintelligible" | "sound" | "word" | "pair" | "text";

/** `closes` tells whether the same text holds the end tag of that name. */
export function senseOfTag(tag: string, closes: boolean): TagSense {
  const name = (/[A-Za-z_][\w-]*/.exec(tag)?.[0] ?? "").toLowerCase();
  const alone = /\/\s*>$/.test(tag);
  const end = tag.startsWith("</");
  if (FORMAT_TAGS.has(name)) return "format";
  if (end) return DOUBT_TAGS.has(name) ? "doubt-off" : "pair";
  if (DOUBT_TAGS.has(name) && closes) return "doubt-on";
  if (closes && !alone) return "pair";
  const parts = name.split(/[_-]/);
  if (parts.some((part) => UNINTELLIGIBLE.has(part) || DOUBT_TAGS.has(part))) return "unintelligible";
  if (parts.some((part) => STAND_INS.has(part))) return "word";
  // "<not less>" without an end may be anything; only a known or self-closed tag is taken for a noise.
  return alone || parts.some((part) => SOUNDS.has(part)) ? "sound" : "text";
}

function wordsOf(inner: string): string[] {
  return inner.toLowerCase().match(/[\p{L}\p{N}]+(?:[-'’][\p{L}\p{N}]+)*/gu) ?? [];
}
