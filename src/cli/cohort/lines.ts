import { closeSync, fdatasyncSync, fstatSync, ftruncateSync, openSync, readSync, writeSync } from "node:fs";

/** Read at a time; a line is about 40 kB. */
const CHUNK = 1 << 20;
const NEWLINE = 10;

export interface Line {
  offset: number;
  /** Bytes without the line end. */
  length: number;
  text: string;
}

/** The complete lines of a file, one at a time. What stands behind the last line end is not one of them. */
export function* readLines(fd: number): Generator<Line> {
  let held = Buffer.alloc(0);
  let offset = 0;
  for (let position = 0; ; ) {
    const chunk = Buffer.allocUnsafe(CHUNK);
    const count = readSync(fd, chunk, 0, CHUNK, position);
    if (count === 0) return;
    position += count;
    held = held.length === 0 ? chunk.subarray(0, count) : Buffer.concat([held, chunk.subarray(0, count)]);
    let start = 0;
    for (let end = held.indexOf(NEWLINE); end >= 0; end = held.indexOf(NEWLINE, start)) {
      yield { offset: offset + start, length: end - start, text: held.toString("utf8", start, end) };
      start = end + 1;
    }
    held = held.subarray(start);
    offset += start;
  }
}

export function readAt(fd: number, offset: number, length: number): string {
  const buffer = Buffer.allocUnsafe(length);
  for (let done = 0; done < length; ) {
    const count = readSync(fd, buffer, done, length - done, offset + done);
    if (count === 0) throw new Error("the results were cut short while they were read");
    done += count;
  }
  return buffer.toString("utf8");
}

/** All of the bytes, however many the system takes at once. */
export function writeAll(fd: number, bytes: Uint8Array): void {
  for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done);
}

/** So many lines may be lost when the power goes; none when only the program is killed. */
const LINES_A_SYNC = 64;

/** A file to which whole lines are added. A last line that an earlier run left unfinished is cut off first. */
export class LineAppender {
  readonly #fd: number;
  #offset: number;
  #unsynced = 0;

  constructor(path: string) {
    this.#fd = openSync(path, "a+");
    const size = fstatSync(this.#fd).size;
    this.#offset = endOfLastLine(this.#fd, size);
    if (this.#offset < size) ftruncateSync(this.#fd, this.#offset);
  }

  get fd(): number {
    return this.#fd;
  }

  /** One write for the whole line. @param text with its line end. @returns where it stands. */
  append(text: string): { offset: number; length: number } {
    const bytes = Buffer.from(text);
    const offset = this.#offset;
    writeAll(this.#fd, bytes);
    this.#offset += bytes.length;
    this.#unsynced += 1;
    if (this.#unsynced >= LINES_A_SYNC) this.sync();
    return { offset, length: bytes.length - 1 };
  }

  sync(): void {
    fdatasyncSync(this.#fd);
    this.#unsynced = 0;
  }

  close(): void {
    this.sync();
    closeSync(this.#fd);
  }
}

function endOfLastLine(fd: number, size: number): number {
  for (let end = size; end > 0; ) {
    const start = Math.max(0, end - CHUNK);
    const chunk = Buffer.allocUnsafe(end - start);
    readSync(fd, chunk, 0, chunk.length, start);
    const last = chunk.lastIndexOf(NEWLINE);
    if (last >= 0) return start + last + 1;
    end = start;
  }
  return 0;
}
