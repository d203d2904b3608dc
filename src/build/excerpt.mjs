// Rewrites the README's excerpt with what the built command prints today: `npm run excerpt`.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { excerptArguments, withExcerpt } from "./readme-excerpt.mjs";

const env = { ...process.env, COLUMNS: "80", NO_COLOR: "1", LC_ALL: "C.UTF-8" };
const sheet = execFileSync(process.execPath, ["bin/saidwell.js", ...excerptArguments()], { encoding: "utf8", env });
writeFileSync("README.md", withExcerpt(readFileSync("README.md", "utf8"), sheet));
