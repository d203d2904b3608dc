import type { MarkSheet } from "../scoring/types.ts";

/** The sheet's keys in the order in which they are written: the public form `saidwell/mark-sheet@1`. */
export const SHEET_KEYS = [
  "form",
  "version",
  "candidate",
  "transcript",
  "rubric",
  "scenario",
  "station",
  "result",
  "total",
  "critical",
  "unsafe",
  "incorrect",
  "differs",
  "sections",
  "items",
  "corrections",
  "claims",
  "questions",
  "teachBack",
  "order",
  "repeats",
  "asides",
  "time",
  "plan",
  "changes",
  "findings",
  "caution",
] as const satisfies (keyof MarkSheet)[];

/** @throws Error when a figure is not a finite number: JSON would silently write null. */
export function sheetJson(sheet: MarkSheet): string {
  return toJson(inOrder(sheet));
}

/** A sheet with its keys in the order in which they are written. */
export function inOrder(sheet: MarkSheet): MarkSheet {
  return Object.fromEntries(SHEET_KEYS.map((key) => [key, sheet[key]])) as unknown as MarkSheet;
}

/**
 * Plain data as JSON with two blanks of indentation and a newline at the end. Characters that could drive a terminal
 * or reorder its text (C1 controls, DEL, bidirectional marks) are escaped: the data is the same, the file is harmless.
 * @throws Error when a number is not finite.
 */
export function toJson(data: unknown): string {
  return escaped(data, 2);
}

/** The same on one line. */
export function toJsonLine(data: unknown): string {
  return escaped(data, 0);
}

function escaped(data: unknown, indentation: number): string {
  const json = JSON.stringify(
    data,
    (key, value: unknown) => {
      if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`the figure '${key}' is ${value}`);
      return value;
    },
    indentation,
  );
  return `${json.replace(/[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/g, escape)}\n`;
}

function escape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}
