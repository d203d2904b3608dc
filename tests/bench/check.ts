// `npm run bench:check [-- --check] [-- --rubric NAME]`: what a person waits for who checks one rubric file by its path:
// a cold process each time, as a ratio to an empty Node process in the same run. Prints Markdown; committed as
// results/check.md. Needs no corpus (`--data` is accepted like in every benchmark).
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { cpus, loadavg } from "node:os";

/** At most so many times an empty Node process (issue 4). */
const BAR = 8;
/** Odd, so that the median is a run that happened; interleaved, so that a busy machine slows both alike. */
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
const times = Object.fromEntries(Object.keys(variants).map((name) => [name, [] as number[]]));
for (const args of Object.values(variants)) run(args);
for (let round = 0; round < RUNS; round += 1) {
  for (const [name, args] of Object.entries(variants)) {
    const start = process.hrtime.bigint();
    run(args);
    times[name]!.push(Number(process.hrtime.bigint() - start) / 1e6);
  }
}
const base = median(times["node -e 0"]!);
const { responses, utterances } = figuresOf();
console.log(`# Check of one rubric\n\n${rubric}: ${responses} acceptable responses, said in ${utterances} ways; ${RUNS} cold runs each, interleaved;`);
console.log(`Node ${process.versions.node}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}. Median, quartiles in brackets.\n`);
console.log("| process | milliseconds | times `node -e 0` |\n|---|---|---|");
for (const name of Object.keys(variants)) {
  const sorted = [...times[name]!].sort((a, b) => a - b);
  const quartile = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(0);
  console.log(`| ${name} | ${median(sorted).toFixed(0)} (${quartile(0.25)} to ${quartile(0.75)}) | ${(median(sorted) / base).toFixed(2)} |`);
}
const ratio = median(times["saidwell rubric check"]!) / base;
console.log(`\nBar: at most ${BAR} times. ${ratio <= BAR ? "Met" : "NOT met"}: ${ratio.toFixed(2)}.`);
if (process.argv.includes("--check") && ratio > BAR) process.exitCode = 1;

function run(args: string[]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${String(stderr)}`);
}

function figuresOf(): { responses: number; utterances: number } {
  const { stdout } = spawnSync(process.execPath, [CLI, "rubric", "check", rubric, "--format", "json"], { encoding: "utf8", maxBuffer: 1e8 });
  return (JSON.parse(stdout) as { files: { figures: { responses: number; utterances: number } }[] }).files[0]!.figures;
}

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
