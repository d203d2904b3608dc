// `npm run bench:check [-- --check] [-- --rubric NAME]`: what a person waits for who checks one rubric file by its path:
// a cold process each time, as a ratio to an empty Node process in the same run. Prints Markdown; committed as
// results/check.md. Needs no corpus (`--data` is accepted like in every benchmark).
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { coldTimes, median, spread } from "./start/cold.ts";

/** At most so many times an empty Node process (issue 4). */
const BAR = 8;
const RUNS = 11;
const CLI = "bin/saidwell.js";
const option = process.argv.indexOf("--rubric");
const rubric = `rubrics/${option < 0 ? "eye-drops" : process.argv[option + 1]!}.yaml`;

if (!existsSync("dist/cli.cjs")) throw new Error("dist/ is not built: run 'npm run build' first");
const variants: Record<string, string[]> = {
  "node -e 0": ["-e", "0"],
  "saidwell --version": [CLI, "--version"],
  "saidwell rubric check": [CLI, "rubric", "check", rubric],
};
const times = coldTimes(variants, RUNS);
const base = median(times["node -e 0"]!);
const { responses, utterances } = figuresOf();
console.log(`# Check of one rubric\n\n${rubric}: ${responses} acceptable responses, said in ${utterances} ways; ${RUNS} cold runs each, interleaved;`);
console.log(`Node ${process.versions.node}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}. Median, quartiles in brackets.\n`);
console.log("| process | milliseconds | times `node -e 0` |\n|---|---|---|");
for (const [name, values] of Object.entries(times)) console.log(`| ${name} | ${spread(values)} | ${(median(values) / base).toFixed(2)} |`);
const ratio = median(times["saidwell rubric check"]!) / base;
console.log(`\nBar: at most ${BAR} times. ${ratio <= BAR ? "Met" : "NOT met"}: ${ratio.toFixed(2)}.`);
if (process.argv.includes("--check") && ratio > BAR) process.exitCode = 1;

function figuresOf(): { responses: number; utterances: number } {
  const { stdout } = spawnSync(process.execPath, [CLI, "rubric", "check", rubric, "--format", "json"], { encoding: "utf8", maxBuffer: 1e8 });
  return (JSON.parse(stdout) as { files: { figures: { responses: number; utterances: number } }[] }).files[0]!.figures;
}
