import type { Finding } from "../../problem/problem.ts";

/** How grave a finding is, in the words of SARIF 2.1.0 (section 3.27.10), which all forms of the report use. */
export type Level = "error" | "warning" | "note";

export function levelOf({ severity }: Finding): Level {
  return severity === "info" ? "note" : severity;
}
