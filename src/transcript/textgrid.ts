import type { Draft, DraftSegment } from "./draft.ts";
import type { FindingLog } from "./finding-log.ts";
import { MAX_SECONDS } from "./limits.ts";
import { tokenizePraat, type PraatToken } from "./praat-tokens.ts";
import { readWords } from "./words.ts";

/** Tiers of single sounds, as aligners write beside the words. Common practice, no source. */
const SOUND_TIER = /(?:^|[\s_-])(?:phones?|phonemes?|segments|syllables?|pitch|intensity)$/i;

/**
 * Reads a Praat TextGrid, long or short form: by Praat's rule only free-standing numbers, strings and flags count,
 * so both forms are the same sequence of values. Each tier is one speaker, its name the label; the tiers are merged
 * by start. Source: Boersma and Weenink, Praat manual, page "TextGrid file formats".
 * Throws SW-T06 with the line where the sequence breaks.
 */
export function readTextGrid(text: string, log: FindingLog): Draft {
  const values = new Values(tokenizePraat(text, log), log);
  values.header();
  values.number("the start of the file");
  const latest = values.number("the end of the file").value;
  const segments: DraftSegment[] = [];
  if (values.flag()) {
    const tiers = values.count("the number of tiers");
    for (let tier = 0; tier < tiers; tier += 1) segments.push(...readTier(values, log));
  }
  values.end();
  // Tiers overlap as people do: by start, and for equal starts in the order of the tiers.
  segments.sort((a, b) => (a.start ?? 0) - (b.start ?? 0));
  return { segments, headings: [], frontMatter: {}, endsGiven: false, outOfOrder: "sort", ...(latest > 0 ? { latest } : {}) };
}

function readTier(values: Values, log: FindingLog): DraftSegment[] {
  const kind = values.string("the class of a tier");
  if (kind.text !== "IntervalTier" && kind.text !== "TextTier") {
    throw values.fault(kind, `a tier must be an IntervalTier or a TextTier, and this one is "${kind.text}"`);
  }
  const name = values.string("the name of a tier");
  values.number("the start of a tier");
  values.number("the end of a tier");
  const items = values.count(kind.text === "IntervalTier" ? "the number of intervals" : "the number of points");
  const speaker = name.text.trim() === "" ? null : name.text.trim();
  const segments: DraftSegment[] = [];
  for (let item = 0; item < items; item += 1) {
    const start = values.number(kind.text === "IntervalTier" ? "the start of an interval" : "the time of a point");
    const end = kind.text === "IntervalTier" ? values.number("the end of an interval") : null;
    const text = values.string(kind.text === "IntervalTier" ? "the text of an interval" : "the text of a point");
    const words = readWords(text.text, text.line, log).map(({ offset: _, ...word }) => word);
    if (words.length > 0) segments.push({ speaker, start: start.value, end: end?.value ?? null, line: text.line, words });
  }
  if (SOUND_TIER.test(name.text) && segments.length > 0) {
    log.add({ code: "SW-T14", severity: "warning", line: name.line, message: `the tier "${name.text}" holds sounds, not words, and was left out` });
    return [];
  }
  return segments;
}

/** Takes the values of a TextGrid one by one and says what was expected where the sequence breaks. */
class Values {
  private at = 0;
  private readonly tokens: readonly PraatToken[];
  private readonly log: FindingLog;

  constructor(tokens: readonly PraatToken[], log: FindingLog) {
    this.tokens = tokens;
    this.log = log;
  }

  header(): void {
    const type = this.string("the file type");
    // Older short files call themselves "ooTextFile short".
    if (!/^ooTextFile(?: short)?$/.test(type.text)) throw this.fault(type, `the file type must be "ooTextFile", and this one is "${type.text}"`);
    const object = this.string("the object class");
    if (!/^TextGrid\b/.test(object.text)) throw this.fault(object, `the file holds a ${object.text}, not a TextGrid`);
  }

  string(what: string): { text: string; line: number } {
    const token = this.take(what);
    if (token.kind !== "string") throw this.unexpected(token, what);
    return { text: token.text, line: token.line };
  }

  number(what: string): { value: number; line: number } {
    const token = this.take(what);
    const value = token.kind === "number" ? Number(token.text) : Number.NaN;
    if (!Number.isFinite(value)) throw this.unexpected(token, what);
    if (Math.abs(value) > MAX_SECONDS) throw this.fault(token, `${token.text} is not a time in seconds`);
    // Praat allows times before zero; a transcript starts at zero.
    return { value: Math.max(0, value), line: token.line };
  }

  count(what: string): number {
    const { value, line } = this.number(what);
    if (!Number.isInteger(value)) throw this.fault({ line }, `${what} must be a whole number`);
    return value;
  }

  /** Whether tiers follow: `<exists>`, or `<absent>`. */
  flag(): boolean {
    const token = this.take("<exists>");
    if (token.kind !== "flag") throw this.unexpected(token, "<exists>");
    return token.text === "<exists>";
  }

  end(): void {
    const left = this.tokens.slice(this.at);
    const first = left.find((token) => token.kind === "string" && /\S/.test(token.text));
    if (first !== undefined) throw this.fault(first, "there is more in the file than its counts announce");
  }

  fault(at: { line: number }, message: string): Error {
    return this.log.refuse("SW-T06", message, { line: at.line, mend: "Open the file in a TextGrid editor and save it as a text file again." });
  }

  private take(what: string): PraatToken {
    const token = this.tokens[this.at];
    if (token === undefined) throw this.fault({ line: this.tokens[this.at - 1]?.line ?? 1 }, `the file ends where ${what} was expected`);
    this.at += 1;
    return token;
  }

  private unexpected(token: PraatToken, what: string): Error {
    const found = token.kind === "string" ? `the text "${token.text.slice(0, 30)}"` : token.text;
    return this.fault(token, `${what} was expected, and ${found} was found`);
  }
}
