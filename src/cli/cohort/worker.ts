import { createHash } from "node:crypto";
import { workerData } from "node:worker_threads";
import { RESULT_FORM, type CohortResult } from "../../cohort/result.ts";
import { mark, rememberCompiled } from "../../mark.ts";
import { ProblemError, type Finding } from "../../problem/problem.ts";
import { inOrder, toJsonLine } from "../../report/json.ts";
import { readTranscript } from "../../transcript/read.ts";
import { readInput } from "../input.ts";
import { writeSheet } from "./sheet-file.ts";
import { mayBeGone } from "./store.ts";
import type { Done, Task, WorkerSetUp } from "./task.ts";

/** The pool hands its own data over first. */
const { rubrics, version, program, json } = (workerData as [unknown, WorkerSetUp])[1];

for (const { rubric, packed } of rubrics) rememberCompiled(rubric, packed);

/** Marks one transcript of a cohort. Whatever is wrong with it becomes its result. */
export default async function markOne(task: Task): Promise<Done> {
  const { rubric } = rubrics[task.rubric]!;
  let transcript: string | null = null;
  let outcome: { sheet: NonNullable<CohortResult["sheet"]> } | { sheet: null; errors: Finding[] };
  try {
    const { bytes } = await readInput(task.path);
    transcript = createHash("sha256").update(bytes).digest("hex");
    if (transcript === task.known) return { kept: true };
    outcome = { sheet: inOrder(mark(readTranscript(bytes, { file: task.file }), rubric, task.options)) };
  } catch (error) {
    outcome = { sheet: null, errors: errorsOf(error, task) };
  }
  const { key, file, columns } = task;
  const hashes = { transcript, rubric: rubric.hash, options: task.optionsHash, program };
  const line = toJsonLine({ form: RESULT_FORM, key, file, hashes, version, columns, ...outcome } satisfies CohortResult);
  // Before the result is handed in: a result that stands in the journal has its sheet.
  if (outcome.sheet !== null) writeSheet(task.sheet, outcome.sheet, json);
  return { kept: false, line, transcript, marked: outcome.sheet !== null, again: outcome.sheet === null && mayBeGone(outcome.errors) };
}

function errorsOf(error: unknown, { path, file }: Task): Finding[] {
  if (error instanceof ProblemError) return error.findings.map((finding) => ({ ...finding, ...(finding.file === path && { file }), ...(finding.code === "SW-T01" && { mend: unreadable(file) }) }));
  return [programFailed(file, error)];
}

/** Of a file in a folder, not of one that somebody typed. */
function unreadable(file: string): string {
  return file.includes("\ufffd") ? "Its name is not written in UTF-8: rename the file." : "Make the file readable, or take it out of the folder.";
}

function programFailed(file: string, error: unknown): Finding {
  return {
    code: "SW-B06",
    severity: "error",
    file,
    message: `the program itself failed on this file: ${error instanceof Error ? error.message : String(error)}`,
    mend: "This is a fault of saidwell, not of your file. Please report it.",
  };
}
