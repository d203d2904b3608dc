import { compiledRubric } from "../../../src/mark.ts";
import { matchStation } from "../../../src/matching/match.ts";
import type { Matches } from "../../../src/matching/types.ts";
import { contextOf } from "../../../src/scoring/context.ts";
import { judgeElement } from "../../../src/scoring/elements.ts";
import type { Station } from "../../../src/station/types.ts";
import type { Transcript, Word } from "../../../src/transcript/types.ts";
import { rubricNamed, type Label, type Passage } from "./passages.ts";

/** A passage as a whole station with its roles told: the matcher is judged, not the reading of roles. */
export function stationOf({ id, turns }: Pick<Passage, "id" | "turns">): Station {
  const words: Word[] = [];
  const segments: Transcript["segments"] = [];
  const sentences: Station["sentences"] = [];
  turns.forEach(({ role, says }, index) => {
    const firstWord = words.length;
    for (const text of says.split(/\s+/).filter(Boolean)) words.push({ index: words.length, text, start: null, end: null, timing: "none", segment: index, line: index + 1, kind: /^\[.*\]$/.test(text) ? "unintelligible" : "word" });
    segments.push({ index, speaker: role, start: null, end: null, timing: "none", firstWord, endWord: words.length, line: index + 1 });
    let first = firstWord;
    for (let place = firstWord; place < words.length; place += 1) {
      if (place < words.length - 1 && !/[.?!]["')]*$/.test(words[place]!.text)) continue;
      sentences.push({ first, end: place + 1, role, confidence: 1, inStation: true });
      first = place + 1;
    }
  });
  const transcript: Transcript = { file: id, format: "text", words, segments, headings: [], frontMatter: {}, timing: "none", duration: null, findings: [] };
  return {
    transcript,
    sentences,
    turns: segments.map((segment, index) => ({ first: segment.firstWord, end: segment.endWord, role: turns[index]!.role, confidence: 1 })),
    start: { word: 0, time: null, reason: "", confidence: 1 },
    end: { word: words.length, time: null, reason: "", confidence: 1 },
    restarts: [],
    excluded: [],
    roleSource: "told",
    labelRoles: [],
    findings: [],
  };
}

const LABEL_OF: Record<string, Label> = { complete: "right", incorrect: "wrong", absent: "absent", "cannot-tell": "unclear" };

export interface Reading {
  label: Label;
  confidence: number;
  matches: Matches;
  /** Items of the rubric that the passage earns wholly or in part. */
  earned: string[];
}

/** What the sheet would say of the passage's element. */
export function toolReading(passage: Passage): Reading {
  const rubric = rubricNamed(passage.rubric);
  const station = stationOf(passage);
  const matches = matchStation(station, compiledRubric(rubric));
  const context = contextOf(station, rubric, matches, rubric.time.limit, rubric.time.target);
  const element = rubric.sections.flatMap((section) => section.items).find((item) => item.id === passage.item)?.elements.find((candidate) => candidate.id === passage.element);
  if (element === undefined) throw new Error(`${passage.id}: ${passage.rubric} has no element ${passage.item}/${passage.element}`);
  const judged = judgeElement(context, passage.item, element);
  return { label: LABEL_OF[judged.content]!, confidence: judged.confidence, matches, earned: [...new Set(matches.elements.filter(({ verdict }) => verdict === "right").map(({ item }) => item))] };
}
