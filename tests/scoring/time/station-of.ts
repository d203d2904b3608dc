import type { Role, Sentence, Station } from "../../../src/station/types.ts";
import type { Segment, Timing, Word } from "../../../src/transcript/types.ts";

/** One stretch of an invented station. Its words share `from` to `to` evenly; null for no times. */
export interface Stretch {
  role: Role;
  text: string;
  from?: number;
  to?: number;
  /** Of its words; `measured` unless told. */
  timing?: Timing;
}

/** Invented: a station of one segment and one sentence a stretch, all inside unless `outside` names the role. */
export function stationOf(stretches: readonly Stretch[], more: Partial<Station> & { timing?: "word" | "segment" | "none" } = {}): Station {
  const words: Word[] = [];
  const segments: Segment[] = [];
  const sentences: Sentence[] = [];
  for (const [index, { role, text, from, to, timing = from === undefined ? "none" : "measured" }] of stretches.entries()) {
    const written = text.split(" ");
    const firstWord = words.length;
    const step = from === undefined || to === undefined ? null : (to - from) / written.length;
    written.forEach((word, place) => {
      words.push({
        index: words.length, text: word, start: step === null ? null : from! + place * step, end: step === null ? null : from! + (place + 1) * step, timing,
        segment: index, line: index + 1, kind: word === "[inaudible]" ? "unintelligible" : /^\[.*\]$/.test(word) ? "sound" : "word",
      });
    });
    segments.push({ index, speaker: role, start: from ?? null, end: to ?? null, timing, firstWord, endWord: words.length, line: index + 1 });
    sentences.push({ first: firstWord, end: words.length, role, confidence: 1, inStation: role === "candidate" || role === "patient" });
  }
  const duration = stretches.reduce<number | null>((latest, { to }) => (to === undefined ? latest : Math.max(latest ?? 0, to)), null);
  const { timing = duration === null ? "none" : "word", ...rest } = more;
  return {
    transcript: { file: "invented.txt", format: "json", words, segments, headings: [], frontMatter: {}, timing, duration, findings: [] },
    sentences,
    turns: sentences.map(({ first, end, role, confidence }) => ({ first, end, role, confidence })),
    start: { word: 0, time: stretches[0]!.from ?? null, reason: "the first word", confidence: 1 },
    end: { word: words.length, time: duration, reason: "the last word", confidence: 1 },
    restarts: [],
    excluded: [],
    roleSource: "labels",
    labelRoles: [],
    findings: [],
    ...rest,
  };
}

/** So many words of one syllable, with a full stop behind every tenth. */
export function talk(count: number): string {
  return Array.from({ length: count }, (_, place) => (place % 10 === 9 || place === count - 1 ? "shake." : "shake")).join(" ");
}
