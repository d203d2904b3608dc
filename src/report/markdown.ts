/** A table of GitHub Flavored Markdown (section 4.10), every cell escaped. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(escapeMarkdown).join(" | ")} |`;
  return [line(head), `|${head.map(() => "---").join("|")}|`, ...rows.map(line)].join("\n");
}

/** Text from outside is text: no table bar, no mark-up, no HTML (CommonMark 0.31, section 2.4: any ASCII punctuation may be escaped). */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~&!]/g, "\\$&");
}
