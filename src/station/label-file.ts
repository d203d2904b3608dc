import type { Word } from "../transcript/types.ts";
import type { Role, Sentence, Station } from "./types.ts";

/** First line of the front matter, and of the JSON form: the version of the label file. */
export const LABEL_VERSION = "labels@1";

/** Headings of the label file, which say where the station starts and ends. */
export const LABEL_HEADINGS = { before: "Before the station", station: "Station", after: "After the station" } as const;

const NAMES: Readonly<Record<Role, string>> = { candidate: "Candidate", patient: "Patient", examiner: "Examiner", announcer: "Announcer", unknown: "Unknown" };

/** A turn longer than this many words is written sentence by sentence, so that a person can correct a part of it. */
const LONGEST_LINE_WORDS = 60;

/** One sentence in the JSON form. Times in seconds, null where the transcript has none. */
export interface LabelSentence {
  text: string;
  start: number | null;
  end: number | null;
  role: Role;
  confidence: number;
  inStation: boolean;
  /** The label of the transcript that this was made from. Not called `speaker`: read back, the role is what counts, so that a corrected role is obeyed. */
  label?: string;
  words: { text: string; start: number | null; end: number | null }[];
}

export interface LabelDocument {
  saidwell: typeof LABEL_VERSION;
  file: string;
  station: { start: number | null; end: number | null; startReason: string; endReason: string };
  sentences: LabelSentence[];
}

const round = (seconds: number | null): number | null => (seconds === null ? null : Math.round(seconds * 1000) / 1000);

function place(station: Station, word: number): keyof typeof LABEL_HEADINGS {
  return word < station.start.word ? "before" : word < station.end.word ? "station" : "after";
}

function startOf(words: readonly Word[]): number | null {
  return words.find((word) => word.start !== null)?.start ?? null;
}

function endOf(words: readonly Word[]): number | null {
  return words.findLast((word) => word.end !== null)?.end ?? null;
}

/** `m:ss.mmm`, minutes past sixty and all. */
function clock(seconds: number): string {
  const milliseconds = Math.round(seconds * 1000);
  const minutes = Math.floor(milliseconds / 60_000);
  return `${minutes}:${((milliseconds % 60_000) / 1000).toFixed(3).padStart(6, "0")}`;
}

/** Lines of the text form: sentences of one role and place, joined while they stay short. */
function linesOf(station: Station): Sentence[][] {
  const lines: Sentence[][] = [];
  for (const sentence of station.sentences) {
    const last = lines[lines.length - 1];
    const opener = last?.[0];
    const joins =
      last !== undefined && opener !== undefined && opener.role === sentence.role && place(station, opener.first) === place(station, sentence.first) && sentence.end - opener.first <= LONGEST_LINE_WORDS;
    if (joins) last.push(sentence);
    else lines.push([sentence]);
  }
  return lines;
}

/**
 * The transcript with roles and times, as text that a person corrects and marks again: the label of a line,
 * the heading it stands under, or a line cut in two. Reading it back gives the same words, roles and edges.
 */
export function writeLabelText(station: Station): string {
  const { transcript } = station;
  const out = ["---", `saidwell: ${LABEL_VERSION}`, `source: ${transcript.file.replace(/\s+/g, " ")}`, "---"];
  let under: keyof typeof LABEL_HEADINGS | undefined;
  for (const line of linesOf(station)) {
    const first = line[0]!.first;
    const end = line[line.length - 1]!.end;
    const words = transcript.words.slice(first, end);
    const here = place(station, first);
    if (here !== under) out.push("", `# ${LABEL_HEADINGS[here]}`, "");
    under = here;
    const start = startOf(words);
    const stop = endOf(words);
    const times = start === null ? "" : stop === null ? `[${clock(start)}] ` : `[${clock(start)} - ${clock(stop)}] `;
    out.push(`${times}${NAMES[line[0]!.role]}: ${words.map((word) => word.text).join(" ")}`);
  }
  return `${out.join("\n")}\n`;
}

/** The same as data. `confidence` to two places, times to the millisecond. */
export function labelDocument(station: Station): LabelDocument {
  const { transcript } = station;
  return {
    saidwell: LABEL_VERSION,
    file: transcript.file,
    station: { start: round(station.start.time), end: round(station.end.time), startReason: station.start.reason, endReason: station.end.reason },
    sentences: station.sentences.map((sentence) => {
      const words = transcript.words.slice(sentence.first, sentence.end);
      const label = transcript.segments[words[0]!.segment]?.speaker ?? null;
      return {
        text: words.map((word) => word.text).join(" "),
        start: round(startOf(words)),
        end: round(endOf(words)),
        role: sentence.role,
        confidence: Math.round(sentence.confidence * 100) / 100,
        inStation: sentence.inStation,
        ...(label === null ? {} : { label }),
        words: words.map((word) => ({ text: word.text, start: round(word.start), end: round(word.end) })),
      };
    }),
  };
}
