import { dirname, resolve } from "node:path";
import { EXIT } from "../../problem/catalogue.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import { plural } from "../../report/figures.ts";
import { renderCheck } from "../../report/findings/render.ts";
import { reviewBlock } from "../../review/block.ts";
import { reportOf, reviewRubric } from "../../review/check.ts";
import { reviewResponses } from "../../review/responses-file.ts";
import type { Readings } from "../../review/readings.ts";
import type { FileReview } from "../../review/types.ts";
import type { Rubric } from "../../rubric/schema.ts";
import { keepingOf, KeptReadings } from "../kept-readings.ts";
import { checkOutput, writeOutput } from "../output.ts";
import { placedRubric } from "../rubric-file.ts";
import { rubricFiles, type FoundFile } from "../rubric-files.ts";
import { tell } from "../tell.ts";
import { outputLook } from "../terminal.ts";
import { VERSION } from "../version.ts";
import type { CheckFlags } from "./rubric-check-flags.ts";

/** Checks rubrics and their blocks. Exit code 1 when there are errors, or more warnings than may be. */
export async function runRubricCheck(paths: string[], flags: CheckFlags): Promise<void> {
  const found = await rubricFiles(paths);
  const output = { out: flags.out, force: flags.force, inputs: found.read };
  checkOutput(output);
  const today = flags.today ?? dayOf(new Date());
  const findings: Finding[] = [...found.findings];
  const included = new Set<string>();
  const kept = new KeptReadings(keepingOf(process.env, flags.fresh === true));
  const rubrics: FileReview[] = [];
  for (const file of found.files) if (file.kind === "rubric") rubrics.push(await checkRubric(file, { today, kept, findings, included, reads: output.inputs }));
  const parts = found.files.flatMap((file) => (file.kind === "rubric" ? [] : [checkPart(file, findings, included)]));
  const report = reportOf([...rubrics, ...parts], findings, { version: VERSION, today });
  const { errors, warnings } = report.counts;
  const warningsFail = flags.maxWarnings !== undefined && warnings > flags.maxWarnings;
  if (errors > 0 || warningsFail) process.exitCode = EXIT.requirementNotMet;
  const look = outputLook(flags);
  await writeOutput(await renderCheck(report, { format: flags.format, ...look, confusion: flags.confusion === true, warningsFail, root: process.cwd() }), output);
  if (warningsFail) {
    tell([{ code: "SW-C17", severity: "error", file: "--max-warnings", message: `there are ${plural(warnings, "warning")}, ${flags.maxWarnings} may be`, mend: "Mend what is found, or allow more." }]);
  }
}

interface Check {
  today: string;
  kept: KeptReadings;
  /** Takes what is found. */
  findings: Finding[];
  /** Takes the files that the rubric is read from, as far as it could be read. */
  included: Set<string>;
  /** Takes every file that is read. */
  reads: string[];
}

async function checkRubric({ path, text }: FoundFile, { today, kept, findings, included, reads }: Check): Promise<FileReview> {
  const bare: FileReview = { file: path, kind: "rubric", id: null, figures: null, confusion: [] };
  try {
    const placed = placedRubric(text, path, reads);
    for (const file of placed.places.files()) included.add(resolve(file));
    const review = reviewRubric(placed, today, await readingsOf(placed.rubric, kept));
    findings.push(...review.findings);
    return { ...bare, id: placed.rubric.id, figures: review.figures, confusion: review.confusion };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    findings.push(...error.findings);
    for (const file of namedIn(text, path)) included.add(file);
    return bare;
  }
}

/** As an earlier check kept them; else from the matcher, which is not even loaded before. */
async function readingsOf(rubric: Rubric, kept: KeptReadings): Promise<Readings> {
  const known = kept.find(rubric.hash);
  if (known !== null) return known;
  const readings = (await import("../../review/read-phrases.ts")).readPhrases(rubric);
  await kept.keep(rubric.hash, readings);
  return readings;
}

/** What a text that cannot be read as a rubric says that it includes: a block is not orphaned by another file's fault. */
function namedIn(text: string, path: string): string[] {
  return [...text.matchAll(/\b(?:include|responses):[ \t]*["']?([^\s"',}#]+)/g)].map(([, name]) => resolve(dirname(path), name!));
}

/** Of blocks and responses files their form alone; the rest through the rubrics that name them. */
function checkPart({ path, text, kind }: FoundFile, findings: Finding[], included: Set<string>): FileReview {
  const block = kind === "block";
  const { id, line, findings: found } = block ? reviewBlock(text, path) : reviewResponses(text, path);
  findings.push(...found);
  // The responses of a block that nothing includes are its own matter, not a second one.
  if (block) for (const file of namedIn(text, path)) included.add(file);
  if (found.length === 0 && !included.has(resolve(path))) {
    findings.push(
      block
        ? { code: "SW-C15", severity: "info", file: path, line, message: "no rubric among those checked includes this block: its form was checked, its phrases were not", mend: "Check it together with a rubric that includes it." }
        : { code: "SW-C21", severity: "info", file: path, line, message: "no rubric or block among those checked names this responses file: its form was checked, its ids and phrases were not", mend: "Check it together with the rubric it belongs to, which names it with 'responses:'." },
    );
  }
  return { file: path, kind, id, figures: null, confusion: [] };
}

/** The day on this machine's calendar. */
function dayOf(now: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
