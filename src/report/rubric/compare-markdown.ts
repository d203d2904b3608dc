import type { RubricComparison } from "../../review/compare.ts";
import { escapeMarkdown, markdownTable } from "../markdown.ts";
import { causeWords, elementWords, KEPT, markWords, partName, resultWords, twoRubrics, versionWords } from "./comparison-words.ts";

/** A job summary or a comment should stay readable; the JSON form has everything. */
const MOST_CANDIDATES = 100;

/** For a job summary or a comment on a change, GitHub Flavored Markdown (tables: section 4.10). @param report cleaned */
export function comparisonMarkdown(report: RubricComparison): string {
  const { changes, changed, failed, transcripts } = report;
  const parts = ["# Rubric comparison", `Before: ${escapeMarkdown(versionWords(report.before))}  \nAfter: ${escapeMarkdown(versionWords(report.after))}`];
  const two = twoRubrics(report);
  if (two !== null) parts.push(`**${escapeMarkdown(two)}**`);
  if (report.versionKept) parts.push(`**${KEPT}**`);
  parts.push("## What was edited");
  parts.push(changes.length === 0 ? "Nothing: the two say the same." : markdownTable(["no.", "part", "change", "marks"], changes.map((change, place) => [`${place + 1}`, partName(change), change.text, change.marks ? "can change" : "words only"])));
  parts.push("## Whose marks change", `${changed.length} of ${transcripts - failed.length}.`);
  for (const candidate of changed.slice(0, MOST_CANDIDATES)) {
    const { file, before, after, items, found, outcome } = candidate;
    parts.push(`### ${escapeMarkdown(file)}`, escapeMarkdown(resultWords(before, after).join("") + (outcome === null ? "" : ` (${causeWords(outcome)})`)));
    const rows = [
      ...items.map((item) => [`${item.label} (${item.id})`, markWords(item.before), markWords(item.after), [elementWords(item), causeWords(item.why)].filter((words) => words !== "").join("; ")]),
      ...found.map(({ kind, id, before: was, after: is, why }) => [`${kind === "unsafe" ? "unsafe statement" : "question"} ${id}`, was, is, causeWords(why)]),
    ];
    if (rows.length > 0) parts.push(markdownTable(["item", "before", "after", "why"], rows));
  }
  if (changed.length > MOST_CANDIDATES) parts.push(`And ${changed.length - MOST_CANDIDATES} more.`);
  if (failed.length > 0) parts.push("## Not marked", markdownTable(["transcript", "code", "why"], failed.map(({ file, code, message }) => [file, code, message])));
  return `${parts.join("\n\n")}\n`;
}
