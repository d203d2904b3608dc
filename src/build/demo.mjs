// `npm run demo`: marks the invented rehearsals of fixtures/rehearsals through the built command, as a person would, and
// prints their sheets and a table of the results. `npm run demo -- 3` prints the third sheet alone. Other arguments after
// `--` go to every `saidwell mark` (`npm run demo -- --format json`).
import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "yaml";
import { demoTable, wrapped } from "./demo-table.mjs";

// `npm run demo | head` is no error.
process.stdout.on("error", () => process.exit(0));

const FOLDER = "fixtures/rehearsals";
const MOST_BYTES = 64 * 1024 * 1024;
const COLUMNS = Math.max(60, Number(process.env.COLUMNS) || process.stdout.columns || 80);
const RULE = "=".repeat(Math.min(78, COLUMNS));

const index = parse(await readFile(join(FOLDER, "index.yaml"), "utf8"));
const rehearsals = Array.isArray(index) ? index : index.rehearsals;
const given = process.argv.slice(2);
const only = /^\d+$/.test(given[0] ?? "") ? Number(given[0]) : null;
const extra = only === null ? given : given.slice(1);
const json = extra.some((argument) => /(^|=)json$/.test(argument));
if (only !== null && rehearsals[only - 1] === undefined) {
  console.error(`demo: there is no rehearsal ${only}; they are numbered 1 to ${rehearsals.length}`);
  process.exit(2);
}

const sheets = [];
for (const [place, { file, rubric, title, shows = "" }] of rehearsals.entries()) {
  if (only !== null && place !== only - 1) continue;
  const args = ["mark", join(FOLDER, file), "--rubric", rubric, ...extra];
  if (!json) process.stdout.write(`${place === 0 || only !== null ? "" : "\n\n"}${heading(`${place + 1}. ${title}`, shows, args)}`);
  run(file, args, "inherit");
  if (!json && only === null) sheets.push({ title, sheet: JSON.parse(run(file, ["mark", join(FOLDER, file), "--rubric", rubric, "--format", "json"], "pipe")) });
}
if (sheets.length > 0) {
  const { file, rubric } = rehearsals[0];
  process.stdout.write(`\n\n${RULE}\nThe ${sheets.length} results\n${RULE}\n\n${demoTable(sheets, COLUMNS)}\n
coverage  share of the marks that count; "?": somebody must
          listen before it stands
critical  critical items met
unsafe    statements of the rubric's list left standing;
          "1?": one to listen to
time      from the station's start to its end; "over" the
          limit; "-": not measurable

One sheet alone, by its number, and page by page:
  npm run demo -- 1
  npm run --silent demo -- 1 --colour always | less -R
One transcript with the command itself:
  npx saidwell mark ${FOLDER}/${file} \\
    --rubric ${rubric}
`);
}

function heading(title, shows, args) {
  const about = shows === "" ? [] : wrapped(shows, RULE.length - 3).map((line) => `   ${line}`);
  // The command is not broken: it is there to be copied.
  return [RULE, title, ...about, `$ saidwell ${args.join(" ")}`, RULE, "", ""].join("\n");
}

function run(file, args, stdout) {
  const { status, error, stdout: printed } = spawnSync(process.execPath, ["bin/saidwell.js", ...args], { stdio: ["inherit", stdout, "inherit"], encoding: "utf8", maxBuffer: MOST_BYTES });
  if (error === undefined && (status === 0 || status === 1)) return printed;
  console.error(`demo: '${file}' could not be marked (exit code ${status})`, error ?? "");
  process.exit(status ?? 1);
}
