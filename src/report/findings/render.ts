import type { CheckReport } from "../../review/types.ts";
import { toJson } from "../json.ts";
import type { Look } from "../page-of.ts";

export interface FindingsLook extends Look {
  format: "text" | "json" | "junit" | "markdown" | "sarif";
  /** Print the table of responses that earn another item. */
  confusion: boolean;
  /** Whether there are more warnings than may be: then they fail the run, and a JUnit reader must see it. */
  warningsFail: boolean;
  /** The folder that relative paths of SARIF start from. */
  root: string;
}

/** The report of a check in any of its forms. Each form is loaded only when it is asked for. */
export async function renderCheck(report: CheckReport, look: FindingsLook): Promise<string> {
  switch (look.format) {
    case "json":
      return toJson(report);
    case "junit":
      return (await import("./junit.ts")).junitReport(report, look);
    case "markdown":
      return (await import("./markdown.ts")).markdownReport(report, look);
    case "sarif":
      return (await import("./sarif.ts")).sarifReport(report, look);
    case "text":
      return (await import("./text.ts")).textReport(report, look);
  }
}
