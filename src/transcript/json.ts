import type { Draft, DraftSegment, DraftWord } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { confidenceOf, field, labelOf, textOf, timesOf, article, type JsonObject } from "./json-fields.ts";
import { parseJson, type JsonValue } from "./json-value.ts";
import { joinWordList, stringWords, type ListedWord, type SpokenWord, type StretchMark } from "./json-words.ts";
import { CHECK_KEY, LABEL_FILE, tellEdits } from "./label-check.ts";

/**
 * Reads JSON in the schema `transcript@1` of saidwell. All keys but the words themselves may be missing:
 *
 * ```
 * {
 *   "saidwell": "transcript@1",
 *   "segments": [
 *     {
 *       "text": "Shake it well.",      // or absent when "words" are given
 *       "start": 12.3,                 // seconds from the start of the recording; also "12.3" or "0:12.3"
 *       "end": 14.1,
 *       "speaker": "Candidate",        // a label; "role" stands in for it
 *       "confidence": 0.92,            // of the recogniser, 0 to 1
 *       "inStation": true,             // a person's decision about what is marked
 *       // "estimated": true on a word: its times are not the file's own and are estimated anew
 *       "words": [{ "text": "Shake", "start": 12.3, "end": 12.6, "confidence": 0.9, "speaker": "Candidate" }]
 *     }
 *   ]
 * }
 * ```
 *
 * Also read: a bare array of such segments, `sentences` in place of `segments`, `words` alone at the top, words as
 * plain strings, and the spellings in `json-fields.ts`. In `sentences` of the label command `confidence` is that of
 * the role, so it is not given to the words, and `stretch` on a word says where the stretches of the first file began;
 * then those are the segments, and the times of the sentences themselves are not read. Other keys of the top level with plain values become front matter.
 * Throws SW-T05 with the line of the JSON text.
 */
export function readJson(text: string, log: FindingLog): Draft {
  const root = parseJson(text, log);
  const { list, holder, role } = findList(root, log);
  if (role && plainOf(holder?.members.get("saidwell")) === LABEL_FILE) tellEdits(plainOf(holder?.members.get(CHECK_KEY)), list.items.flatMap(partsOf), log);
  const stretched = role && list.items.some(opensStretch);
  const read = list.items.flatMap((item, place) => readSegment(item, { role, stretched, first: place === 0 }, log));
  const segments = stretched ? rejoined(read) : read;
  mendMilliseconds(segments, log);
  return { segments, headings: [], frontMatter: holder === null ? {} : plainMembers(holder), endsGiven: !stretched, outOfOrder: "sort" };
}

/** What of a sentence the check of a label file covers, in the order in which `labelDocument` takes it. */
function partsOf(item: JsonValue): string[] {
  if (item.type !== "object") return [plainOf(item) ?? ""];
  const words = item.members.get("words");
  const texts = words?.type === "array" ? words.items.map((word) => plainOf(word.type === "object" ? word.members.get("text") : word) ?? "") : [];
  return [...["text", "start", "end", "role", "inStation"].map((key) => plainOf(item.members.get(key)) ?? ""), ...texts];
}

/** Undefined for what is missing or no plain value. */
function plainOf(value: JsonValue | undefined): string | undefined {
  return value === undefined || value.type === "object" || value.type === "array" || value.type === "null" ? undefined : String(value.value);
}

interface Found {
  list: Extract<JsonValue, { type: "array" }>;
  holder: JsonObject | null;
  /** True when `confidence` of an item is that of its role, not of its words. */
  role: boolean;
}

