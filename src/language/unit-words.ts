import { FILLER_SOUNDS } from "./fillers.ts";
import { wordsAt, runsOn } from "./number-words.ts";
import type { Token } from "./token.ts";
import type { Unit } from "./units.ts";

/** A unit found behind a number: the number times `factor` is in `unit`. */
export interface UnitReading {
  unit: Unit;
  factor: number;
  /** Token position after the unit. */
  end: number;
}

type Entry = readonly [unit: Unit, factor: number, ...words: string[]];

/*
 * Spoken and written names. Several words in one name are parted by a space. Factors between units of one
 * kind: the SI brochure (BIPM, 9th edition, 2019) for prefixes; inch = 2.54 cm (international yard and pound
 * agreement, 1959); a medicine teaspoon = 5 mL (the 5 mL spoon of the pharmacopoeias; from memory).
 */
const NAMES: readonly Entry[] = [
  ["second", 1, "second", "seconds", "sec", "secs"],
  ["minute", 1, "minute", "minutes", "min", "mins", "minuts"],
  ["hour", 1, "hour", "hours", "hr", "hrs"],
  ["day", 1, "day", "days", "night", "nights"],
  ["week", 1, "week", "weeks", "wk", "wks"],
  ["week", 2, "fortnight", "fortnights"],
  ["month", 1, "month", "months", "mth", "mths"],
  ["year", 1, "year", "years", "yr", "yrs"],
  ["time", 1, "times", "time"],
  ["puff", 1, "puff", "puffs", "actuation", "actuations", "inhalation", "inhalations"],
  ["spray", 1, "spray", "sprays", "squirt", "squirts", "pump", "pumps"],
  ["drop", 1, "drop", "drops", "droplet", "droplets"],
  ["dose", 1, "dose", "doses"],
  ["unit", 1, "unit", "units", "iu", "ius", "international units"],
  ["breath", 1, "breath", "breaths"],
  ["finger", 1, "finger widths", "finger width", "fingers width", "fingers widths", "fingers breadth", "finger breadths",
    "finger breadth", "fingerbreadths", "fingerbreadth", "fingers", "finger"],
  ["millilitre", 1, "ml", "mls", "mil", "mils", "millilitre", "millilitres", "milliliter", "milliliters", "cc", "ccs"],
  ["millilitre", 1000, "litre", "litres", "liter", "liters"],
  ["millilitre", 5, "teaspoon", "teaspoons", "teaspoonful", "teaspoonfuls", "teaspoonsful"],
  ["milligram", 1, "mg", "mgs", "milligram", "milligrams", "milligramme", "milligrammes"],
  ["microgram", 1, "mcg", "mcgs", "microgram", "micrograms", "microgramme", "microgrammes", "μg", "ug"],
  ["gram", 1, "gram", "grams", "gramme", "grammes"],
  ["gram", 1000, "kg", "kgs", "kilogram", "kilograms", "kilo", "kilos"],
  ["millimetre", 1, "mm", "millimetre", "millimetres", "millimeter", "millimeters"],
  ["centimetre", 1, "cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"],
  ["centimetre", 2.54, "inch", "inches"],
  ["centimetre", 100, "metre", "metres", "meter", "meters"],
  ["degree-celsius", 1, "degrees celsius", "degree celsius", "degrees centigrade", "degree centigrade", "degrees c", "celsius", "centigrade"],
  ["degree-fahrenheit", 1, "degrees fahrenheit", "degree fahrenheit", "degrees f", "fahrenheit"],
  ["degree", 1, "degrees", "degree"],
  ["percent", 1, "percent", "per cent"],
  ["millimole-per-litre", 1, "millimoles per litre", "millimole per litre", "millimoles per liter", "mmol l", "mmols l",
    "mmol per litre", "mmols per litre", "mmols", "mmol", "millimoles", "millimole"],
  ["milligram-per-decilitre", 1, "mg dl", "mgs dl", "mg per dl", "milligrams per decilitre", "milligram per decilitre", "milligrams per deciliter",
    "milligram per deciliter"],
  ["capsule", 1, "capsule", "capsules"],
  ["tablet", 1, "tablet", "tablets", "pill", "pills"],
  ["patch", 1, "patch", "patches"],
];

