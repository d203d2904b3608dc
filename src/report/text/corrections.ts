import type { CorrectionResult, MarkSheet } from "../../scoring/types.ts";
import { number, plural } from "../figures.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import { MARK_STYLE, MARK_WORD } from "../style.ts";
import { toolMark } from "./items.ts";
import { row } from "./row.ts";

/** In the head of the sheet: nobody takes an overruled result for the tool's own. */
export function overruledInShort(page: Page, { corrections }: MarkSheet): void {
  // Sheets of earlier versions have none.
  if ((corrections ?? null) === null) return;
  const people = [...new Set(corrections!.applied.map(({ by }) => by))];
  row(page, "Overruled", styled(`${plural(corrections!.applied.length, "mark")} by hand (${people.join(", ")}): the result rests on ${corrections!.applied.length === 1 ? "it" : "them"}`, "doubt"));
}

/** What was overruled, by whom, when and why, with the tool's own mark beside it. */
export function overruled(page: Page, { corrections }: MarkSheet): void {
  if ((corrections ?? null) === null) return;
  page.heading("Overruled by hand");
  page.entry({ body: faint(`By ${corrections!.file}. Totals and result are computed from these marks; the words found are the tool's.`) });
  for (const correction of corrections!.applied) one(page, correction);
}

function one(page: Page, correction: CorrectionResult): void {
  const { label, content, by, when, why, line } = correction;
  const mark: Text =
    "unsafe" in correction
      ? [styled("not said", "good"), `; the tool found the unsafe statement in ${plural(correction.tool.found, "place")}`]
      : [styled(`${page.symbols.mark[content]} ${MARK_WORD[content]}`, MARK_STYLE[content]), `, ${number(correction.earned, 2)}/${number(correction.weight, 2)}; the tool's mark: ${toolMark(page, correction.tool, correction.weight)}`];
  page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: [strong(label), ": ", mark] });
  page.entry({ indent: 4, body: `${by}, ${when}: ${why}` });
  page.entry({ indent: 4, body: faint(`line ${line} of the corrections`) });
}
