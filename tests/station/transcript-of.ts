import type { Transcript } from "../../src/transcript/types.ts";

/** Seconds a word in invented transcripts with times. */
const WORD_SECONDS = 0.4;

/**
 * An invented transcript: each line is a segment, `Label: words` or words alone, `[m:ss]` before it for times,
 * `# text` for a heading. Only the shapes that these tests need; the reader proper is tested elsewhere.
 */
export function transcriptOf(text: string, file = "rehearsal.txt"): Transcript {
  const transcript: Transcript = { file, format: "text", words: [], segments: [], headings: [], frontMatter: {}, timing: "none", duration: null, findings: [] };
  text.split("\n").forEach((raw, at) => {
    const line = raw.trim();
    if (line === "") return;
    if (line.startsWith("#")) {
      transcript.headings.push({ text: line.replace(/^#+\s*/, ""), line: at + 1, beforeWord: transcript.words.length });
      return;
    }
    const match = /^(?:\[(\d+):(\d+)\]\s*)?(?:([A-Z][\w ]{0,30}):\s+)?(.*)$/.exec(line)!;
    const start = match[1] === undefined ? null : Number(match[1]) * 60 + Number(match[2]);
    const words = match[4]!.split(/\s+/);
    const index = transcript.segments.length;
    const firstWord = transcript.words.length;
    words.forEach((word, place) => {
      const from = start === null ? null : start + place * WORD_SECONDS;
      const kind = /^\[.*\]$/.test(word) ? "sound" : "word";
      transcript.words.push({ index: transcript.words.length, text: word, start: from, end: from === null ? null : from + WORD_SECONDS, timing: start === null ? "none" : "estimated", segment: index, line: at + 1, kind });
    });
    const end = start === null ? null : start + words.length * WORD_SECONDS;
    transcript.segments.push({ index, speaker: match[3] ?? null, start, end, timing: start === null ? "none" : "measured", firstWord, endWord: transcript.words.length, line: at + 1 });
    if (end !== null) {
      transcript.timing = "segment";
      transcript.duration = Math.max(transcript.duration ?? 0, end);
    }
  });
  return transcript;
}
