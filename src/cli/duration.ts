import { InvalidArgumentError } from "commander";
import { MAX_SECONDS } from "../transcript/limits.ts";
import type { Seconds } from "../transcript/types.ts";

const WAYS = "Write seconds (420), a clock (7:00 or 1:02:30) or words ('7 min', '90 s').";

const UNITS: Record<string, number> = { s: 1, m: 60, h: 3600 };

/**
 * A time as a person types it: `420`, `12.5`, `7:00`, `1:02:30`, `6:30.5`, `7 min`, `90 s`, `1 h`.
 * @throws InvalidArgumentError with the ways to write it.
 */
export function parseTime(typed: string): Seconds {
  const seconds = secondsOf(typed);
  if (seconds > MAX_SECONDS) throw new InvalidArgumentError(`No recording is longer than ${MAX_SECONDS / 3600} hours.`);
  return seconds;
}

function secondsOf(typed: string): Seconds {
  const text = typed.trim().toLowerCase();
  if (/^\d+([.,]\d+)?$/.test(text)) return Number(text.replace(",", "."));
  const clock = /^(?:(\d+):)?(\d+):([0-5]\d(?:[.,]\d+)?)$/.exec(text);
  if (clock !== null && (clock[1] === undefined || Number(clock[2]) < 60)) {
    return Number(clock[1] ?? 0) * 3600 + Number(clock[2]) * 60 + Number(clock[3]!.replace(",", "."));
  }
  const words = /^(\d+(?:[.,]\d+)?)\s*(s|secs?|seconds?|m|mins?|minutes?|h|hours?)$/.exec(text);
  if (words !== null) return Number(words[1]!.replace(",", ".")) * UNITS[words[2]![0]!]!;
  throw new InvalidArgumentError(WAYS);
}

/** A length of time, so more than nothing. */
export function parseLength(typed: string): Seconds {
  const seconds = parseTime(typed);
  if (seconds <= 0) throw new InvalidArgumentError("It must be more than nothing.");
  return seconds;
}
