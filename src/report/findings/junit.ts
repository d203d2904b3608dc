import builder from "junit-report-builder";
import type { Finding } from "../../problem/problem.ts";
import type { CheckReport } from "../../review/types.ts";
import { clean, cleanDeep } from "../clean.ts";
import { sentence } from "../figures.ts";
import { levelOf } from "./level.ts";
import type { FindingsLook } from "./render.ts";
import { byFile } from "./text.ts";

/**
 * JUnit XML: a test suite a file, a test case a finding. What fails the run is a failure there too: errors always,
 * warnings when there are more than may be; others pass, with their text as output. A file without findings is one case
 * that passes, so that a reader sees that it was checked.
 */
export function junitReport(raw: CheckReport, { warningsFail }: Pick<FindingsLook, "warningsFail">): string {
  const report = cleanDeep(raw);
  const junit = builder.newBuilder();
  const found = byFile(report.findings);
  const files = [...new Set([...report.files.map(({ file }) => file), ...found.keys()])];
  for (const file of files) {
    const suite = junit.testSuite().name(file);
    const findings = found.get(file) ?? [];
    if (findings.length === 0) suite.testCase().className(file).name("nothing found").file(file);
    for (const finding of findings) {
      const test = suite.testCase().className(file).name(nameOf(finding)).file(file);
      const text = textOf(finding);
      if (finding.severity === "error" || (finding.severity === "warning" && warningsFail)) test.failure(text, finding.code);
      else test.standardOutput(text);
    }
  }
  return `${junit.build().trimEnd()}\n`;
}

function nameOf({ code, line, message }: Finding): string {
  return clean(`${code}${line === undefined ? "" : ` line ${line}`}: ${message}`);
}

function textOf(finding: Finding): string {
  const place = finding.line === undefined ? finding.file : `${finding.file}:${finding.line}:${finding.column ?? 1}`;
  return `${place}: ${levelOf(finding)}: ${sentence(finding.message)}${finding.mend === undefined ? "" : ` ${sentence(finding.mend)}`}`;
}
