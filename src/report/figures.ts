import type { Measured } from "../scoring/types.ts";
import { showClock } from "../transcript/clock.ts";
import type { Seconds } from "../transcript/types.ts";

/** Guards the sheet: a figure that is not a number is a fault of the program and must never be printed. */
function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Error(`a figure of the sheet is ${value}`);
  return value;
}

/** `m:ss`, or `h:mm:ss` from an hour on; negative times keep their sign. Rounded to the second. */
export function clock(seconds: Seconds): string {
  const whole = Math.round(Math.abs(finite(seconds)));
  const sign = seconds < 0 && whole > 0 ? "-" : "";
  return `${sign}${showClock(whole)}`;
}

/** At most `digits` decimals, without trailing zeros. */
export function number(value: number, digits = 1): string {
  const rounded = Number(finite(value).toFixed(digits));
  return String(rounded === 0 ? 0 : rounded);
}

/** A per-cent figure that never rounds up to 100 or down to 0 when it is neither. */
export function percent(value: number): string {
  const rounded = Math.round(finite(value));
  if (rounded === 100 && value < 100) return "99%";
  if (rounded === 0 && value > 0) return "1%";
  return `${rounded}%`;
}

/** A clause as a sentence: a capital first, a full stop last. */
export function sentence(clause: string): string {
  return clause.charAt(0).toUpperCase() + clause.slice(1) + (/[.!?]$/.test(clause) ? "" : ".");
}

export function plural(count: number, one: string, many = `${one}s`): string {
  return `${number(count)} ${count === 1 ? one : many}`;
}

/** The figure in words, or "not measurable" and why. An estimated figure says so. */
export function measured<T>(figure: Measured<T>, show: (value: T) => string): string {
  if (figure.value === null) return `not measurable: ${(figure as { why: string }).why}`;
  const { value, estimated } = figure as { value: T; estimated: boolean };
  return estimated ? `${show(value)} (estimated)` : show(value);
}
