import { hasGivenEnd, hasGivenStart } from "../transcript/given-times.ts";
import { checkOf, withCheck } from "../transcript/label-check.ts";
import type { Transcript, Word } from "../transcript/types.ts";
import { endGiven, linesOf, startGiven, type LineTime, type Part } from "./label-lines.ts";
import type { Role, Station } from "./types.ts";

/** First line of the front matter, and of the JSON form: the version of the label file. */
export const LABEL_VERSION = "labels@1";

/** Headings of the label file, which say where the station starts and ends. */
export const LABEL_HEADINGS = { before: "Before the station", station: "Station", after: "After the station" } as const;

const NAMES: Readonly<Record<Role, string>> = { candidate: "Candidate", patient: "Patient", examiner: "Examiner", announcer: "Announcer", unknown: "Unknown" };

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
  /** Its start or its end is not the file's own. */
  estimated: boolean;
  words: LabelWord[];
}

/** One word in the JSON form, times as above. Read back, it has the time and the confidence that it had before. */
export interface LabelWord {
  text: string;
  start: number | null;
  end: number | null;
  /** True where its times are not the file's own: read back, they are estimated anew. */
  estimated?: true;
  /** Of the recogniser, where the file gives it. */
  confidence?: number;
  /** Of the first word of a stretch that the file sets apart: the start and the end that the file gives it. `shares`: it lies in the interval of the one before. */
  stretch?: { start: number | null; end: number | null; shares?: true };
}

export interface LabelDocument {
  saidwell: typeof LABEL_VERSION;
  file: string;
  /** Of the sentences as they were written: read back, it tells whether somebody edited them. */
  check: string;
  station: { start: number | null; end: number | null; startReason: string; endReason: string };
  sentences: LabelSentence[];
}

const round = (seconds: number | null): number | null => (seconds === null ? null : Math.round(seconds * 1000) / 1000);

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

/** Said in the file itself of what its lines cannot hold. */
const LEFT_OUT = "times or confidences of single words; saidwell label --format json keeps them";

/**
 * The transcript with roles and times, as text that a person corrects and marks again: the label of a line,
 * the heading it stands under, or a line cut in two. `check` in its head tells the reader whether it was. Reading it back gives the same words, roles and edges, and the
 * file's own times and no others: an end only where the file gives one, `[~m:ss.mmm]` where a line's time is
 * estimated inside the interval of the line before.
 */
export function writeLabelText(station: Station): string {
  const { transcript } = station;
  const out = ["---", `saidwell: ${LABEL_VERSION}`, `source: ${transcript.file.replace(/\s+/g, " ")}`];
  if (transcript.words.some(({ timing, confidence }) => timing === "measured" || confidence !== undefined)) out.push(`left out: ${LEFT_OUT}`);
  out.push("---");
  let under: Part | undefined;
  for (const { first, end, role, part, time } of linesOf(station)) {
    if (part !== under) out.push("", `# ${LABEL_HEADINGS[part]}`, "");
    under = part;
    out.push(`${markOf(time)}${NAMES[role]}: ${transcript.words.slice(first, end).map((word) => word.text).join(" ")}`);
  }
  return withCheck(`${out.join("\n")}\n`);
}

function markOf(time: LineTime): string {
  if (time.kind === "none") return "";
  if (time.kind === "estimated") return `[~${clock(time.start)}] `;
  return time.end === null ? `[${clock(time.start)}] ` : `[${clock(time.start)} - ${clock(time.end)}] `;
}

/** The same as data. `confidence` to two places, times to the millisecond. */
export function labelDocument(station: Station): LabelDocument {
  const { transcript } = station;
  const sentences = sentencesOf(station);
  const plain = (value: number | null) => (value === null ? "" : String(value));
  return {
    saidwell: LABEL_VERSION,
    file: transcript.file,
    check: checkOf(sentences.flatMap(({ text, start, end, role, inStation, words }) => [text, plain(start), plain(end), role, String(inStation), ...words.map((word) => word.text)])),
    station: { start: round(station.start.time), end: round(station.end.time), startReason: station.start.reason, endReason: station.end.reason },
    sentences,
  };
}

function sentencesOf(station: Station): LabelSentence[] {
  const { transcript } = station;
  return station.sentences.map((sentence) => {
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
      estimated: transcript.timing !== "none" && (startGiven(transcript, sentence.first) === null || endGiven(transcript, sentence.end - 1) === null),
      words: words.map((word) => labelWord(station, word)),
    };
  });
}

function labelWord({ transcript }: Station, word: Word): LabelWord {
  return {
    text: word.text,
    start: round(word.start),
    end: round(word.end),
    ...(word.timing === "estimated" ? { estimated: true as const } : {}),
    ...(word.confidence === undefined ? {} : { confidence: word.confidence }),
    ...stretchOf(transcript, word),
  };
}

function stretchOf(transcript: Transcript, { segment: place, index }: Word): Pick<LabelWord, "stretch"> {
  const segment = transcript.segments[place]!;
  if (segment.firstWord !== index) return {};
  if (segment.shares === true) return { stretch: { start: null, end: null, shares: true } };
  // Of voices that share one interval the last has its end.
  let last = place;
  while (transcript.segments[last + 1]?.shares === true) last += 1;
  const closing = transcript.segments[last]!;
  return { stretch: { start: hasGivenStart(segment) ? round(segment.start) : null, end: hasGivenEnd(closing) ? round(closing.end) : null } };
}