function findList(root: JsonValue, log: FindingLog, depth = 0): Found {
  if (root.type === "array") {
    // An array of words, not of segments: one stretch.
    return { list: root.items.length > 0 && root.items.every(isBareWord) ? wrapWords(root) : root, holder: null, role: false };
  }
  if (root.type === "object") {
    const segments = field(root, "segments");
    if (segments !== undefined) {
      if (segments.type !== "array") throw log.refuse("SW-T05", `the segments must be an array, and here they are ${article(segments.type)}`, { line: segments.line });
      return { list: segments, holder: root, role: root.members.get("sentences") === segments };
    }
    const words = field(root, "words");
    if (words?.type === "array") return { list: wrapWords(words), holder: root, role: false };
    for (const key of ["transcript", "transcription", "result", "results", "data", "output"]) {
      const inner = root.members.get(key);
      if (depth === 0 && inner !== undefined && (inner.type === "object" || inner.type === "array")) return { ...findList(inner, log, 1), holder: root };
    }
    if (field(root, "text")?.type === "string") return { list: { line: root.line, type: "array", items: [root] }, holder: null, role: false };
  }
  throw log.refuse("SW-T05", 'the JSON holds no transcript: it has neither "segments" nor "words"', {
    line: root.line,
    mend: 'Give { "segments": [{ "text": "...", "start": 0.0, "end": 1.5, "speaker": "..." }] }.',
  });
}

/** One word with no white space in it and no words below it. */
function isBareWord(item: JsonValue): boolean {
  if (item.type === "string") return !/\s/.test(item.value.trim());
  if (item.type !== "object" || field(item, "words") !== undefined) return false;
  const text = field(item, "text");
  return text?.type === "string" && !/\s/.test(text.value.trim()) && field(item, "start") !== undefined && item.members.has("word");
}

function wrapWords(words: Extract<JsonValue, { type: "array" }>): Found["list"] {
  return { line: words.line, type: "array", items: [{ line: words.line, type: "object", members: new Map([["words", words]]) }] };
}

/** How the items of the list are to be read. */
interface Reading extends Pick<Found, "role"> {
  /** The list marks the stretches of the file that it was made from. */
  stretched: boolean;
  /** Nothing stands before the item. */
  first: boolean;
}

function opensStretch(item: JsonValue): boolean {
  const words = item.type === "object" ? field(item, "words") : undefined;
  return words?.type === "array" && words.items.some((word) => word.type === "object" && word.members.has("stretch"));
}

function readSegment(item: JsonValue, { role, stretched, first }: Reading, log: FindingLog): DraftSegment[] {
  if (item.type === "string") {
    return [{ speaker: null, start: null, end: null, line: item.line, words: stringWords(item.value, item.line, log) }];
  }
  if (item.type !== "object") throw log.refuse("SW-T05", `a segment must be an object, and here it is ${article(item.type)}`, { line: item.line });
  const { start, end } = timesOf(item, log);
  const label = labelOf(item, log);
  const confidence = role ? undefined : confidenceOf(item, log);
  const inStation = field(item, "inStation");
  const text = textOf(item, log);
  const listed = listOfWords(item, log);
  if (text === undefined && listed === null) {
    log.add({ code: "SW-T14", severity: "warning", line: item.line, kind: "no text", message: "a segment without text or words was left out" });
    return [];
  }
  const words = joinWordList(text, listed ?? [], log);
  if (confidence !== undefined) for (const word of words) word.confidence ??= confidence;
  const place = { line: item.line, ...(inStation?.type === "boolean" ? { inStation: inStation.value } : {}) };
  if (stretched) return splitByStretch(words, first).map((piece) => ({ ...place, speaker: label, ...piece }));
  const base = { ...place, start, end };
  return splitBySpeaker(words, label).map(({ speaker, own }, at) =>
    at === 0 ? { ...base, speaker, words: own } : { ...base, start: null, end: null, speaker, words: own, shares: true },
  );
}

function listOfWords(item: JsonObject, log: FindingLog): ListedWord[] | null {
  const list = field(item, "words");
  if (list === undefined) return null;
  if (list.type !== "array") throw log.refuse("SW-T05", `the words must be an array, and here they are ${article(list.type)}`, { line: list.line });
  return list.items.flatMap((word): ListedWord[] => {
    if (word.type === "string") return [{ text: word.value, line: word.line, start: null, end: null, speaker: null }];
    if (word.type !== "object") throw log.refuse("SW-T05", `a word must be an object or a string, and here it is ${article(word.type)}`, { line: word.line });
    const text = textOf(word, log);
    if (text === undefined) {
      log.add({ code: "SW-T14", severity: "warning", line: word.line, kind: "no word", message: "an entry without text in a list of words was left out" });
      return [];
    }
    const confidence = confidenceOf(word, log);
    const estimated = word.members.get("estimated");
    const times = estimated?.type === "boolean" && estimated.value ? { start: null, end: null } : timesOf(word, log);
    const stretch = stretchOf(word, log);
    const own = { text: text.value, line: word.line, ...times, speaker: labelOf(word, log), ...(stretch === undefined ? {} : { stretch }) };
    return [confidence === undefined ? own : { ...own, confidence }];
  });
}

