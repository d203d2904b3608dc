// `npm run bench:cohort [-- --full] [-- --check]`: marks generated rehearsals through the built command: throughput, peak
// memory at two sizes, one worker against two, and runs killed at random moments. `--full` takes the sizes of the bar
// (1,000 and 10,000; some minutes), else small ones for a quick look. Prints Markdown; committed as results/cohort.md.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { rehearsal, STATIONS, writeCohort, WORDS } from "./cohort/generate.ts";
import { busySeconds } from "./cohort/machine.ts";
import { seededRandom } from "../../src/cohort/statistics/random.ts";

/** Issue 5: peak memory may grow by so much between the two sizes; two workers are at least so many times as fast as one. */
const BAR = { growth: 0.1, speedUp: 1.7 };
const full = process.argv.includes("--full");
/** `--part throughput`, `workers` or `kills`: that part alone. */
const only = process.argv.includes("--part") ? process.argv[process.argv.indexOf("--part") + 1] : undefined;
const [SMALL, LARGE, KILLED] = full ? [1_000, 10_000, 400] : [100, 300, 100];
const KILLS = 10;
/** Interleaved, so that a busy machine slows both alike; odd, so that the median is a run that happened. */
const ROUNDS = 3;
/** For the kills: printed, so that a failure can be done again. */
const SEED = 20_260;
/** Currency units for an hour of one processor. An example, no offer: put your own in. */
const PRICE = 0.05;
const NATIONAL = 1_000_000;

const CLI = "bin/saidwell.js";
const WATCH = `data:text/javascript,import{isMainThread}from"node:worker_threads";if(isMainThread)process.on("exit",()=>{const u=process.resourceUsage();process.stderr.write("\\nused "+u.maxRSS+" "+(u.userCPUTime+u.systemCPUTime))})`;

interface Run {
  seconds: number;
  megabytes: number;
  cpuSeconds: number;
  told: string;
}

if (!existsSync("dist/cohort-worker.js")) throw new Error("dist/ is not built: run 'npm run build' first");
const folder = mkdtempSync(join(tmpdir(), "saidwell-cohort-"));
let met = true;
try {
  console.log(`# Cohorts\n\nGenerated rehearsals (invented; ${WORDS} words, 25 items, stations ${STATIONS.join(", ")}; unlabelled, a time every 20 seconds).`);
  console.log(`Node ${process.versions.node}, ${cpus().length} processors (${cpus()[0]!.model.trim()}), load before the start ${loadavg()[0]!.toFixed(2)}. \`${["npm run bench:cohort", ...(process.argv.length > 2 ? ["--", ...process.argv.slice(2)] : [])].join(" ")}\``);
  for (const [name, count] of [["small", SMALL], ["large", LARGE], ["killed", KILLED]] as const) if (name !== "large" || only === undefined || only === "throughput") writeCohort(join(folder, name), count);
  if (rehearsalHash() !== rehearsalHash()) throw new Error("the generator does not repeat");
  const parts = { throughput, workers: speedUp, kills };
  for (const [name, part] of Object.entries(parts)) if (only === undefined || only === name) await part();
  console.log(`\nLoad at the end ${loadavg().map((load) => load.toFixed(2)).join(", ")} (1, 5, 15 minutes).`);
  if (!full) console.log("\nSmall sizes, for a quick look: the bars are for `-- --full`.");
  if (process.argv.includes("--check") && !met) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function throughput(): void {
  const runs = [SMALL, LARGE].map((count, place) => ({ count, run: mark(place === 0 ? "small" : "large", `${place === 0 ? "small" : "large"}-out`, 2) }));
  console.log("\n## Throughput and memory, two workers\n\n| rehearsals | seconds, all outputs | a second | processor seconds each | peak memory, MB | results.jsonl, kB each |\n|---|---|---|---|---|---|");
  for (const [place, { count, run }] of runs.entries()) {
    const size = statSync(join(folder, `${place === 0 ? "small" : "large"}-out/results.jsonl`)).size / count / 1000;
    console.log(`| ${count} | ${run.seconds.toFixed(1)} | ${(count / run.seconds).toFixed(1)} | ${(run.cpuSeconds / count).toFixed(3)} | ${run.megabytes.toFixed(0)} | ${size.toFixed(1)} |`);
  }
  const growth = runs[1]!.run.megabytes / runs[0]!.run.megabytes - 1;
  verdict(growth <= BAR.growth, `Bar: peak memory grows by at most ${100 * BAR.growth}% from ${SMALL} to ${LARGE}`, `${(100 * growth).toFixed(1)}%`);
  const hours = (runs[1]!.run.cpuSeconds / LARGE / 3600) * NATIONAL;
  console.log(`\nA national sitting of 1 million transcripts by these figures: ${hours.toFixed(1)} processor hours, ${(hours * PRICE).toFixed(2)} units of money at ${PRICE} for an hour of one processor (an example; storage and transfer apart).`);
  rmSync(join(folder, "large-out"), { recursive: true });
  rmSync(join(folder, "small-out"), { recursive: true });
}

async function speedUp(): Promise<void> {
  const seconds: Record<1 | 2, number[]> = { 1: [], 2: [] };
  const busy: Record<1 | 2, number[]> = { 1: [], 2: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const workers of [1, 2] as const) {
      seconds[workers].push(mark("small", `workers-${workers}`, workers).seconds);
      busy[workers].push(await busySeconds(workers));
      if (round < ROUNDS - 1) rmSync(join(folder, `workers-${workers}`), { recursive: true });
    }
  }
  const [one, two] = [median(seconds[1]), median(seconds[2])];
  console.log(`\n## Workers\n\n| workers | seconds for ${SMALL}, median of ${ROUNDS} | all runs |\n|---|---|---|\n| 1 | ${one.toFixed(1)} | ${seconds[1].map((s) => s.toFixed(1)).join(", ")} |\n| 2 | ${two.toFixed(1)} | ${seconds[2].map((s) => s.toFixed(1)).join(", ")} |`);
  verdict(one / two >= BAR.speedUp, `Bar: two workers at least ${BAR.speedUp} times as fast as one`, (one / two).toFixed(2));
  console.log(`\nWhat this machine gives, in the same rounds: two busy programs that share nothing do ${((2 * median(busy[1])) / median(busy[2])).toFixed(2)} times the work of one in the same time (${busy[1].map((s) => s.toFixed(1)).join(", ")} s for one, ${busy[2].map((s) => s.toFixed(1)).join(", ")} s for two).`);
  verdict(treeHash("workers-1") === treeHash("workers-2"), "Bar: every output has the same bytes with one worker and with two", treeHash("workers-2").slice(0, 12));
}