/** Read only behind digits ("10 s"): as spoken words they are letters or something else. */
const SYMBOLS: readonly Entry[] = [
  ["second", 1, "s"],
  ["hour", 1, "h"],
  ["gram", 1, "g"],
  ["millilitre", 1000, "l"],
  ["degree-celsius", 1, "c"],
  ["degree-fahrenheit", 1, "f"],
  ["unit", 1, "u"],
];

interface Name {
  words: readonly string[];
  unit: Unit;
  factor: number;
}

function byFirstWord(entries: readonly Entry[]): Map<string, Name[]> {
  const table = new Map<string, Name[]>();
  for (const [unit, factor, ...names] of entries) {
    for (const name of names) {
      const words = name.split(" ");
      const list = table.get(words[0]!) ?? [];
      list.push({ words, unit, factor });
      table.set(words[0]!, list);
    }
  }
  // Longest first: "mg dl" before "mg".
  for (const list of table.values()) list.sort((one, other) => other.words.length - one.words.length);
  return table;
}

const SPOKEN = byFirstWord(NAMES);
const WRITTEN = byFirstWord(SYMBOLS);

/** The unit named at token `at`; null when none is. `afterDigits` lets one-letter symbols in. */
export function readUnit(tokens: readonly Token[], at: number, afterDigits: boolean): UnitReading | null {
  const first = tokens[at]?.text;
  if (first === undefined) return null;
  const names = [...(SPOKEN.get(first) ?? []), ...(afterDigits ? (WRITTEN.get(first) ?? []) : [])];
  const found = names.find(({ words }) => wordsAt(tokens, at, words));
  if (found === undefined) return null;
  const end = at + found.words.length;
  // "a four mil needle" is a length: needles are sold by the millimetre.
  if (found.unit === "millilitre" && first === "mil" && runsOn(tokens, end) && /^needles?$/.test(tokens[end]!.text)) {
    return { unit: "millimetre", factor: 1, end };
  }
  return { unit: found.unit, factor: found.factor, end };
}

/** The unit that goes by this name or symbol ("mL", "tablets", "mmol/L"); null where none does, or only another multiple of it. */
export function unitCalled(name: string): Unit | null {
  if (/^((times?|x) )?(a|per|each|every)[ -]day$|^daily$/i.test(name)) return "time-per-day";
  const words = name.toLowerCase().split(/[^\p{L}]+/u).filter((word) => word !== "");
  const entries = [...(SPOKEN.get(words[0] ?? "") ?? []), ...(WRITTEN.get(words[0] ?? "") ?? [])];
  return entries.find((entry) => entry.factor === 1 && entry.words.join(" ") === words.join(" "))?.unit ?? null;
}

/** Between a number and its unit: "two full breaths", "ten whole seconds", "one more puff", "two eye drops". */
const BETWEEN = new Set([
  "full", "whole", "single", "deep", "more", "extra", "further", "slow", "slower", "big", "small", "little", "good", "long", "different",
  "separate", "complete", "clear", "entire", "straight", "calendar", "steady", "test", "priming", "air", "eye", "nose", "nasal", "tiny",
  "wee", "teeny", "gentle", "quick", "normal", "other", "additional", "consecutive", "last", "short", "proper", "solid", "mere", "odd", "ish",
]);
/** "twenty odd minutes", "ten-ish seconds": these make the number approximate. */
export const LOOSE = new Set(["odd", "ish"]);
/** "two more full deep breaths" is as long as speech gets. */
const BETWEEN_LIMIT = 3;

/** The unit of a number that ends before token `at`, adjectives and hesitations passed over; null when none follows. */
export function unitBehind(tokens: readonly Token[], at: number, afterDigits: boolean): UnitReading | null {
  let position = at;
  for (let passed = 0; passed <= BETWEEN_LIMIT; passed += 1) {
    const next = tokens[position];
    if (next === undefined) return null;
    const hesitation = FILLER_SOUNDS.has(next.text);
    const joined = runsOn(tokens, position) || isHesitation(tokens[position - 1]);
    if (!joined && !hesitation) return null;
    const unit = readUnit(tokens, position, afterDigits && passed === 0);
    if (unit !== null) return unit;
    // "ten or so seconds"
    const orSo = wordsAt(tokens, position, ["or", "so"]);
    if (!hesitation && !orSo && !BETWEEN.has(next.text)) return null;
    position += orSo ? 2 : 1;
  }
  return null;
}

export function isHesitation(token: Token | undefined): boolean {
  return token !== undefined && FILLER_SOUNDS.has(token.text);
}
