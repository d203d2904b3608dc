// Rewrites the README's excerpt with what the built command prints today: `npm run excerpt`.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";

const ARGS = ["mark", "fixtures/rehearsals/reliever-strong.txt", "--rubric", "pressurised-inhaler"];

const sheet = execFileSync(process.execPath, ["bin/saidwell.js", ...ARGS], { encoding: "utf8", env: { ...process.env, COLUMNS: "80", NO_COLOR: "1", LC_ALL: "C.UTF-8" } });
const lines = sheet.split("\n");
/** The head, and one section of the items. */
const head = lines.slice(0, lines.findIndex((line) => line.startsWith("CRITICAL ITEMS")));
const using = lines.findIndex((line) => line.startsWith("Using it"));
const part = lines.slice(using, using + 18);
const excerpt = `\`\`\`\n$ npx saidwell ${ARGS.join(" ")}\n${[...head, "[...]", "", ...part, "[...]"].join("\n")}\n\`\`\``;
const readme = readFileSync("README.md", "utf8");
const fresh = readme.replace(/(<!-- excerpt: begin -->\n)[^]*?(<!-- excerpt: end -->)/, (_, begin, end) => `${begin}${excerpt}\n${end}`);
if (!fresh.includes(excerpt)) throw new Error("README.md has no place for the excerpt");
writeFileSync("README.md", fresh);
