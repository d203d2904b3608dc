import type { CandidateChange, ItemMark, RubricComparison } from "../../review/compare.ts";
import { cleanDeep } from "../clean.ts";
import { plural } from "../figures.ts";
import { toJson } from "../json.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import { pageOf, type Look } from "../page-of.ts";
import { MARK_STYLE, MARK_WORD } from "../style.ts";
import { comparisonMarkdown } from "./compare-markdown.ts";
import { causeWords, elementWords, KEPT, markFigures, partName, resultWords, twoRubrics, versionWords } from "./comparison-words.ts";

interface ComparisonLook extends Look {
  format: "text" | "json" | "markdown";
}

/** What an edit of a rubric does to the marks of people, in any of its forms. */
export function renderComparison(report: RubricComparison, look: ComparisonLook): string {
  if (look.format === "json") return toJson(report);
  return look.format === "markdown" ? comparisonMarkdown(cleanDeep(report)) : text(cleanDeep(report), look);
}

function text(report: RubricComparison, look: Look): string {
  const page = pageOf(look);
  page.entry({ lead: strong("Before"), hang: 8, body: versionWords(report.before) });
  page.entry({ lead: strong("After"), hang: 8, body: versionWords(report.after) });
  const two = twoRubrics(report);
  if (two !== null) page.entry({ body: styled(two, "fair") });
  if (report.versionKept) page.entry({ body: styled(KEPT, "fair") });
  page.heading("What was edited", plural(report.changes.length, "change"));
  if (report.changes.length === 0) page.entry({ body: "nothing: the two say the same" });
  report.changes.forEach((change, place) => {
    page.entry({ lead: faint(`${place + 1}`), hang: 4, body: [strong(partName(change)), ` ${change.text}`, ...(change.marks ? [] : [faint(" (words only)")])] });
  });
  page.heading("Whose marks change", `${report.changed.length} of ${report.transcripts - report.failed.length}`);
  if (report.changed.length === 0) page.entry({ body: "nobody's" });
  for (const candidate of report.changed) one(page, candidate);
  if (report.failed.length > 0) {
    page.heading("Not marked", String(report.failed.length));
    for (const { file, code, message } of report.failed) page.entry({ lead: page.symbols.bullet, hang: 2, body: [strong(file), `: ${message} `, faint(`[${code}]`)] });
  }
  return page.toString();
}

function one(page: Page, { file, before, after, items, found, outcome }: CandidateChange): void {
  page.blank();
  page.entry({ body: [strong(file), ": ", ...resultWords(before, after)] });
  if (outcome !== null) page.entry({ indent: 4, body: faint(causeWords(outcome)) });
  for (const item of items) {
    page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: [`${item.label} `, faint(`(${item.id})`), ": ", mark(item.before), " -> ", mark(item.after)] });
    const elements = elementWords(item);
    if (elements !== "") page.entry({ indent: 4, body: elements });
    page.entry({ indent: 4, body: faint(causeWords(item.why)) });
  }
  for (const { kind, id, before: was, after: is, why } of found) {
    page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: `${kind === "unsafe" ? "unsafe statement" : "question"} ${id}: ${was} -> ${is}` });
    page.entry({ indent: 4, body: faint(causeWords(why)) });
  }
}

function mark(given: ItemMark | null): Text {
  return given === null ? faint("not in it") : [styled(MARK_WORD[given.content], MARK_STYLE[given.content]), ` ${markFigures(given)}`];
}
