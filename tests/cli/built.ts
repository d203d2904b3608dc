import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";

/*
 * Tests of the whole command run the real bundle, made for the test from the sources as they are, in a process of
 * its own: colours, pipes, exit codes and files cannot be judged otherwise.
 */

export interface Ran {
  code: number | null;
  out: string;
  err: string;
}

export interface Built {
  /** The bundle's folder. */
  folder: string;
  /** An empty folder for the test's files. */
  work: string;
  /** Runs `saidwell ...args` in the work folder. */
  run(args: string[], options?: { input?: string | Uint8Array; env?: Record<string, string> }): Ran;
  /** Runs a line of bash in the work folder, where `saidwell` is a command. */
  bash(line: string, env?: Record<string, string>): Ran;
  write(name: string, text: string | Uint8Array): string;
}

/** Builds before the tests of a file and clears away after them. */
export function built(): Built {
  const folder = mkdtempSync(join(tmpdir(), "saidwell-built-"));
  const work = mkdtempSync(join(tmpdir(), "saidwell-work-"));
  // Only what a test sets: no colour, width or locale of the machine that runs it.
  const base = { PATH: `${folder}/bin:${process.env["PATH"] ?? ""}`, HOME: work, LANG: "C.UTF-8" };
  const ran = (result: ReturnType<typeof spawnSync>): Ran => ({ code: result.status, out: String(result.stdout), err: String(result.stderr) });
  beforeAll(() => {
    const script = `import { bundle } from ${JSON.stringify(join(process.cwd(), "src/build/bundle.mjs"))}; await bundle(${JSON.stringify(join(folder, "dist"))});`;
    execFileSync(process.execPath, ["--input-type=module", "-e", script], { stdio: ["ignore", "ignore", "inherit"] });
    cpSync("bin", join(folder, "bin"), { recursive: true });
    symlinkSync("saidwell.js", join(folder, "bin/saidwell"));
    writeFileSync(join(folder, "package.json"), '{"type":"module"}');
  }, 120_000);
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
    rmSync(work, { recursive: true, force: true });
  });
  return {
    folder: join(folder, "dist"),
    work,
    run: (args, { input = "", env = {} } = {}) =>
      ran(spawnSync(process.execPath, [join(folder, "bin/saidwell.js"), ...args], { cwd: work, input, env: { ...base, ...env } })),
    bash: (line, env = {}) => ran(spawnSync("bash", ["-c", line], { cwd: work, env: { ...base, ...env } })),
    write: (name, text) => {
      const path = join(work, name);
      writeFileSync(path, text);
      return path;
    },
  };
}
