import type { Page } from "../page.ts";
import { styled } from "../page.ts";
import { displayWidth } from "../width.ts";

/** The page prints it as a plain blank and never breaks a line there. */
const FIXED_BLANK = "\u00a0";
const GAP = 2;

/**
 * Rows in columns: the first is text and may wrap, the others are right-aligned figures that never break. Where they do
 * not fit beside the first, they go below it.
 */
export function table(page: Page, header: readonly string[], rows: readonly (readonly string[])[], indent = 2): void {
  const widths = header.slice(1).map((title, column) => Math.max(displayWidth(title), ...rows.map((row) => displayWidth(row[column + 1] ?? ""))));
  const line = (cells: readonly string[]) =>
    cells.slice(1).map((cell, column) => FIXED_BLANK.repeat(Math.max(0, widths[column]! - displayWidth(cell))) + cell.replaceAll(" ", FIXED_BLANK)).join(FIXED_BLANK.repeat(GAP));
  page.entry({ indent, body: styled(header[0]!, "faint"), right: styled(line(header), "faint") });
  for (const row of rows) page.entry({ indent, body: row[0]!, right: line(row) });
}
