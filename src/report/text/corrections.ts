import type { CorrectionResult, HeardAt, MarkSheet } from "../../scoring/types.ts";
import { clock, number, plural } from "../figures.ts";
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
  const { label, by, when, why, line } = correction;
  page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: [strong(label), ": ", markBy(page, correction)] });
  page.entry({ indent: 4, body: `${by}, ${when}: ${why}` });
  page.entry({ indent: 4, body: faint(`line ${line} of the corrections`) });
}

function markBy(page: Page, correction: CorrectionResult): Text {
  if ("item" in correction) {
    const { content, earned, weight, tool } = correction;
    return [styled(`${page.symbols.mark[content]} ${MARK_WORD[content]}`, MARK_STYLE[content]), `, ${number(earned, 2)}/${number(weight, 2)}; the tool's mark: ${toolMark(page, tool, weight)}`];
  }
  const { found, standing } = correction.tool;
  const tools = found === 0 ? "the tool did not find it" : `the tool found the unsafe statement in ${plural(found, "place")}${standing === found ? "" : standing === 0 ? ", put right or to be listened to" : `, ${standing} of them standing`}`;
  if (correction.content === "absent") return [styled("not said", "good"), `; ${tools}`];
  return [styled("said", correction.corrected === true ? "plain" : "bad"), `, unsafe, at ${heardPlace(correction.at!)}${correction.corrected === true ? ", put right before the end" : ""}; ${tools}`];
}

/** The place as the person gave it. */
export function heardPlace(at: HeardAt): string {
  return "line" in at ? `line ${at.line}` : clock(at.time);
}