/** One cohort, its run killed over and over: after each kill the journal is read as it stands. */
async function kills(): Promise<void> {
  const next = seededRandom(SEED);
  const whole = mark("killed", "whole", 2);
  const moments: string[] = [];
  let [twice, lost, before] = [0, 0, 0];
  for (let kill = 0; kill < KILLS; kill += 1) {
    // From the very start to somewhat more than a tenth of the work, so that the kills spread over it.
    const after = Math.round(300 + next() * 1000 * (0.8 + (1.6 * whole.seconds) / KILLS));
    await killedRun(after);
    const { lines, torn, ids } = journal();
    if (new Set(ids).size !== ids.length) twice += 1;
    if (lines < before) lost += 1;
    before = lines;
    moments.push(`${after} ms (${lines}${torn ? ", torn" : ""})`);
  }
  const { told } = mark("killed", "killed-out", 2);
  const [, marked, kept] = /marked (\d+), kept (\d+)/.exec(told)!.map(Number);
  console.log(`\n## Killed with SIGKILL at ${KILLS} random moments (seed ${SEED}), ${KILLED} rehearsals\n\nKilled after (whole lines then in the journal): ${moments.join(", ")}. The run after the last kill: ${told}.`);
  verdict(lost === 0 && kept === before && treeHash("whole") === treeHash("killed-out"), "Bar: nothing lost: every whole line is kept, and every output has the bytes of a run that was not killed", `${lost} lost, ${kept} of ${before} kept`);
  verdict(twice === 0 && marked === KILLED - before, "Bar: nothing marked twice", `${twice} journals with a line twice, ${marked} of ${KILLED - before} left were marked`);
}

function killedRun(after: number): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args("killed", "killed-out", 2), { stdio: "ignore" });
    const timer = setTimeout(() => child.kill("SIGKILL"), after);
    child.on("exit", () => {
      clearTimeout(timer);
      resolve();
    });
  });
}

/** The journal as a kill left it; when the run had ended first, its results. */
function journal(): { lines: number; torn: boolean; ids: string[] } {
  const path = ["journal.jsonl", "results.jsonl"].map((name) => join(folder, "killed-out", name)).find(existsSync);
  if (path === undefined) return { lines: 0, torn: false, ids: [] };
  const parts = readFileSync(path, "utf8").split("\n");
  const torn = parts.pop() !== "";
  return { lines: parts.length, torn, ids: parts.map((line) => (JSON.parse(line) as { file: string }).file) };
}

function args(input: string, output: string, workers: number): string[] {
  return [CLI, "cohort", join(folder, input), ...STATIONS.flatMap((name) => ["--rubric", `${name}=${name}`]), "--out", join(folder, output), "--workers", String(workers)];
}

function mark(input: string, output: string, workers: number): Run {
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, ["--import", WATCH, ...args(input, output, workers)], { stdio: ["ignore", "ignore", "pipe"], maxBuffer: 1 << 26 });
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  if (status !== 0) {
    const summary = join(folder, output, "summary.json");
    const failed = existsSync(summary) ? JSON.stringify((JSON.parse(readFileSync(summary, "utf8")) as { failed: unknown[] }).failed.slice(0, 3)) : "";
    throw new Error(`the run ended with ${status}: ${String(stderr).slice(-500)} ${failed}`);
  }
  const [, memory, cpu] = /used (\d+) (\d+)/.exec(String(stderr))!.map(Number);
  return { seconds, megabytes: memory! / 1024, cpuSeconds: cpu! / 1e6, told: /marked \d+, kept \d+, failed \d+/.exec(String(stderr))![0] };
}

function treeHash(name: string): string {
  const hash = createHash("sha256");
  const files = readdirSync(join(folder, name), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  for (const path of files.map((entry) => join(entry.parentPath, entry.name)).sort()) hash.update(path.slice(join(folder, name).length)).update("\0").update(readFileSync(path));
  return hash.digest("hex");
}

function rehearsalHash(): string {
  return createHash("sha256").update(rehearsal(JSON.parse(readFileSync("dist/rubrics/eye-drops.json", "utf8")), 7)).digest("hex");
}

function verdict(holds: boolean, bar: string, figure: string): void {
  met &&= holds;
  console.log(`\n${bar}. ${holds ? "Met" : "NOT met"}: ${figure}.`);
}

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
