// `npm run demo`: marks the invented rehearsals of fixtures/rehearsals through the built command, as a person would,
// and prints their sheets. Arguments after `--` go to every `saidwell mark` (`npm run demo -- --format json`).
import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "yaml";

// `npm run demo | head` is no error.
process.stdout.on("error", () => process.exit(0));

const FOLDER = "fixtures/rehearsals";

const index = parse(await readFile(join(FOLDER, "index.yaml"), "utf8"));
const rehearsals = Array.isArray(index) ? index : index.rehearsals;
const extra = process.argv.slice(2);
for (const [place, { file, rubric, title, shows = "" }] of rehearsals.entries()) {
  const args = ["mark", join(FOLDER, file), "--rubric", rubric, ...extra];
  const line = "=".repeat(78);
  if (!extra.includes("json")) process.stdout.write(`${place === 0 ? "" : "\n\n"}${line}\n${place + 1}. ${title}\n${shows === "" ? "" : `   ${shows}\n`}$ saidwell ${args.join(" ")}\n${line}\n\n`);
  const { status, error } = spawnSync(process.execPath, ["bin/saidwell.js", ...args], { stdio: "inherit" });
  if (error !== undefined || (status !== 0 && status !== 1)) {
    console.error(`demo: '${file}' could not be marked (exit code ${status})`, error ?? "");
    process.exit(status ?? 1);
  }
}
