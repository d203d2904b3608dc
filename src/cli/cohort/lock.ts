import { readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { problem } from "../problems.ts";

const LOCK = ".lock";

/** How often a run shows that it lives, and after how long without a sign a run on another machine counts as dead. */
const SIGN_MILLISECONDS = 20_000;
const DEAD_MILLISECONDS = 120_000;

/**
 * Keeps a second run out of the folder, which would mark everything twice. A lock that a killed run left behind is taken over.
 * @returns gives the folder free.
 * @throws ProblemError SW-B10
 */
export function lockFolder(folder: string): () => void {
  const path = join(folder, LOCK);
  const mine = `${process.pid} ${hostname()}\n`;
  try {
    writeFileSync(path, mine, { flag: "wx" });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    const holder = holderOf(path);
    if (holder !== null) {
      throw problem("SW-B10", folder, `another run (process ${holder.pid} on ${holder.host}) is writing to this folder`, `Wait for it, or name another folder. If no such run is left, delete ${path}.`);
    }
    rmSync(path, { force: true });
    writeFileSync(path, mine, { flag: "wx" });
  }
  const sign = setInterval(() => {
    try {
      utimesSync(path, new Date(), new Date());
    } catch {
      // The lock is gone: somebody deleted it by hand, and the work goes on.
    }
  }, SIGN_MILLISECONDS);
  sign.unref();
  return () => {
    clearInterval(sign);
    rmSync(path, { force: true });
  };
}

/** Null when whoever held the lock is dead. */
function holderOf(path: string): { pid: number; host: string } | null {
  try {
    const [pid, host = "?"] = readFileSync(path, "utf8").trim().split(" ");
    const holder = { pid: Number(pid), host };
    if (host === hostname()) return holder.pid !== process.pid && isAlive(holder.pid) ? holder : null;
    return Date.now() - statSync(path).mtimeMs < DEAD_MILLISECONDS ? holder : null;
  } catch {
    return null;
  }
}

function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return !isZombie(pid);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** A killed process that its parent has not noticed, as in a container without an init: it has a number and nothing else (proc(5)). */
function isZombie(pid: number): boolean {
  try {
    return /^\d+ \(.*\) [ZX]/s.test(readFileSync(`/proc/${pid}/stat`, "utf8"));
  } catch {
    return false;
  }
}