function stretchOf(word: JsonObject, log: FindingLog): StretchMark | undefined {
  const stretch = word.members.get("stretch");
  if (stretch?.type !== "object") return undefined;
  const shares = stretch.members.get("shares");
  return { ...timesOf(stretch, log), shares: shares?.type === "boolean" && shares.value };
}

/** The parts of a sentence in different stretches. What opens none goes on in the interval of what stands before it. */
function splitByStretch(words: readonly SpokenWord[], first: boolean): Pick<DraftSegment, "start" | "end" | "words" | "shares">[] {
  const pieces: Pick<DraftSegment, "start" | "end" | "words" | "shares">[] = [];
  words.forEach(({ stretch, ...word }, at) => {
    delete word.speaker;
    const last = pieces[pieces.length - 1];
    if (last !== undefined && stretch === undefined) last.words.push(word);
    else if (stretch === undefined || stretch.shares) pieces.push({ start: null, end: null, words: [word], ...(first && at === 0 ? {} : { shares: true }) });
    else pieces.push({ start: stretch.start, end: stretch.end, words: [word] });
  });
  return pieces;
}

/** Sentences of one speaker in one stretch were one segment. */
function rejoined(segments: readonly DraftSegment[]): DraftSegment[] {
  const joined: DraftSegment[] = [];
  for (const segment of segments) {
    const last = joined[joined.length - 1];
    if (last !== undefined && segment.shares === true && last.speaker === segment.speaker && last.inStation === segment.inStation) last.words.push(...segment.words);
    else joined.push(segment);
  }
  return joined;
}

function splitBySpeaker(words: readonly SpokenWord[], label: string | null): { speaker: string | null; own: DraftWord[] }[] {
  const runs: { speaker: string | null; own: DraftWord[] }[] = [];
  for (const { speaker: named, ...word } of words) {
    const speaker = named ?? label;
    delete word.stretch;
    const last = runs[runs.length - 1];
    if (last !== undefined && last.speaker === speaker) last.own.push(word);
    else runs.push({ speaker, own: [word] });
  }
  return runs;
}

/** Below this many words a second over the whole file, whole-number times are milliseconds. People speak two to four. */
const SLOWEST_FILE = 0.02;

function mendMilliseconds(segments: readonly DraftSegment[], log: FindingLog): void {
  const holders = segments.flatMap((segment) => [segment, ...segment.words]);
  const times = holders.flatMap(({ start, end }) => [start, end]).filter((time) => time !== null && time !== undefined);
  const count = segments.reduce((sum, segment) => sum + segment.words.length, 0);
  const span = times.reduce((most, time) => Math.max(most, time), 0) - times.reduce((least, time) => Math.min(least, time), Infinity);
  if (times.length === 0 || !times.every(Number.isInteger) || !(span > 0) || count / span > SLOWEST_FILE) return;
  for (const holder of holders) {
    if (typeof holder.start === "number") holder.start /= 1000;
    if (typeof holder.end === "number") holder.end /= 1000;
  }
  log.add({ code: "SW-T17", severity: "warning", message: "the times are whole numbers too large for seconds and were read as milliseconds", mend: "Give start and end in seconds." });
}

function plainMembers(holder: JsonObject): Record<string, string> {
  const pairs = [...holder.members].filter(([key, value]) => key !== "text" && (value.type === "string" || value.type === "number" || value.type === "boolean"));
  return Object.fromEntries(pairs.map(([key, value]) => [key.toLowerCase(), String((value as { value: unknown }).value)]));
}
