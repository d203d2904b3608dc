// `npm run bench:check [-- --check] [-- --rubric NAME]`: what a person waits for who checks one rubric file by its path:
// a cold process each time, as a ratio to an empty Node process in the same run; once with nothing kept (the first check
// of a rubric, and of every edit of it) and once with what an earlier check kept. Prints Markdown; committed as
// results/check.md. Needs no corpus (`--data` is accepted like in every benchmark).
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { coldTimes, median, spread } from "./start/cold.ts";

/** At most so many times an empty Node process (issue 4). */
const BAR = 8;
const RUNS = 11;
const CLI = "bin/saidwell.js";
const option = process.argv.indexOf("--rubric");
const rubric = `rubrics/${option < 0 ? "eye-drops" : process.argv[option + 1]!}.yaml`;

if (!existsSync("dist/cli.cjs")) throw new Error("dist/ is not built: run 'npm run build' first");
const FIRST = "saidwell rubric check, first time";
const AGAIN = "saidwell rubric check, again";
const variants: Record<string, string[]> = {
  "node -e 0": ["-e", "0"],
  "saidwell --version": [CLI, "--version"],
  // Reads nothing that was kept and keeps what it reads, as a first check does.
  [FIRST]: [CLI, "rubric", "check", rubric, "--fresh"],
  [AGAIN]: [CLI, "rubric", "check", rubric],
};
const kept = mkdtempSync(join(tmpdir(), "saidwell-bench-kept-"));
process.env["SAIDWELL_CACHE"] = kept;
try {
  const times = coldTimes(variants, RUNS);
  const ratio = (name: string) => median(times[name]!) / median(times["node -e 0"]!);
  const { responses, utterances } = figuresOf();
  console.log(`# Check of one rubric\n\n${rubric}: ${responses} acceptable responses, said in ${utterances} ways; ${RUNS} cold runs each, interleaved;`);
  console.log(`Node ${process.versions.node}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}. Median, quartiles in brackets.`);
  console.log("\nFirst time: nothing is kept of this rubric as it stands, so that every response is said to the matcher; so it is after");
  console.log("each edit of the rubric or a block of it, and with a new version of the program. Again: neither has changed since a check.\n");
  console.log("| process | milliseconds | times `node -e 0` |\n|---|---|---|");
  for (const [name, values] of Object.entries(times)) console.log(`| ${name} | ${spread(values)} | ${ratio(name).toFixed(2)} |`);
  const verdict = (name: string) => `${ratio(name).toFixed(2)}, ${ratio(name) <= BAR ? "met" : "NOT met"}`;
  console.log(`\nBar: at most ${BAR} times. First time: ${verdict(FIRST)}. Again: ${verdict(AGAIN)}.`);
  // A gate holds what can be held today; the sentence above says both.
  if (process.argv.includes("--check") && ratio(AGAIN) > BAR) process.exitCode = 1;
} finally {
  rmSync(kept, { recursive: true, force: true });
}

function figuresOf(): { responses: number; utterances: number } {
  const { stdout } = spawnSync(process.execPath, [CLI, "rubric", "check", rubric, "--format", "json"], { encoding: "utf8", maxBuffer: 1e8 });
  return (JSON.parse(stdout) as { files: { figures: { responses: number; utterances: number } }[] }).files[0]!.figures;
}
