// What README.md shows of a sheet. A test holds the two together; `npm run excerpt` writes it anew.
import { readFileSync } from "node:fs";
import { parse } from "yaml";

/** Lines of the items that the README shows. */
const ITEM_LINES = 24;
const PLACE = /(<!-- excerpt: begin -->\n)[^]*?(<!-- excerpt: end -->)/;

/** The arguments of the first of the demo. */
export function excerptArguments() {
  const index = parse(readFileSync("fixtures/rehearsals/index.yaml", "utf8"));
  const { file, rubric } = (Array.isArray(index) ? index : index.rehearsals)[0];
  return ["mark", `fixtures/rehearsals/${file}`, "--rubric", rubric];
}

/** The README with the head of the sheet and the first of its items. Throws where it has no place for them. */
export function withExcerpt(readme, sheet) {
  const lines = sheet.split("\n");
  const head = lines.slice(0, lines.findIndex((line) => line.startsWith("CRITICAL ITEMS")));
  const items = lines.findIndex((line) => line.startsWith("ITEMS"));
  const shown = [...head, "[...]", "", ...lines.slice(items, items + ITEM_LINES), "[...]"].join("\n");
  if (!PLACE.test(readme)) throw new Error("README.md has no place for the excerpt");
  return readme.replace(PLACE, (_, begin, end) => `${begin}\`\`\`\n$ npx saidwell ${excerptArguments().join(" ")}\n${shown}\n\`\`\`\n${end}`);
}
