import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { setFlagsFromString } from "node:v8";
import { Tinypool } from "tinypool";
import type { Done, Task, WorkerSetUp } from "./task.ts";

/** The build lays the worker beside the program. */
const WORKER = new URL("./cohort-worker.js", import.meta.url);

/** A worker that has not answered by then hangs; the largest transcript that is read takes a fraction of it. */
const LONGEST_MILLISECONDS = 300_000;

/**
 * The program's start sets V8 to compile late, for one short rehearsal; here thousands follow. The default of Node 20
 * (132 kB of bytecode run in a function).
 */
const INTERRUPT_BUDGET = 132 * 1024;

/**
 * Megabytes that a worker's old heap may fill before V8 collects it for the first time. Each such collection throws the
 * optimised code of short-lived functions away, which is then compiled again: with V8's own small start it came every
 * second, and some hundred functions were compiled up to twenty times over 400 rehearsals.
 */
const FIRST_COLLECTION = 256;

/**
 * Megabytes of a worker's heap: marking needs about 60, the largest transcript that is read some hundreds. The young
 * part is left as V8 has it: a smaller one costs a fifth more time (`npm run bench:cohort`).
 */
const HEAP = { maxOldGenerationSizeMb: 1024 };

/** SHA-256 of the code that marks, with the data inside it. */
export function programHash(): string {
  return createHash("sha256").update(readFileSync(WORKER)).digest("hex");
}

export class MarkingPool {
  readonly #pool: Tinypool;

  constructor(workers: number, setUp: WorkerSetUp) {
    setFlagsFromString(`--interrupt-budget=${INTERRUPT_BUDGET}`);
    setFlagsFromString(`--initial-old-space-size=${FIRST_COLLECTION}`);
    this.#pool = new Tinypool({ filename: WORKER.href, minThreads: workers, maxThreads: workers, isolateWorkers: false, resourceLimits: HEAP, workerData: setUp });
  }

  /** @throws Error when the worker died or hung over it; the pool goes on with a new one. */
  async run(task: Task): Promise<Done> {
    // Not AbortSignal.timeout: it would hold on to every result until its time is over.
    const limit = new AbortController();
    const timer = setTimeout(() => limit.abort(), LONGEST_MILLISECONDS);
    try {
      return (await this.#pool.run(task, { signal: limit.signal })) as Done;
    } finally {
      clearTimeout(timer);
    }
  }

  close(): Promise<void> {
    return this.#pool.destroy();
  }
}

/** Works through a list with so many tasks at a time, so that the list may be of any length. Stops taking when told. */
export async function inLanes<T>(items: Iterable<T>, lanes: number, work: (item: T) => Promise<void>, stopped: () => boolean): Promise<void> {
  const iterator = items[Symbol.iterator]();
  const lane = async () => {
    while (!stopped()) {
      const next = iterator.next();
      if (next.done === true) return;
      await work(next.value);
    }
  };
  await Promise.all(Array.from({ length: lanes }, lane));
}
