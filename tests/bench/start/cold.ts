import { spawnSync } from "node:child_process";

/**
 * Runs each command line of Node `rounds` times in a process of its own, in turn, so that a busy machine slows all alike.
 * @param rounds odd, so that the median is a run that happened.
 * @returns milliseconds by name, in the order they ran.
 * @throws Error when one ends with another code than 0.
 */
export function coldTimes(variants: Readonly<Record<string, readonly string[]>>, rounds: number): Record<string, number[]> {
  const times = Object.fromEntries(Object.keys(variants).map((name) => [name, [] as number[]]));
  // Once beforehand: files come from the disk the first time.
  for (const args of Object.values(variants)) run(args);
  for (let round = 0; round < rounds; round += 1) {
    for (const [name, args] of Object.entries(variants)) {
      const start = process.hrtime.bigint();
      run(args);
      times[name]!.push(Number(process.hrtime.bigint() - start) / 1e6);
    }
  }
  return times;
}

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

/** Median with the quartiles in brackets, as whole milliseconds. */
export function spread(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  const quartile = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(0);
  return `${median(sorted).toFixed(0)} (${quartile(0.25)} to ${quartile(0.75)})`;
}

function run(args: readonly string[]): void {
  const { status, stderr } = spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "pipe"] });
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${String(stderr)}`);
}
