import type { Finding } from "../../problem/problem.ts";
import type { CheckReport, FileReview, RubricFigures } from "../../review/types.ts";
import { cleanDeep } from "../clean.ts";
import { clock, number, plural, sentence } from "../figures.ts";
import { faint, strong, styled, type Page } from "../page.ts";
import { pageOf } from "../page-of.ts";
import type { Style } from "../style.ts";
import { levelOf, type Level } from "./level.ts";
import type { FindingsLook } from "./render.ts";

const STYLE: Record<Level, Style> = { error: "bad", warning: "fair", note: "faint" };

/** Findings by file, then what the phrases of each rubric come to, then the sum. */
export function textReport(raw: CheckReport, look: FindingsLook): string {
  const report = cleanDeep(raw);
  const page = pageOf(look);
  for (const [file, findings] of byFile(report.findings)) {
    page.blank();
    page.entry({ body: strong(file) });
    for (const finding of findings) tell(page, finding);
  }
  const rubrics = report.files.filter(({ figures }) => figures !== null);
  if (rubrics.length > 0) {
    page.heading("Rubrics");
    for (const review of rubrics) summary(page, review, review.figures!);
  }
  if (look.confusion) confusionTable(page, report);
  page.blank();
  page.entry({ body: sumOf(report) });
  return page.toString();
}

function tell(page: Page, finding: Finding): void {
  const level = levelOf(finding);
  const place = finding.line === undefined ? "" : `${finding.line}:${finding.column ?? 1}`;
  page.entry({ indent: 2, lead: faint(place), hang: 9, body: [styled(level, STYLE[level]), ` ${finding.message} `, faint(`[${finding.code}]`)] });
  if (finding.mend !== undefined) page.entry({ indent: 11, body: faint(sentence(finding.mend)) });
}

function summary(page: Page, { file }: FileReview, figures: RubricFigures): void {
  const { items, critical, elements, responses, utterances, unearned, confused, share, speaking } = figures;
  page.entry({ indent: 2, body: strong(file) });
  page.entry({ indent: 4, body: `${plural(items, "item")}, ${critical} critical; ${plural(elements, "element")}; ${plural(responses, "acceptable response")}, said in ${plural(utterances, "way")}` });
  page.entry({ indent: 4, body: `${number(100 * share)}% (${confused}) earn another item as well; ${unearned} do not earn their own element` });
  page.entry({ indent: 4, body: `shortest words ${clock(speaking.seconds)}, middling ${clock(speaking.middleSeconds)} of talk; target ${clock(speaking.target)}, limit ${clock(speaking.limit)}` });
}

function confusionTable(page: Page, report: CheckReport): void {
  page.heading("Responses that do something to another item");
  const files = report.files.filter(({ confusion }) => confusion.length > 0);
  if (files.length === 0) page.entry({ indent: 2, body: "none" });
  for (const { file, confusion } of files) {
    page.entry({ indent: 2, body: strong(file) });
    for (const { item, element, said, other, otherElement, effect } of confusion) {
      page.entry({ indent: 4, body: `'${said}'` });
      page.entry({ indent: 6, body: `of ${name(item, element)} ${effect === "earns" ? "earns" : "contradicts"} ${name(other, otherElement)}` });
    }
  }
}

export function name(item: string, element: string): string {
  return item === element ? item : `${item}/${element}`;
}

export function sumOf({ counts, files }: CheckReport): string {
  const checked = files.filter(({ kind }) => kind !== "other").length;
  const found = [plural(counts.errors, "error"), plural(counts.warnings, "warning"), plural(counts.notes, "note")].join(", ");
  return `${plural(checked, "file")} checked: ${found}.`;
}

export function byFile(findings: readonly Finding[]): Map<string, Finding[]> {
  const files = new Map<string, Finding[]>();
  for (const finding of findings) {
    const list = files.get(finding.file);
    if (list === undefined) files.set(finding.file, [finding]);
    else list.push(finding);
  }
  return files;
}
