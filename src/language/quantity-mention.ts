import type { Unit } from "./units.ts";

export type Bound = "exact" | "at-least" | "at-most";

/** A quantity that somebody said. Times, doses and counts alike. */
export interface QuantityMention {
  /** Token positions, `end` exclusive; hedges ("at least", "or so") are inside. */
  first: number;
  end: number;
  /** In `unit`. Equal unless a range was said; with a bound, the number said ("at least ten": 10 and 10, never infinity). */
  low: number;
  high: number;
  /**
   * null: a bare number, its unit left out ("hold it for ten"). "number": it counts something the list of
   * units does not have ("three bottles").
   */
  unit: Unit | null;
  /** Hedged ("about", "or so") or vague ("a few"). */
  approximate: boolean;
  bound: Bound;
  /** The tokens, joined by spaces. */
  text: string;
  /**
   * `amount`: how much or how long. `count`: counted aloud ("one two three four five"), the highest number.
   * `interval`: how far apart ("every four hours"). `frequency`: how often ("twice a day", unit time-per-day).
   */
  kind: "amount" | "count" | "interval" | "frequency";
  /**
   * Whether it can contradict. False for what may confirm a number but says too little to deny one: a bare
   * number, a counted run, an article before a thing ("a dose"), an age, the past ("two weeks ago").
   */
  firm: boolean;
  /** "a couple", "a few", "several": no number was named, so any overlap is right. */
  vague: boolean;
  /** "up to ten", "within a month": a bound that is said of the number to aim at. */
  aim: boolean;
  /** How often it makes a day, for an interval or a frequency: "every four hours" 6, "once a week" 1/7. */
  perDay?: readonly [low: number, high: number];
}

/** "One" as a number; elsewhere it is mostly a pronoun. It says too little to contradict. */
export const ONE = { low: 1, high: 1, unit: null, approximate: false, bound: "exact", text: "one", kind: "amount", firm: false, vague: false, aim: false } as const satisfies Omit<QuantityMention, "first" | "end">;

/** What a rubric expects (`quantitySchema` without its label form). */
export interface ExpectedQuantity {
  value: number | [low: number, high: number];
  unit: Unit;
  /** In `unit`. */
  tolerance: number;
  bound: Bound;
}
