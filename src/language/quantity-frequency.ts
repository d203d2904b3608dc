import { readNumber, runsOn, wordsAt } from "./number-words.ts";
import type { Token } from "./token.ts";
import { unitBehind } from "./unit-words.ts";

/** Days in a period; a month of 30 days and a year of 365, as prescriptions count them. */
export const DAYS: Readonly<Record<string, number>> = {
  second: 1 / 86400, minute: 1 / 1440, hour: 1 / 24, day: 1, week: 7, month: 30, year: 365,
};

const PERIOD_WORDS: Readonly<Record<string, number>> = {
  minute: 1 / 1440, hour: 1 / 24, day: 1, night: 1, morning: 1, evening: 1, bedtime: 1, week: 7, fortnight: 14, month: 30, year: 365,
};
/** "one in the morning" tells when, not how often: a part of the day is a period only behind these. */
const BEFORE_DAY_PART = new Set(["a", "per", "each", "every"]);
const DAY_PARTS = new Set(["night", "morning", "evening", "bedtime"]);
const ADVERBS: Readonly<Record<string, { days: number; unit: "hour" | "day" | "week" | "month"; count: number }>> = {
  hourly: { days: 1 / 24, unit: "hour", count: 1 },
  daily: { days: 1, unit: "day", count: 1 },
  nightly: { days: 1, unit: "day", count: 1 },
  weekly: { days: 7, unit: "week", count: 1 },
  fortnightly: { days: 14, unit: "week", count: 2 },
  monthly: { days: 30, unit: "month", count: 1 },
};
const LEADS: readonly (readonly string[])[] = [
  ["a"], ["an"], ["per"], ["each"], ["every"], ["every", "single"], ["in", "a"], ["in", "one"], ["in", "any"], ["in", "any", "one"], ["in", "the"],
  ["within", "a"], ["over", "a"], ["during", "the"], ["in", "each"], ["throughout", "the"],
];

/** "a day", "per week", "daily", "in 24 hours": the period in days and the position after it. */
export function readPeriod(tokens: readonly Token[], at: number): { days: number; end: number } | null {
  if (!runsOn(tokens, at)) return null;
  const adverb = adverbAt(tokens, at);
  if (adverb !== undefined) return { days: adverb.days, end: at + 1 };
  for (const lead of LEADS) {
    if (!wordsAt(tokens, at, lead)) continue;
    const next = at + lead.length;
    if (!runsOn(tokens, next)) continue;
    const days = Object.hasOwn(PERIOD_WORDS, tokens[next]!.text) ? PERIOD_WORDS[tokens[next]!.text] : undefined;
    if (days === undefined || (DAY_PARTS.has(tokens[next]!.text) && !BEFORE_DAY_PART.has(lead.at(-1)!))) continue;
    return { days, end: next + 1 };
  }
  for (const lead of [["in"], ["per"], ["every"], ["within"], ["over"], ["in", "any"], ["in", "a"], ["a"], ["in", "every"], ["in", "the"]]) {
    if (!wordsAt(tokens, at, lead)) continue;
    const number = runsOn(tokens, at + lead.length) ? readNumber(tokens, at + lead.length) : null;
    const unit = number === null ? null : unitBehind(tokens, number.end, number.written === "digits");
    if (number !== null && unit !== null && unit.unit === "hour" && number.value === 24) return { days: 1, end: unit.end };
  }
  return null;
}

export const adverbAt = (tokens: readonly Token[], at: number) => {
  const text = tokens[at]?.text ?? "";
  return Object.hasOwn(ADVERBS, text) ? ADVERBS[text] : undefined;
};

/** What follows "once" as a joining word: "once you have", "once the cap is off", "once opened". */
const AFTER_JOINING_ONCE = new Set([
  "you", "your", "it", "its", "they", "we", "i", "he", "she", "the", "that", "this", "these", "those", "all", "both", "opened", "open", "done",
  "finished", "again", "more", "inside", "there", "again", "upon", "primed", "shaken", "removed", "your", "my", "our", "their", "his", "her",
  "inhaled", "ready", "used", "complete", "completed", "started", "mixed", "connected", "attached", "in", "off", "on", "out", "everything",
]);

/** "once" and "twice" as counts; "once you have done that" is none. */
export function readOnce(tokens: readonly Token[], at: number): { value: number; end: number } | null {
  const text = tokens[at]?.text;
  if (text === "twice") return { value: 2, end: at + 1 };
  if (text === "thrice") return { value: 3, end: at + 1 };
  if (text !== "once" || tokens[at - 1]?.text === "at") return null;
  if (!runsOn(tokens, at + 1)) return { value: 1, end: at + 1 };
  const next = tokens[at + 1]!.text;
  if (readPeriod(tokens, at + 1) !== null || wordsAt(tokens, at + 1, ["in", "the"])) return { value: 1, end: at + 1 };
  if (AFTER_JOINING_ONCE.has(next) || next === "a" || next === "an") return null;
  return { value: 1, end: at + 1 };
}

const MORNING_AND_NIGHT: readonly (readonly string[])[] = [
  ["morning", "and", "night"], ["morning", "and", "evening"], ["morning", "and", "at", "night"], ["morning", "and", "bedtime"],
  ["morning", "and", "at", "bedtime"], ["morning", "and", "in", "the", "evening"], ["morning", "and", "the", "evening"],
  ["morning", "and", "one", "at", "night"], ["morning", "and", "two", "at", "night"], ["morning", "and", "two", "in", "the", "evening"],
  ["morning", "and", "one", "in", "the", "evening"], ["morning", "and", "once", "at", "night"], ["morning", "and", "once", "in", "the", "evening"],
  ["morning", "and", "every", "night"], ["morning", "and", "every", "evening"],
];

/** "in the morning and at night" is twice a day; the position after it. */
export function readMorningAndNight(tokens: readonly Token[], at: number): number | null {
  const found = MORNING_AND_NIGHT.find((pattern) => wordsAt(tokens, at, pattern));
  return found === undefined ? null : at + found.length;
}
