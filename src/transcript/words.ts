import type { DraftWord } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { MAX_MARK_LENGTH } from "./limits.ts";
import { senseOfRound, senseOfSquare, senseOfTag, type MarkSense } from "./marks.ts";
import type { Word } from "./types.ts";

/** A word and where it begins in the text it was read from, so that a caller can pin a time to it. */
export interface PlacedWord extends DraftWord {
  offset: number;
}

/** Longest bracket looked at, tags inside it included. */
const LONGEST_RAW_MARK = 5 * MAX_MARK_LENGTH;

const MARK = new RegExp(
  [
    `\\[[^\\[\\]]{0,${LONGEST_RAW_MARK}}\\]`,
    `\\(\\([^()]{0,${LONGEST_RAW_MARK}}\\)\\)`,
    `\\([^()]{1,${LONGEST_RAW_MARK}}\\)`,
    `\\{[^{}]{1,${LONGEST_RAW_MARK}}\\}`,
    `(?<!\\*)\\*[^*\\s][^*\\n]{0,${MAX_MARK_LENGTH}}\\*(?!\\*)`,
    "</?[A-Za-z_][\\w-]*(?:\\s[^<>]*)?/?>",
  ].join("|"),
  "g",
);

/**
 * Splits text into words at white space. A mark of something that is not speech ("[door closes]", "(laughs)",
 * "*coughs*", "<UNIN/>") becomes one Word; marks of doubt set `doubtful`; tags of formatting are taken away.
 * Every other character of the text is in exactly one word.
 */
export function readWords(text: string, line: number, log?: FindingLog): PlacedWord[] {
  const builder = new WordBuilder(text, line);
  const lastEnd = lastEndTags(text);
  const marks = new RegExp(MARK);
  let from = 0;
  for (let match = marks.exec(text); match !== null; match = marks.exec(text)) {
    const mark = match[0];
    const at = match.index;
    builder.text(from, at);
    if (mark.startsWith("<")) readTag(mark, at, builder, lastEnd, log);
    else if (!readBracket(mark, at, builder)) {
      // Ordinary brackets: only the sign itself is taken, since there may be tags behind it.
      builder.text(at, at + 1);
      marks.lastIndex = at + 1;
    }
    from = marks.lastIndex;
  }
  builder.text(from, text.length);
  return builder.finish();
}

/** False when the brackets hold ordinary speech. */
function readBracket(mark: string, at: number, builder: WordBuilder): boolean {
  const double = mark.startsWith("((");
  const inner = mark.slice(double ? 2 : 1, double ? -2 : -1);
  if (inner.replace(/<[^<>]*>/g, "").length > MAX_MARK_LENGTH) return false;
  const sense = double || /^\(\?.+\?\)$/s.test(mark) ? senseOfDoubt(inner) : mark.startsWith("[") ? senseOfSquare(inner) : senseOfRound(inner);
  if (sense === "text") return false;
  if (sense === "doubt") {
    // The signs of doubt are no part of the words; a single question mark in square brackets stays with its word.
    const skip = double ? 2 : mark.startsWith("(") ? 2 : 1;
    const keepEnd = mark.startsWith("[") ? 1 : skip;
    builder.doubt(true);
    builder.text(at + skip, at + mark.length - keepEnd);
    builder.doubt(false);
  } else builder.mark(mark, at, sense);
  return true;
}

/** `((...))` and `(? ... ?)`: doubted words, or nothing heard at all. Common practice in transcription, no source. */
function senseOfDoubt(inner: string): MarkSense {
  return /[\p{L}\p{N}]/u.test(inner) ? "doubt" : "unintelligible";
}

/** Where the last end tag of each name stands: whether a tag is ever closed, in one pass over the text. */
function lastEndTags(text: string): Map<string, number> {
  const places = new Map<string, number>();
  for (const match of text.matchAll(/<\/([A-Za-z_][\w-]*)\s*>/g)) places.set((match[1] ?? "").toLowerCase(), match.index);
  return places;
}

function readTag(mark: string, at: number, builder: WordBuilder, lastEnd: Map<string, number>, log?: FindingLog): void {
  const name = /[A-Za-z_][\w-]*/.exec(mark)?.[0] ?? "";
  const closes = (lastEnd.get(name.toLowerCase()) ?? -1) > at;
  const sense = senseOfTag(mark, closes);
  if (sense === "doubt-on") builder.doubt(true);
  else if (sense === "doubt-off") builder.doubt(false);
  else if (sense === "text") builder.text(at, at + mark.length);
  else if (sense === "format") {
    if (/^<(br|p|div)\b/i.test(mark)) builder.flush();
  } else if (sense === "pair") {
    log?.add({
      code: "SW-T14",
      severity: "info",
      line: builder.lineAt(at),
      message: `the tag ${mark} was left out, the words inside it were kept`,
      kind: `tag ${name.toLowerCase()}`,
    });
  } else builder.mark(mark, at, sense);
}

class WordBuilder {
  private readonly words: PlacedWord[] = [];
  private readonly source: string;
  private line: number;
  private lineFrom = 0;
  private open: { text: string; offset: number; kind: Word["kind"]; doubtful: boolean; mark: boolean } | null = null;
  private doubtful = false;

  constructor(source: string, line: number) {
    this.source = source;
    this.line = line;
  }

  doubt(on: boolean): void {
    this.doubtful = on;
  }

  text(from: number, to: number): void {
    const part = this.source.slice(from, to);
    for (const match of part.matchAll(/\s+|\S+/g)) {
      const run = match[0];
      if (/^\s/.test(run)) this.flush();
      else this.append(run, from + match.index);
    }
  }

  mark(text: string, offset: number, kind: Word["kind"]): void {
    if (this.open !== null && (this.open.mark || !isPunctuation(this.open.text))) this.flush();
    const whole = (this.open?.text ?? "") + text.replace(/\s+/g, " ");
    this.open = { text: whole, offset: this.open?.offset ?? offset, kind, doubtful: this.doubtful, mark: true };
  }

  flush(): void {
    if (this.open === null) return;
    const { text, offset, kind, doubtful, mark } = this.open;
    this.words.push({
      text,
      offset,
      line: this.lineAt(offset),
      kind: mark || !/^[♪♫♬]+$/.test(text) ? kind : "sound",
      ...(doubtful ? { doubtful } : {}),
    });
    this.open = null;
  }

  finish(): PlacedWord[] {
    this.flush();
    return this.words;
  }

  /** Offsets are asked for in rising order, so counting goes on from the last one. */
  lineAt(offset: number): number {
    for (; this.lineFrom < offset; this.lineFrom += 1) if (this.source[this.lineFrom] === "\n") this.line += 1;
    return this.line;
  }

  private append(run: string, offset: number): void {
    // After a mark only punctuation may touch it: "[laughs]yes" is a noise and a word.
    if (this.open?.mark === true && !isPunctuation(run)) this.flush();
    if (this.open === null) this.open = { text: run, offset, kind: "word", doubtful: this.doubtful, mark: false };
    else {
      // "<UNSURE>inhaler</UNSURE>," is one word, doubted in part.
      this.open.text += run;
      this.open.doubtful ||= this.doubtful;
    }
  }
}

function isPunctuation(text: string): boolean {
  return !/[\p{L}\p{N}]/u.test(text);
}
