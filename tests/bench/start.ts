// `npm run bench:start [-- --check]`: what a person waits for when marking one 7-minute rehearsal, from the shell's
// prompt to the sheet: a cold process each time, as a ratio to an empty Node process in the same run.
// Prints Markdown; committed as results/start.md. Needs no corpus (`--data` is accepted like in every benchmark).
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { coldTimes, median, spread } from "./start/cold.ts";
import { sevenMinutes } from "./start/transcript.ts";

/** At most so many times an empty Node process (issue 2). */
const BAR = 5;
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
  const times = coldTimes(variants, RUNS);
  const base = median(times["node -e 0"]!);
  console.log(`# Start-up\n\nOne rehearsal of 7 minutes (${text.split(/\s+/).length} words, invented), rubric ${RUBRIC}; ${RUNS} cold runs each, interleaved;`);
  console.log(`Node ${process.versions.node}, ${cpus().length} processors. Median, quartiles in brackets.\n`);
  console.log("| process | milliseconds | times `node -e 0` | peak memory, MB |\n|---|---|---|---|");
  for (const [name, args] of Object.entries(variants)) console.log(`| ${name} | ${spread(times[name]!)} | ${(median(times[name]!) / base).toFixed(2)} | ${peak(args).toFixed(0)} |`);
  const ratio = median(times["saidwell mark"]!) / base;
  console.log(`\nBar: at most ${BAR} times. ${ratio <= BAR ? "Met" : "NOT met"}: ${ratio.toFixed(2)}.`);
  if (process.argv.includes("--check") && ratio > BAR) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function peak(args: string[]): number {
  const { stderr } = spawnSync(process.execPath, ["--import", WATCH, ...args], { stdio: ["ignore", "ignore", "pipe"] });
  return Number(/peak (\d+)/.exec(String(stderr))![1]) / 1024;
}
