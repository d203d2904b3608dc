import { cleanDeep, toAscii } from "../clean.ts";
import { Page } from "../page.ts";
import { NARROWEST, WIDEST } from "../page-width.ts";
import { painter } from "../style.ts";

export interface Look {
  width: number;
  colour: boolean;
  ascii: boolean;
}

/** A page of a report. */
export function pageOf({ width, colour, ascii }: Look): Page {
  return new Page({ width: Math.min(WIDEST, Math.max(NARROWEST, width)), ascii, paint: painter(colour) });
}

/** A copy of a report's data whose texts can do nothing to a terminal. */
export function harmless<T>(data: T, ascii: boolean): T {
  const clean = cleanDeep(data);
  return ascii ? asciiDeep(clean) : clean;
}

function asciiDeep<T>(data: T): T {
  if (typeof data === "string") return toAscii(data) as T;
  if (Array.isArray(data)) return data.map(asciiDeep) as T;
  if (data === null || typeof data !== "object") return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, asciiDeep(value)])) as T;
}
