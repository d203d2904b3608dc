import type { MarkSheet } from "../../scoring/types.ts";
import { faint, Page } from "../page.ts";
import { painter } from "../style.ts";
import { changes } from "./changes.ts";
import { dangers } from "./dangers.ts";
import { dialogue } from "./dialogue.ts";
import { items } from "./items.ts";
import { claims, origin } from "./origin.ts";
import { sequence } from "./sequence.ts";
import { summary } from "./summary.ts";
import { timeAndPace, timePlan } from "./time.ts";

export interface PageOptions {
  width: number;
  colour: boolean;
  ascii: boolean;
}

/** The sheet as a page of text, most useful first. @param sheet already cleaned of control characters. */
export function sheetPage(sheet: MarkSheet, options: PageOptions): string {
  const page = new Page({ width: options.width, ascii: options.ascii, paint: painter(options.colour) });
  summary(page, sheet);
  changes(page, sheet);
  dangers(page, sheet);
  items(page, sheet);
  dialogue(page, sheet);
  sequence(page, sheet);
  timeAndPace(page, sheet);
  timePlan(page, sheet);
  claims(page, sheet);
  origin(page, sheet);
  page.blank();
  page.entry({ body: faint(sheet.caution) });
  const text = page.toString();
  return text.includes("~") ? text.replace(/\n$/, "\n\n") + closing(options) : text;
}

/** Explains the one sign that the sheet does not spell out. */
function closing(options: PageOptions): string {
  const page = new Page({ width: options.width, ascii: options.ascii, paint: painter(options.colour) });
  page.entry({ body: faint("~ before a time: estimated, not given by the transcript for this very word.") });
  return page.toString();
}
