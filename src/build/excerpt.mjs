// Rewrites the README's excerpt with what the built command prints today: `npm run excerpt`.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { parse } from "yaml";

/** The first of the demo. */
const index = parse(readFileSync("fixtures/rehearsals/index.yaml", "utf8"));
const { file, rubric } = (Array.isArray(index) ? index : index.rehearsals)[0];
const ARGS = ["mark", `fixtures/rehearsals/${file}`, "--rubric", rubric];

const sheet = execFileSync(process.execPath, ["bin/saidwell.js", ...ARGS], { encoding: "utf8", env: { ...process.env, COLUMNS: "80", NO_COLOR: "1", LC_ALL: "C.UTF-8" } });
const lines = sheet.split("\n");
/** The head, and the first of the items. */
const head = lines.slice(0, lines.findIndex((line) => line.startsWith("CRITICAL ITEMS")));
const items = lines.findIndex((line) => line.startsWith("ITEMS"));
const part = lines.slice(items, items + 24);
const excerpt = `\`\`\`\n$ npx saidwell ${ARGS.join(" ")}\n${[...head, "[...]", "", ...part, "[...]"].join("\n")}\n\`\`\``;
const readme = readFileSync("README.md", "utf8");
const fresh = readme.replace(/(<!-- excerpt: begin -->\n)[^]*?(<!-- excerpt: end -->)/, (_, begin, end) => `${begin}${excerpt}\n${end}`);
if (!fresh.includes(excerpt)) throw new Error("README.md has no place for the excerpt");
writeFileSync("README.md", fresh);
