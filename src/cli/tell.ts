import type { Finding } from "../problem/problem.ts";
import { describe } from "./fail.ts";

/** Tells the person at the terminal, beside the output. What is told here stops nothing. */
export function tell(findings: readonly Finding[]): void {
  for (const finding of findings) process.stderr.write(`${describe(finding)}\n`);
}

/** The same for one warning without a place in the file. */
export function warn(code: Finding["code"], file: string, message: string): void {
  tell([{ code, severity: "warning", file, message }]);
}
