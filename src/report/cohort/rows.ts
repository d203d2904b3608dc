import type { Page } from "../page.ts";

/** Prints rows of a block: a name, and beside it the value in a column of its own. @param columns from the start of the name to the value */
export function rowsOf(columns: number): (page: Page, name: string, value: string) => void {
  return (page, name, value) => page.entry({ indent: 2, lead: name, hang: columns, body: value });
}
