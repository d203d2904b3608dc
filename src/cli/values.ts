import { InvalidArgumentError } from "commander";

/** A whole number, 0 or more. @throws InvalidArgumentError */
export function parseCount(typed: string): number {
  if (!/^\d{1,9}$/.test(typed.trim())) throw new InvalidArgumentError("Write a whole number, 0 or more.");
  return Number(typed);
}

/** A day of the calendar, as 2027-06-30 (ISO 8601). @throws InvalidArgumentError */
export function parseDay(typed: string): string {
  const text = typed.trim();
  const day = /^\d{4}-\d\d-\d\d$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  // JavaScript takes the 31st of June for the first of July; that day is not the one that was typed.
  if (day === null || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text) throw new InvalidArgumentError("Write a date as 2027-06-30.");
  return text;
}
