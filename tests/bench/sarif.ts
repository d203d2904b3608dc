// `npm run bench:sarif [-- --data DIR] [--check]`: the SARIF form of a check, with every kind of finding and odd file
// names, against the OASIS schema itself (sarif-schema-2.1.0.json in the folder `standards` beside the data). The schema is
// not copied into this project: its repository names no licence for that. `npm test` checks the same output by a part of it.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv, type AnySchemaObject } from "ajv";
import { default as addFormats } from "ajv-formats";
import { sarifReport } from "../../src/report/findings/sarif.ts";
import { everyFinding } from "../report/every-finding.ts";

const option = process.argv.indexOf("--data");
const folder = join(option < 0 ? "../shared/data" : process.argv[option + 1]!, "../standards");
const schema = JSON.parse(readFileSync(join(folder, "sarif-schema-2.1.0.json"), "utf8")) as AnySchemaObject;
// Draft 4 differs from draft 7, which ajv reads, in the name of `id` only as far as this schema goes.
const rest = Object.fromEntries(Object.entries(schema).filter(([key]) => key !== "id" && key !== "$schema"));
const ajv = new Ajv({ strict: false, allErrors: true });
(addFormats as unknown as (ajv: Ajv) => void)(ajv);
const valid = ajv.compile(rest);

const cases: Record<string, string> = {
  "every kind of finding, odd file names": sarifReport(everyFinding(), { root: "/work" }),
  "nothing found": sarifReport({ ...everyFinding(), findings: [], counts: { errors: 0, warnings: 0, notes: 0 } }, { root: "/work" }),
};
console.log("# SARIF 2.1.0 against the OASIS schema (errata 01)\n\n| report | results | faults |\n|---|---|---|");
let faults = 0;
for (const [name, text] of Object.entries(cases)) {
  const data = JSON.parse(text) as { runs: { results: unknown[] }[] };
  valid(data);
  const errors = valid.errors ?? [];
  faults += errors.length;
  console.log(`| ${name} | ${data.runs[0]!.results.length} | ${errors.length} |`);
  for (const { instancePath, message } of errors) console.log(`\n${instancePath}: ${message}`);
}
// The check itself must be able to fail.
const broken = JSON.parse(cases["every kind of finding, odd file names"]!) as { runs: { results: { level: string }[] }[] };
broken.runs[0]!.results[0]!.level = "info";
if (valid(broken)) throw new Error("the schema took a level that SARIF does not have");
console.log(`\nBar: no fault. ${faults === 0 ? "Met" : "NOT met"}.`);
if (process.argv.includes("--check") && faults > 0) process.exitCode = 1;
