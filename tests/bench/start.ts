// `npm run bench:start [-- --check]`: what a person waits for when marking one 7-minute rehearsal, from the shell's
// prompt to the sheet: a cold process each time, as a ratio to an empty Node process in the same run.
// Prints Markdown; committed as results/start.md. Needs no corpus (`--data` is accepted like in every benchmark).
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { sevenMinutes } from "./start/transcript.ts";

/** At most so many times an empty Node process (issue 2). */
const BAR = 5;
/** Odd, so that the median is a run that happened; interleaved, so that a busy machine slows both alike. */
const RUNS = 21;
const RUBRIC = "pressurised-inhaler";

const CLI = "bin/saidwell.js";
/** Reports the peak memory of the process it is loaded into. */
const WATCH = `data:text/javascript,process.on("exit",()=>process.stderr.write("\\npeak "+process.resourceUsage().maxRSS))`;

if (!existsSync("dist/cli.cjs")) throw new Error("dist/ is not built: run 'npm run build' first");
const folder = mkdtempSync(join(tmpdir(), "saidwell-start-"));
try {
  const transcript = join(folder, "rehearsal.txt");
  const text = sevenMinutes();
  writeFileSync(transcript, text);
  const variants: Record<string, string[]> = {
    "node -e 0": ["-e", "0"],
    "saidwell --version": [CLI, "--version"],
    "saidwell mark": [CLI, "mark", transcript, "--rubric", RUBRIC],
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
  console.log(`# Start-up\n\nOne rehearsal of 7 minutes (${text.split(/\s+/).length} words, invented), rubric ${RUBRIC}; ${RUNS} cold runs each, interleaved;`);
  console.log(`Node ${process.versions.node}, ${cpus().length} processors. Median, quartiles in brackets.\n`);
  console.log("| process | milliseconds | times `node -e 0` | peak memory, MB |\n|---|---|---|---|");
  for (const [name, args] of Object.entries(variants)) {
    const sorted = [...times[name]!].sort((a, b) => a - b);
    const quartile = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(0);
    console.log(`| ${name} | ${median(sorted).toFixed(0)} (${quartile(0.25)} to ${quartile(0.75)}) | ${(median(sorted) / base).toFixed(2)} | ${peak(args).toFixed(0)} |`);
  }
  const ratio = median(times["saidwell mark"]!) / base;
  console.log(`\nBar: at most ${BAR} times. ${ratio <= BAR ? "Met" : "NOT met"}: ${ratio.toFixed(2)}.`);
  if (process.argv.includes("--check") && ratio > BAR) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function run(args: string[]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${String(stderr)}`);
}

function peak(args: string[]): number {
  const { stderr } = spawnSync(process.execPath, ["--import", WATCH, ...args], { stdio: ["ignore", "ignore", "pipe"] });
  return Number(/peak (\d+)/.exec(String(stderr))![1]) / 1024;
}

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
