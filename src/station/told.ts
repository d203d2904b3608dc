import type { Transcript, Word } from "../transcript/types.ts";
import type { Role, Sentence, Station } from "./types.ts";
import { closesSentence } from "./written-words.ts";

/** Something said, and by whom: words parted by blanks, "[...]" where it could not be understood. */
export interface ToldTurn {
  role: Role;
  says: string;
}

/**
 * A station whose turns and roles are told instead of found, without times: for the matcher alone, when a rubric is
 * checked and when passages are judged. All of it is marked.
 * @param file what messages call it.
 */
export function toldStation(turns: readonly ToldTurn[], file: string): Station {
  const words: Word[] = [];
  const segments: Transcript["segments"] = [];
  const sentences: Sentence[] = [];
  turns.forEach(({ role, says }, index) => {
    const firstWord = words.length;
    for (const text of says.split(/\s+/)) {
      if (text !== "") words.push({ index: words.length, text, start: null, end: null, timing: "none", segment: index, line: index + 1, kind: /^\[.*\]$/.test(text) ? "unintelligible" : "word" });
    }
    segments.push({ index, speaker: role, start: null, end: null, timing: "none", firstWord, endWord: words.length, line: index + 1 });
    let first = firstWord;
    for (let place = firstWord; place < words.length; place += 1) {
      if (place < words.length - 1 && !closesSentence(words[place]!.text)) continue;
      sentences.push({ first, end: place + 1, role, confidence: 1, inStation: true });
      first = place + 1;
    }
  });
  const transcript: Transcript = { file, format: "text", words, segments, headings: [], frontMatter: {}, timing: "none", duration: null, findings: [] };
  return {
    transcript,
    sentences,
    turns: segments.map((segment, index) => ({ first: segment.firstWord, end: segment.endWord, role: turns[index]!.role, confidence: 1 })),
    start: { word: 0, time: null, reason: "told", confidence: 1 },
    end: { word: words.length, time: null, reason: "told", confidence: 1 },
    restarts: [],
    excluded: [],
    roleSource: "told",
    labelRoles: [],
    findings: [],
  };
}
