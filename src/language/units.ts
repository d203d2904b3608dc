/** What a number can count. Two quantities compare only within one dimension (`quantity.ts`). */
export const UNITS = [
  "second", "minute", "hour", "day", "week", "month", "year",
  "time", "time-per-day", "puff", "spray", "drop", "dose", "unit", "breath", "finger",
  "millilitre", "milligram", "microgram", "gram", "millimetre", "centimetre",
  "degree", "degree-celsius", "degree-fahrenheit", "percent",
  "millimole-per-litre", "milligram-per-decilitre", "capsule", "tablet", "patch", "number",
] as const;

export type Unit = (typeof UNITS)[number];
