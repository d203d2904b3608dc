import { readClock } from "./clock.ts";
import type { FindingLog } from "./finding-log.ts";
import { MAX_SECONDS } from "./limits.ts";
import type { JsonValue } from "./json-value.ts";
import type { Seconds } from "./types.ts";

export type JsonObject = Extract<JsonValue, { type: "object" }>;

/** Keys of our schema and, behind each, the spellings that speech-to-text output commonly has instead. First found wins. */
const SPELLINGS = {
  segments: ["segments", "sentences", "utterances", "turns", "paragraphs", "cues", "chunks"],
  words: ["words", "tokens"],
  text: ["text", "word", "transcript", "content", "utterance", "sentence", "token", "value"],
  start: ["start", "start_time", "startTime", "start_seconds", "startSeconds", "begin", "from", "onset"],
  end: ["end", "end_time", "endTime", "end_seconds", "endSeconds", "stop", "to", "offset_end"],
  startMs: ["start_ms", "startMs", "start_time_ms", "startTimeMs", "begin_ms"],
  endMs: ["end_ms", "endMs", "end_time_ms", "endTimeMs"],
  duration: ["duration", "dur"],
  range: ["timestamp", "timestamps", "time", "interval"],
  speaker: ["speaker", "speaker_label", "speakerLabel", "speaker_name", "speakerName", "speaker_id", "speakerId", "speaker_tag", "speakerTag", "spk"],
  role: ["role"],
  confidence: ["confidence", "conf", "probability", "prob", "score"],
  inStation: ["inStation", "in_station"],
} as const;

export type FieldName = keyof typeof SPELLINGS;

/** The value under a key or one of its spellings; null counts as missing. */
export function field(object: JsonObject, name: FieldName): JsonValue | undefined {
  for (const key of SPELLINGS[name]) {
    const value = object.members.get(key);
    if (value !== undefined && value.type !== "null") return value;
  }
  return undefined;
}

/** Text, or undefined when missing. Throws SW-T05 when it is not text. */
export function textOf(object: JsonObject, log: FindingLog): { value: string; line: number } | undefined {
  const value = field(object, "text");
  if (value === undefined) return undefined;
  if (value.type === "string") return value;
  if (value.type === "number") return { value: String(value.value), line: value.line };
  throw log.refuse("SW-T05", `text must be a string, and here it is ${article(value.type)}`, { line: value.line });
}

/** A label as written; a number ("speaker": 1) becomes its digits, an empty one null. */
export function labelOf(object: JsonObject, log: FindingLog): string | null {
  const value = field(object, "speaker") ?? field(object, "role");
  if (value === undefined) return null;
  if (value.type === "number") return String(value.value);
  if (value.type === "string") return value.value.trim() === "" ? null : value.value.trim().replace(/\s+/g, " ");
  if (value.type === "object") {
    const name = value.members.get("name") ?? value.members.get("label") ?? value.members.get("id");
    if (name?.type === "string" && name.value.trim() !== "") return name.value.trim();
    if (name?.type === "number") return String(name.value);
  }
  log.add({ code: "SW-T14", severity: "warning", line: value.line, kind: "speaker", message: `a speaker must be text, and here it is ${article(value.type)}; the words were left unlabelled` });
  return null;
}

/** 0 to 1; a percentage is turned into it, anything else is left out with a finding. */
export function confidenceOf(object: JsonObject, log: FindingLog): number | undefined {
  const value = field(object, "confidence");
  if (value === undefined) return undefined;
  const number = value.type === "number" ? value.value : value.type === "string" ? Number(value.value) : Number.NaN;
  if (number >= 0 && number <= 1) return number;
  if (number > 1 && number <= 100) {
    log.add({ code: "SW-T16", severity: "info", line: value.line, kind: "percent", message: "a confidence above 1 was read as a percentage" });
    return number / 100;
  }
  log.add({ code: "SW-T14", severity: "info", line: value.line, kind: "confidence", message: "a confidence that is not between 0 and 1 was left out" });
  return undefined;
}

/** Seconds; either may be null. `start` and `end`, milliseconds, a pair, or a start and a duration. */
export function timesOf(object: JsonObject, log: FindingLog): { start: Seconds | null; end: Seconds | null } {
  const range = field(object, "range");
  const pair = range?.type === "array" ? range.items : [];
  let start = readTime(field(object, "start") ?? pair[0], log) ?? milliseconds(field(object, "startMs"), log);
  if (start === null && range !== undefined && range.type !== "array" && range.type !== "object") start = readTime(range, log);
  let end = readTime(field(object, "end") ?? pair[1], log) ?? milliseconds(field(object, "endMs"), log);
  const duration = end === null && start !== null ? field(object, "duration") : undefined;
  if (duration !== undefined) {
    const length = readTime(duration, log);
    if (length !== null && start !== null) end = start + length;
  }
  return { start, end };
}

function milliseconds(value: JsonValue | undefined, log: FindingLog): Seconds | null {
  if (value?.type !== "number" && value?.type !== "string") return readTime(value, log);
  return readTime({ line: value.line, type: "number", value: Number(value.value) / 1000 }, log);
}

/** A number of seconds, or text: "12.3", "12.3s", "0:12.3". */
function readTime(value: JsonValue | undefined, log: FindingLog): Seconds | null {
  if (value === undefined || value.type === "null") return null;
  const time = value.type === "number" ? value.value : value.type === "string" ? textToTime(value.value) : Number.NaN;
  if (time >= 0 && time <= MAX_SECONDS) return time;
  const shown = value.type === "number" || value.type === "string" ? `"${value.value}"` : article(value.type);
  log.add({
    code: "SW-T13",
    severity: "warning",
    line: value.line,
    kind: "time",
    message: `the time ${shown} cannot be read as seconds; the words were kept`,
    mend: "Give start and end in seconds from the start of the recording.",
  });
  return null;
}

function textToTime(text: string): number {
  const plain = text.trim().replace(/\s*(?:s|sec|seconds)$/i, "");
  if (/^[+]?\d+(?:[.,]\d+)?$/.test(plain)) return Number(plain.replace(",", "."));
  return readClock(plain) ?? Number.NaN;
}

export function article(type: JsonValue["type"]): string {
  return type === "array" || type === "object" ? `an ${type}` : type === "null" ? "null" : `a ${type}`;
}
