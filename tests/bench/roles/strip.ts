// Takes the roles away: turns become paragraphs of about 20 seconds without a sign of who speaks,
// as speech-to-text gives them.
import type { Transcript } from "../../../src/transcript/types.ts";
import type { Consultation, Side } from "./corpora.ts";

/** Length of a paragraph: 20 seconds, or the words that 150 words per minute fit into them. */
const PARAGRAPH_SECONDS = 20;
const PARAGRAPH_WORDS = 50;

/** `written`: as the corpus has it. `bare`: lower case without punctuation. */
export type Style = "written" | "bare";
/** Where paragraphs break: at the end of a turn, or wherever the length is reached. */
export type Breaks = "turns" | "anywhere";

export interface Stripped {
  id: string;
  corpus: Consultation["corpus"];
  transcript: Transcript;
  /** The true role of every word. */
  sides: Side[];
  /** The turn of every word, 0-based. */
  turns: number[];
}

export function bareText(text: string): string {
  return text
    .toLowerCase()
    .replace(/(?<=\d)[.,](?=\d)/g, "\u0001")
    .replace(/[^\p{L}\p{N}'’\u0001-]+/gu, " ")
    .replace(/(?<![\p{L}\p{N}])['’-]+|['’-]+(?![\p{L}\p{N}])/gu, " ")
    .replaceAll("\u0001", ".")
    .replace(/\s+/g, " ")
    .trim();
}

export function strip(consultation: Consultation, style: Style, breaks: Breaks = "turns", offset = 0): Stripped {
  const transcript: Transcript = {
    file: consultation.id,
    format: "text",
    words: [],
    segments: [],
    headings: [],
    frontMatter: {},
    timing: "none",
    duration: null,
    findings: [],
  };
  const sides: Side[] = [];
  const turns: number[] = [];
  let opened: number | null = null;
  let from = 0;
  let length = offset;
  const close = (): void => {
    if (transcript.words.length === from) return;
    const index = transcript.segments.length;
    transcript.segments.push({ index, speaker: null, start: null, end: null, timing: "none", firstWord: from, endWord: transcript.words.length, line: index + 1 });
    from = transcript.words.length;
    length = 0;
    opened = null;
  };
  consultation.turns.forEach((turn, at) => {
    opened ??= turn.start;
    for (const text of (style === "bare" ? bareText(turn.text) : turn.text).split(/\s+/)) {
      if (text === "") continue;
      if (breaks === "anywhere" && length >= PARAGRAPH_WORDS) close();
      transcript.words.push({ index: transcript.words.length, text, start: null, end: null, timing: "none", segment: transcript.segments.length, line: transcript.segments.length + 1, kind: "word" });
      sides.push(turn.side);
      turns.push(at);
      if (/[\p{L}\p{N}]/u.test(text)) length++;
    }
    const full = turn.end === null || opened === null ? length >= PARAGRAPH_WORDS : turn.end - opened >= PARAGRAPH_SECONDS;
    if (breaks === "turns" && full) close();
  });
  close();
  return { id: consultation.id, corpus: consultation.corpus, transcript, sides, turns };
}
