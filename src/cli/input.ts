import { createReadStream, readFileSync, statSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { MAX_BYTES } from "../transcript/limits.ts";
import { problem, systemReason } from "./problems.ts";
import { didYouMean } from "../problem/nearest.ts";

export const STDIN = "<stdin>";

/** The bytes of a transcript; `-` is standard input. One byte above the limit at most, which the reader then refuses. */
export async function readInput(path: string): Promise<{ bytes: Uint8Array; file: string }> {
  if (path === "-") {
    if (process.stdin.isTTY) process.stderr.write("Reading the transcript from the keyboard: end with Ctrl-D.\n");
    return { bytes: await gather(process.stdin, STDIN), file: STDIN };
  }
  try {
    // A plain file is read at once; a pipe or a device says nothing of its size.
    const status = statSync(path);
    const plain = status.isFile() && status.size > 0 && status.size <= MAX_BYTES;
    return { bytes: plain ? readFileSync(path) : await gather(createReadStream(path), path), file: path };
  } catch (error) {
    const near = (error as NodeJS.ErrnoException).code === "ENOENT" ? await nearby(path) : "";
    throw problem("SW-T01", path, `the transcript cannot be read: ${systemReason(error)}`, `${near}Give the path of a transcript file, or - for standard input.`);
  }
}

async function gather(stream: AsyncIterable<Uint8Array>, file: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    for await (const chunk of stream) {
      chunks.push(chunk);
      size += chunk.length;
      if (size > MAX_BYTES) break;
    }
  } catch (error) {
    if (file !== STDIN) throw error;
    throw problem("SW-T01", file, `standard input cannot be read: ${systemReason(error)}`);
  }
  return Buffer.concat(chunks);
}

/** A file of the same folder with almost that name. */
async function nearby(path: string): Promise<string> {
  try {
    return didYouMean(basename(path), await readdir(dirname(path)));
  } catch {
    return "";
  }
}
