import { tokenizeVTTCue, VTTCue, type VTTNode } from "media-captions";
import { readLooseClock } from "./clock.ts";
import { decodeEntities } from "./entities.ts";
import type { FindingLog } from "./finding-log.ts";
import type { Seconds } from "./types.ts";

/** Text of one cue under one voice, tags taken away, with the times that stand inside it. */
export interface VoiceRun {
  /** The annotation of a voice span (`<v Mary>`), or null outside one. */
  voice: string | null;
  text: string;
  /** From `offset` of `text` on, the words are spoken at `time`. */
  stamps: { offset: number; time: Seconds }[];
  line: number;
}

export interface CuePayload {
  text: string;
  line: number;
  start: Seconds | null;
  end: Seconds | null;
}

/** Tags that the WebVTT text defines (section 4.2.2); others are no markup of captions. */
const CUE_TAG = /^<\/?(?:(?:[cibuv]|ruby|rt|lang)(?:[.\s][^<>]*)?)?>$/;
const STAMP = /^<[\d:.,]+>$/;
const HTML_TAG = /^<\/?(?:font|span|em|strong|s|br|p|div|small|big)\b[^<>]*>$/i;

/**
 * Splits a cue's text into runs by voice, by the package `media-captions`, mended where it would lose something:
 * it drops text after a `<` that opens no tag, reads only some character references, and closes the wrong span
 * when an end tag follows an inline timestamp (so voices are cut apart here, before it sees them).
 */
export function readVoiceRuns(cue: CuePayload, log: FindingLog): VoiceRun[] {
  const markup = settleMarkup(decodeEntities(cue.text, cue.line, log), cue, log);
  const runs: VoiceRun[] = [];
  let line = cue.line;
  for (const piece of markup.split(/(?=<v[\s.>])|(?<=<\/v>)/)) {
    const voice = voiceOf(piece, line, log);
    const body = piece.replace(/^<v[^<>]*>/, "").replace(/<\/v>$/, "");
    const run: VoiceRun = { voice, text: "", stamps: [], line };
    walk(tokenizeVTTCue(new VTTCue(cue.start ?? 0, cue.end ?? Infinity, body)), run);
    line += piece.split("\n").length - 1;
    if (/\S/.test(run.text)) runs.push(run);
  }
  return runs;
}

/** In the order of the text. Each inline time nests what follows it, so nesting may be deep and is walked with a stack. */
function walk(nodes: readonly VTTNode[], run: VoiceRun): void {
  const left = [...nodes].reverse();
  const parts: string[] = [];
  let length = 0;
  for (let node = left.pop(); node !== undefined; node = left.pop()) {
    if (node.type === "text") {
      parts.push(node.data);
      length += node.data.length;
      continue;
    }
    if (node.type === "timestamp") run.stamps.push({ offset: length, time: node.time });
    for (let at = node.children.length - 1; at >= 0; at -= 1) left.push(node.children[at] as VTTNode);
  }
  run.text = parts.join("");
}

/** The parser itself reads the annotation, so that its escapes and classes are treated alike. */
function voiceOf(piece: string, line: number, log: FindingLog): string | null {
  const tag = /^<v[^<>]*>/.exec(piece)?.[0];
  if (tag === undefined) return null;
  const [node] = tokenizeVTTCue(new VTTCue(0, 1, tag.replace(/\s+/g, " ")));
  const voice = node?.type === "v" ? (node.voice ?? "").trim() : "";
  if (voice !== "") return voice;
  log.add({ code: "SW-T16", severity: "info", line, kind: "voice", message: "a voice span names no one; its words are unlabelled" });
  return null;
}

/** Leaves only what the parser can read without loss: known tags, and times that lie inside the cue. */
function settleMarkup(text: string, cue: CuePayload, log: FindingLog): string {
  let line = cue.line;
  return text.replace(/\n|<[^<>]*>|</g, (tag) => {
    if (tag === "\n") line += 1;
    if (tag === "\n") return tag;
    if (STAMP.test(tag)) return settleStamp(tag, line, cue, log);
    if (tag === "<>" || CUE_TAG.test(tag)) return tag;
    if (/^<br\b/i.test(tag)) return "\n";
    if (HTML_TAG.test(tag)) return "";
    if (tag === "<") {
      log.add({ code: "SW-T16", severity: "info", line, kind: "stray <", message: "a '<' that opens no tag was read as a character" });
    }
    // A transcriber's mark such as <UNIN/>, or plain text: the word reader judges it.
    line += tag.split("\n").length - 1;
    return `&lt;${tag.slice(1)}`;
  });
}

function settleStamp(tag: string, line: number, cue: CuePayload, log: FindingLog): string {
  const time = readLooseClock(tag.slice(1, -1));
  if (time === null || time < (cue.start ?? 0) || time > (cue.end ?? Infinity)) {
    log.add({
      code: "SW-T13",
      severity: "info",
      line,
      kind: "inline time",
      message: `the inline time ${tag} ${time === null ? "cannot be read" : "lies outside its cue"} and was left out`,
    });
    return "";
  }
  return `<${inFull(time)}>`;
}

function inFull(time: Seconds): string {
  const milliseconds = Math.round(time * 1000);
  const two = (value: number): string => String(Math.floor(value)).padStart(2, "0");
  const whole = Math.floor(milliseconds / 1000);
  return `${two(whole / 3600)}:${two((whole / 60) % 60)}:${two(whole % 60)}.${String(milliseconds % 1000).padStart(3, "0")}`;
}
