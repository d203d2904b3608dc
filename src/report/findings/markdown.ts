import type { Finding } from "../../problem/problem.ts";
import type { CheckReport } from "../../review/types.ts";
import { cleanDeep } from "../clean.ts";
import { clock, number, sentence } from "../figures.ts";
import { markdownTable } from "../markdown.ts";
import { levelOf } from "./level.ts";
import type { FindingsLook } from "./render.ts";
import { name, sumOf } from "./text.ts";

/** A job summary may be 1 MiB; a table of so many findings stays well below, and nobody reads on. */
const MOST_ROWS = 1000;

/** Tables for a job summary, in the dialect that most forges share (tables with bars). */
export function markdownReport(raw: CheckReport, { confusion }: Pick<FindingsLook, "confusion">): string {
  const report = cleanDeep(raw);
  const parts = ["# Rubric check", `${sumOf(report)} Facts by ${report.today}.`];
  const rubrics = report.files.filter(({ figures }) => figures !== null);
  if (rubrics.length > 0) {
    parts.push(
      markdownTable(
        ["rubric", "items", "critical", "responses", "earn another item", "miss their own", "shortest talk", "limit"],
        rubrics.map(({ file, figures }) => {
          const { items, critical, responses, confused, share, unearned, speaking } = figures!;
          return [file, `${items}`, `${critical}`, `${responses}`, `${confused} (${number(100 * share)}%)`, `${unearned}`, clock(speaking.seconds), clock(speaking.limit)];
        }),
      ),
    );
  }
  if (report.findings.length > 0) parts.push("## Findings", findingsTable(report.findings));
  if (confusion) {
    parts.push("## Responses that do something to another item");
    const rows = report.files.flatMap(({ file, confusion: list }) => list.map(({ item, element, said, other, otherElement, effect }) => [file, said, name(item, element), effect, name(other, otherElement)]));
    parts.push(rows.length === 0 ? "None." : markdownTable(["rubric", "said", "a response of", "", "other item"], rows.slice(0, MOST_ROWS)) + more(rows.length));
  }
  return `${parts.join("\n\n")}\n`;
}

function findingsTable(findings: readonly Finding[]): string {
  const rows = findings.slice(0, MOST_ROWS).map((finding) => [
    levelOf(finding),
    finding.line === undefined ? finding.file : `${finding.file}:${finding.line}`,
    finding.code,
    sentence(finding.message),
    finding.mend === undefined ? "" : sentence(finding.mend),
  ]);
  return markdownTable(["", "where", "code", "what", "mend"], rows) + more(findings.length);
}

function more(count: number): string {
  return count > MOST_ROWS ? `\n\nAnd ${count - MOST_ROWS} more.` : "";
}
