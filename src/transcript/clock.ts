import { MAX_SECONDS } from "./limits.ts";
import type { Seconds } from "./types.ts";

/** `m:ss`, `mm:ss`, `h:mm:ss`, with a fraction after a dot or a comma. As the source of a regular expression, without groups. */
export const CLOCK = "(?:\\d{1,3}:)?\\d{1,3}:\\d{2}(?:[.,]\\d{1,6})?(?![\\d:])";

/** What may stand between the two ends of a range. */
export const RANGE_SIGN = "(?:-{1,3}>?|[–—]>?|→|=>|to\\b)";

const EXACT = /^(?:(\d{1,3}):)?(\d{1,3}):(\d{2})(?:[.,](\d{1,6}))?$/;

/** Seconds of a time in the form `CLOCK`, or null when the seconds, or the minutes beside hours, are above 59. */
export function readClock(text: string): Seconds | null {
  const match = EXACT.exec(text.trim());
  if (match === null) return null;
  const [, hours, minutes, seconds, fraction] = match;
  return compose(hours, minutes, seconds, fraction);
}

/**
 * Seconds of a caption's time as found in the wild: any of `:`, `;`, `.`, `,` between the fields, spaces around them,
 * hours or fraction missing, milliseconds after a third colon. Null when it cannot be read.
 */
export function readLooseClock(text: string): Seconds | null {
  const fields = text.trim().split(/\s*[:;.,]\s*/);
  if (fields.length < 2 || fields.length > 4 || !fields.every((field) => /^\d{1,9}$/.test(field))) return null;
  const separators = text.match(/[:;.,]/g) ?? [];
  const last = separators[separators.length - 1];
  const [a, b, c, d] = fields;
  if (fields.length === 4) return compose(a, b, c, d);
  if (fields.length === 3) return last === "." || last === "," ? compose(undefined, a, b, c) : compose(a, b, c, undefined);
  return last === "." || last === "," ? compose(undefined, "0", a, b) : compose(undefined, a, b, undefined);
}

function compose(hours: string | undefined, minutes = "0", seconds = "0", fraction = "0"): Seconds | null {
  const h = Number(hours ?? 0);
  const m = Number(minutes);
  const s = Number(seconds);
  if (s > 59 || (hours !== undefined && m > 59)) return null;
  // One division at the end keeps 0:12.3 at exactly 12.3.
  const scale = 10 ** fraction.length;
  const time = ((h * 3600 + m * 60 + s) * scale + Number(fraction)) / scale;
  return time <= MAX_SECONDS ? time : null;
}

/** `m:ss`, or `h:mm:ss` over an hour, for messages. */
export function showClock(time: Seconds): string {
  const whole = Math.floor(time);
  const tail = String(whole % 60).padStart(2, "0");
  const minutes = Math.floor(whole / 60) % 60;
  const hours = Math.floor(whole / 3600);
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, "0")}:${tail}` : `${minutes}:${tail}`;
}

/** An estimated time to the millisecond: finer digits would only pretend. */
export function toMillisecond(time: Seconds): Seconds {
  return Math.round(time * 1000) / 1000;
}
