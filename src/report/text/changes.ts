import type { MarkSheet } from "../../scoring/types.ts";
import { faint, strong, type Page } from "../page.ts";

export function changes(page: Page, sheet: MarkSheet): void {
  const count = sheet.changes.length;
  page.heading(count === 3 ? "The three changes worth most" : "The changes worth most");
  if (count === 0) page.entry({ body: "none found" });
  sheet.changes.forEach(({ advice, worth }, index) => {
    page.entry({ lead: strong(`${index + 1}`), hang: 3, body: [advice, faint(` (worth: ${worth})`)] });
  });
}
