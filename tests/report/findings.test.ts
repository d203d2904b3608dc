import { DOMParser } from "@xmldom/xmldom";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { junitReport } from "../../src/report/findings/junit.ts";
import { markdownReport } from "../../src/report/findings/markdown.ts";
import { renderCheck, type FindingsLook } from "../../src/report/findings/render.ts";
import { sarifReport, uriOf } from "../../src/report/findings/sarif.ts";
import { CATALOGUE, type FindingCode } from "../../src/problem/catalogue.ts";
import { displayWidth } from "../../src/report/width.ts";
import type { CheckReport } from "../../src/review/types.ts";
import { everyFinding } from "./every-finding.ts";

const look: FindingsLook = { format: "text", width: 80, colour: false, ascii: false, confusion: false, warningsFail: false, root: "/work" };
const report = everyFinding();
const nothing: CheckReport = { ...report, findings: [], counts: { errors: 0, warnings: 0, notes: 0 } };

describe("text", () => {
  test("each finding has its place, level, code and mend; no line is wider than asked", async () => {
    const text = await renderCheck(report, { ...look, confusion: true });
    for (const { code } of report.findings) expect(text).toContain(`[${code}]`);
    expect(text).toMatch(/^ {2}1:3 {6}error /m);
    expect(text).toContain("Say it *another* way.");
    expect(Math.max(...text.split("\n").map(displayWidth))).toBeLessThanOrEqual(80);
    expect(text).toContain("2% (1) earn another item as well");
  });

  test("what stands in a rubric cannot drive the terminal", async () => {
    expect(await renderCheck(report, look)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  });

  test("the table of confusions comes when it is asked for", async () => {
    expect(await renderCheck(report, look)).not.toContain("of shake earns agreement");
    expect(await renderCheck(report, { ...look, confusion: true })).toContain("of shake earns agreement");
  });
});

test("JSON is the report itself", async () => {
  expect(JSON.parse(await renderCheck(report, { ...look, format: "json" }))).toEqual(report);
});

describe("JUnit XML, parsed back", () => {
  // The form as its readers know it: testsuites > testsuite > testcase > failure, from memory; there is no standard.
  const parse = (text: string) => {
    const problems: string[] = [];
    const document = new DOMParser({ onError: (_level, message) => problems.push(message) }).parseFromString(text, "text/xml");
    expect(problems).toEqual([]);
    return document;
  };
  const all = (document: ReturnType<typeof parse>, name: string) => [...document.getElementsByTagName(name)];

  test("a suite a file, a case a finding; a file without findings is one case that passes", () => {
    const document = parse(junitReport(report, { warningsFail: false }));
    expect(all(document, "testcase")).toHaveLength(report.findings.length + 2);
    expect(all(document, "testsuite").map((suite) => suite.getAttribute("name"))).toEqual(expect.arrayContaining(["rubrics/eye drops.yaml", "rubrics/quiet.yaml", "/elsewhere/a.yaml"]));
    const quiet = all(document, "testcase").find((one) => one.getAttribute("classname") === "rubrics/quiet.yaml")!;
    expect(quiet.getElementsByTagName("failure")).toHaveLength(0);
  });

  test("errors fail; warnings fail when there are too many; notes never do", () => {
    const failures = (warningsFail: boolean) => all(parse(junitReport(report, { warningsFail })), "failure");
    expect(failures(false)).toHaveLength(report.counts.errors);
    expect(failures(true)).toHaveLength(report.counts.errors + report.counts.warnings);
    expect(failures(false)[0]!.getAttribute("type")).toBe(report.findings.find(({ severity }) => severity === "error")!.code);
  });

  test("the counts of the head are those of the cases", () => {
    const root = parse(junitReport(report, { warningsFail: true })).documentElement!;
    expect(Number(root.getAttribute("tests"))).toBe(report.findings.length + 2);
    expect(Number(root.getAttribute("failures"))).toBe(report.counts.errors + report.counts.warnings);
  });

  test("text with mark-up, an end of CDATA and control characters arrives as text", () => {
    const failure = all(parse(junitReport(report, { warningsFail: true })), "failure")[0]!;
    expect(failure.getAttribute("message")).toContain(`'a <b> & "c" | d' earns 0 others ]]>`);
  });
});

describe("Markdown", () => {
  test("every row of a table has the cells of its head, whatever the text holds", () => {
    const cells = (line: string) => line.replace(/\\\|/g, "").split("|").length;
    for (const block of markdownReport(report, { confusion: true }).trimEnd().split("\n\n").filter((part) => part.startsWith("|"))) {
      const lines = block.split("\n");
      for (const line of lines) expect(cells(line), line).toBe(cells(lines[0]!));
    }
  });

  test("text of a rubric is no mark-up", () => {
    expect(markdownReport(report, { confusion: false })).toContain("\\<b\\> \\& \"c\" \\| d");
  });

  test("the share that earns another item stands beside each rubric", () => {
    expect(markdownReport(report, { confusion: false })).toContain("| rubrics/eye drops.yaml | 2 | 1 | 50 | 1 (2%) |");
  });

  test("very many findings are cut with a word", () => {
    const many = { ...report, findings: Array.from({ length: 1500 }, (_, line) => ({ ...report.findings[0]!, line: line + 1 })) };
    expect(markdownReport(many, { confusion: false })).toContain("And 500 more.");
  });
});

/**
 * The part of SARIF 2.1.0 (OASIS Standard, 2020; errata 01, 2023) that this program writes, section by section: 3.13
 * sarifLog, 3.14 run, 3.19 toolComponent, 3.27 result, 3.29 physicalLocation, 3.30 region, 3.49 reportingDescriptor. Strict
 * where the schema is. `npm run bench:sarif` holds the same output against the whole schema.
 */
const message = z.strictObject({ text: z.string().min(1) });
const level = z.enum(["none", "note", "warning", "error"]);
const sarif = z.strictObject({
  $schema: z.url(),
  version: z.literal("2.1.0"),
  runs: z.array(
    z.strictObject({
      tool: z.strictObject({
        driver: z.strictObject({
          name: z.string(),
          version: z.string(),
          semanticVersion: z.string().regex(/^\d+\.\d+\.\d+/),
          rules: z.array(z.strictObject({ id: z.string(), shortDescription: message, fullDescription: message, help: message, defaultConfiguration: z.strictObject({ level }) })),
        }),
      }),
      columnKind: z.enum(["utf16CodeUnits", "unicodeCodePoints"]),
      results: z.array(
        z.strictObject({
          ruleId: z.string(),
          ruleIndex: z.int().min(0),
          level,
          message,
          locations: z.array(
            z.strictObject({
              physicalLocation: z.strictObject({
                artifactLocation: z.strictObject({ uri: z.string().regex(/^[\w!$&'()*+,;=:@%./~-]+$/, "no URI reference by RFC 3986") }),
                region: z.strictObject({ startLine: z.int().min(1), startColumn: z.int().min(1) }),
              }),
            }),
          ),
          partialFingerprints: z.record(z.string(), z.string()),
        }),
      ),
    }),
  ),
});

describe("SARIF 2.1.0", () => {
  const parsed = (what: CheckReport) => sarif.parse(JSON.parse(sarifReport(what, { root: "/work" }))).runs[0]!;

  test("is valid, with findings and without", () => {
    expect(parsed(report).results).toHaveLength(report.findings.length);
    expect(parsed(nothing).results).toEqual([]);
  });

  test("each result points at its rule, and rules are told once, with a mend as help that names nothing of one finding alone", () => {
    const { results, tool } = parsed(report);
    for (const { ruleId, ruleIndex } of results) expect(tool.driver.rules[ruleIndex]!.id).toBe(ruleId);
    expect(new Set(tool.driver.rules.map(({ id }) => id)).size).toBe(tool.driver.rules.length);
    expect(tool.driver.rules.find(({ id }) => id === report.findings[0]!.code)!.help.text).toBe((CATALOGUE[report.findings[0]!.code as FindingCode] as { mend?: string }).mend);
  });

  test("'info' is SARIF's note", () => {
    expect(parsed(report).results.map((result) => result.level)).toEqual(report.findings.map(({ severity }) => (severity === "info" ? "note" : severity)));
  });

  test("places are relative to the root, and files outside it are whole", () => {
    expect(uriOf("rubrics/eye drops.yaml", "/work")).toBe("rubrics/eye%20drops.yaml");
    expect(uriOf("./rubrics/a#1.yaml", "/work")).toBe("rubrics/a%231.yaml");
    expect(uriOf("/work/rubrics/a.yaml", "/work")).toBe("rubrics/a.yaml");
    expect(uriOf("/elsewhere/a.yaml", "/work")).toBe("file:///elsewhere/a.yaml");
  });

  test("a fingerprint outlives moved lines and changed counts, and tells two findings apart", () => {
    const prints = (what: CheckReport) => parsed(what).results.map(({ partialFingerprints }) => partialFingerprints["saidwellFinding/v1"]!);
    const moved = { ...report, findings: report.findings.map((finding) => ({ ...finding, line: (finding.line ?? 1) + 40, message: finding.message.replace(/\d+/, "777") })) };
    expect(prints(moved)).toEqual(prints(report));
    const twice = { ...report, findings: [...report.findings, ...report.findings] };
    expect(new Set(prints(twice)).size).toBe(twice.findings.length);
  });
});
