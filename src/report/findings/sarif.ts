import { createHash } from "node:crypto";
import { isAbsolute, relative, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { CATALOGUE, type CatalogueEntry } from "../../problem/catalogue.ts";
import type { Finding } from "../../problem/problem.ts";
import type { CheckReport } from "../../review/types.ts";
import { cleanDeep } from "../clean.ts";
import { sentence } from "../figures.ts";
import { toJson } from "../json.ts";
import { levelOf, type Level } from "./level.ts";
import type { FindingsLook } from "./render.ts";

/** OASIS Standard SARIF 2.1.0, errata 01 (2023). */
const SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
const ENTRIES = new Map<string, CatalogueEntry>(Object.entries(CATALOGUE));
const GRAVITY: readonly Level[] = ["note", "warning", "error"];

/** One run of the check as SARIF 2.1.0: a rule a code, a result a finding, places relative to the root of the sources. */
export function sarifReport(raw: CheckReport, { root }: Pick<FindingsLook, "root">): string {
  const report = cleanDeep(raw);
  const codes = [...new Set(report.findings.map(({ code }) => code))].sort();
  const fingerprint = fingerprints();
  return toJson({
    $schema: SCHEMA,
    version: "2.1.0",
    runs: [
      {
        tool: { driver: { name: "saidwell", version: report.version, semanticVersion: report.version, rules: codes.map((code) => ruleOf(code, report.findings)) } },
        columnKind: "utf16CodeUnits",
        results: report.findings.map((finding) => {
          const uri = uriOf(finding.file, root);
          return {
            ruleId: finding.code,
            ruleIndex: codes.indexOf(finding.code),
            level: levelOf(finding),
            message: { text: [finding.message, finding.mend].filter((text) => text !== undefined).map(sentence).join(" ") },
            locations: [{ physicalLocation: { artifactLocation: { uri }, region: { startLine: finding.line ?? 1, startColumn: finding.column ?? 1 } } }],
            partialFingerprints: { "saidwellFinding/v1": fingerprint(finding, uri) },
          };
        }),
      },
    ],
  });
}

function ruleOf(code: string, findings: readonly Finding[]) {
  const own = findings.filter((finding) => finding.code === code);
  const level = own.map(levelOf).sort((a, b) => GRAVITY.indexOf(b) - GRAVITY.indexOf(a))[0]!;
  const entry = ENTRIES.get(code);
  const title = sentence(entry?.title ?? code);
  return {
    id: code,
    shortDescription: { text: title },
    fullDescription: { text: title },
    // Shown beside every result of the rule: it names nothing that only one of them is about.
    help: { text: entry?.mend ?? title },
    defaultConfiguration: { level },
  };
}

/** Relative with forward slashes where it lies under the root (RFC 3986), as forges need it; else the whole `file:` URI. */
export function uriOf(file: string, root: string): string {
  if (/^shipped:/.test(file)) return file;
  const path = isAbsolute(file) ? relative(root, file) : file.replace(/^(\.[\\/])+/, "");
  if (isAbsolute(path) || path.startsWith("..")) return pathToFileURL(file).href;
  return path.split(sep).map(encodeURIComponent).join("/");
}

/** The same finding keeps its fingerprint when lines move and counts change; a second one like it gets a number. */
function fingerprints(): (finding: Finding, uri: string) => string {
  const seen = new Map<string, number>();
  return ({ code, message }, uri) => {
    const hash = createHash("sha256").update([code, uri, message.replace(/\d+/g, "#")].join("\n")).digest("hex").slice(0, 32);
    const times = (seen.get(hash) ?? 0) + 1;
    seen.set(hash, times);
    return `${hash}:${times}`;
  };
}
