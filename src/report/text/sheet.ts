import type { MarkSheet } from "../../scoring/types.ts";
import { faint } from "../page.ts";
import { pageOf, type Look } from "../page-of.ts";
import { changes } from "./changes.ts";
import { overruled } from "./corrections.ts";
import { dangers } from "./dangers.ts";
import { dialogue } from "./dialogue.ts";
import { items } from "./items.ts";
import { claims, origin } from "./origin.ts";
import { sequence } from "./sequence.ts";
import { summary } from "./summary.ts";
import { timeAndPace, timePlan } from "./time.ts";

/** The sheet as a page of text, most useful first. @param sheet already cleaned of control characters. */
export function sheetPage(sheet: MarkSheet, look: Look): string {
  const page = pageOf(look);
  summary(page, sheet);
  changes(page, sheet);
  dangers(page, sheet);
  overruled(page, sheet);
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
  const signs = [
    /~\d/.test(text) ? "~ before a time: estimated, not given by the transcript for this very word." : "",
    /[ "]\*\S/.test(text) ? "* around words of a quote: what was found; the words beside them only help to find the place." : "",
    text.includes(page.symbols.gap) ? `${page.symbols.gap} in a quote: words are left out, of a long middle or of somebody else.` : "",
  ].filter((sign) => sign !== "");
  return signs.length === 0 ? text : text.replace(/\n$/, "\n\n") + closing(signs, look);
}

/** Explains the signs that the sheet does not spell out. */
function closing(signs: readonly string[], look: Look): string {
  const page = pageOf(look);
  for (const sign of signs) page.entry({ body: faint(sign) });
  return page.toString();
}
