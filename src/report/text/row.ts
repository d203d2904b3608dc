import { strong, type Page, type Text } from "../page.ts";

/** Columns from the row's name to its value: the longest name and a blank. */
export const NAME_COLUMNS = 17;

/** `Name           value`, the value wrapped in its own column. */
export function row(page: Page, name: string, value: Text): void {
  page.entry({ lead: strong(name), hang: NAME_COLUMNS, body: value });
}
