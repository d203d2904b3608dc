import type { MarkSheet } from "../scoring/types.ts";
import { cleanDeep, toAscii } from "./clean.ts";
import { sheetJson } from "./json.ts";
import { DEFAULT_WIDTH, NARROWEST, WIDEST } from "./page-width.ts";
import { sheetPage } from "./text/sheet.ts";

export interface RenderOptions {
  format: "text" | "json";
  /** Columns of the text form; 80 unless told. */
  width?: number;
  /** Terminal colours in the text form; none unless told. */
  colour?: boolean;
  /** Only ASCII characters in the text form. */
  ascii?: boolean;
}

/** A mark sheet as text for a terminal or as JSON, ending in a newline. */
export function render(sheet: MarkSheet, options: RenderOptions): string {
  if (options.format === "json") return sheetJson(sheet);
  const width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(options.width ?? DEFAULT_WIDTH)));
  const harmless = cleanDeep(sheet);
  const ascii = options.ascii ?? false;
  // Before layout, because an ASCII spelling may be longer.
  return sheetPage(ascii ? asciiDeep(harmless) : harmless, { width, colour: options.colour ?? false, ascii });
}

function asciiDeep<T>(data: T): T {
  if (typeof data === "string") return toAscii(data) as T;
  if (Array.isArray(data)) return data.map(asciiDeep) as T;
  if (data === null || typeof data !== "object") return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, asciiDeep(value)])) as T;
}
