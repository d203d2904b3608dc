import { readFileSync } from "node:fs";
import type { FindingCode } from "../../problem/catalogue.ts";
import { problem, systemReason } from "../problems.ts";

/** Marks of a thousand candidates by three people are some 10 MB. */
const MAX_BYTES = 256 * 1024 * 1024;

/** A table that people made, as text. @param what names it: "the marks" @throws ProblemError SW-A03 */
export function readTextFile(path: string, what: string): string {
  const code: FindingCode = "SW-A03";
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw problem(code, path, `${what} cannot be read: ${systemReason(error)}`, "Give the path of a CSV file.");
  }
  if (bytes.length > MAX_BYTES) throw problem(code, path, `${what} are larger than 256 MB`, "Divide the file.");
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw problem(code, path, `${what} are not UTF-8 text`, "Save the file as 'CSV UTF-8'.");
  }
}
