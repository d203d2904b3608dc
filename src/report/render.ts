import type { MarkSheet } from "../scoring/types.ts";
import { harmless } from "./harmless.ts";
import { sheetJson } from "./json.ts";
import { DEFAULT_WIDTH, pageWidth } from "./page-width.ts";
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
  const ascii = options.ascii ?? false;
  return sheetPage(harmless(sheet, ascii), { width: pageWidth(options.width ?? DEFAULT_WIDTH), colour: options.colour ?? false, ascii });
}
