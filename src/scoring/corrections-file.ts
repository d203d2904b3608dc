import { z } from "zod";
import { ProblemError } from "../problem/problem.ts";
import { findingsOf } from "../rubric/form-faults.ts";
import { readYaml } from "../rubric/positions.ts";
import { id } from "../rubric/fields.ts";
import { readClock } from "../transcript/clock.ts";
import { MAX_SECONDS } from "../transcript/limits.ts";
import type { Correction, Corrections } from "./corrections.ts";
import type { Content, HeardAt } from "./types.ts";

/* The form of a corrections file. Apart from what corrections do, because YAML and zod cost more start-up than all the rest. */

/** As the JSON sheet writes them and as the printed sheet does. */
const CONTENTS = {
  complete: "complete",
  partial: "partial",
  incorrect: "incorrect",
  absent: "absent",
  "cannot-tell": "cannot-tell",
  "cannot tell": "cannot-tell",
  "not-offered": "not-offered",
  "not offered": "not-offered",
  "not-applicable": "not-applicable",
  "n/a": "not-applicable",
} as const satisfies Record<string, Content>;

/** Of an unsafe statement. */
const SAID = "said";

const words = z.string().trim().min(1, "write at least one word");

const correctionSchema = z
  .strictObject({
    item: id.optional(),
    unsafe: id.optional(),
    content: z.enum([...(Object.keys(CONTENTS) as (keyof typeof CONTENTS)[]), SAID]).transform((content): Content | typeof SAID => (content === SAID ? SAID : CONTENTS[content])),
    at: z.union([z.number(), z.string()]).optional(),
    corrected: z.boolean().optional(),
    elicitation: z.enum(["offered", "after-question", "prompted", "confirmed"]).optional(),
    said: z.array(id).optional(),
    by: words,
    when: z.iso.date("write the date as 2026-11-26"),
    why: words,
  })
  .superRefine(({ item, unsafe, content, said, at, corrected, elicitation }, context) => {
    const tell = (message: string, mend: string, path: string[] = []) => context.addIssue({ code: "custom", path, message, params: { mend } });
    if ((item === undefined) === (unsafe === undefined)) tell("a correction is of one thing", "Give either 'item' or 'unsafe'.");
    if (unsafe !== undefined && content !== "absent" && content !== SAID) tell("of an unsafe statement only 'said' or 'absent' can be said: that it was said, or was not", "Write 'content: said' or 'content: absent'.", ["content"]);
    if (unsafe === undefined && content === SAID) tell("'said' is of unsafe statements only", "Write 'content: complete'.", ["content"]);
    const heard = unsafe !== undefined && content === SAID;
    if (heard && at === undefined) tell("it is not said where it was heard", "Add 'at' with the time ('at: 2:14'), or the line of the transcript ('at: line 31').");
    else if (heard && heardAt(at!) === null) tell(`'${at}' is no place`, "Write a time ('at: 2:14', or seconds) or a line of the transcript ('at: line 31').", ["at"]);
    if (!heard && (at !== undefined || corrected !== undefined)) tell("'at' and 'corrected' are of unsafe statements that were said", "Take them out.", [at === undefined ? "corrected" : "at"]);
    if (unsafe !== undefined && elicitation !== undefined) tell("an unsafe statement is not elicited", "Take 'elicitation' out.", ["elicitation"]);
    if (content === "partial" && (said ?? []).length === 0) tell("it is not said which elements were said", "Add 'said' with their ids.");
    if (said !== undefined && content !== "partial" && content !== "incorrect") tell("elements are named only of what is partial or incorrect", "Take 'said' out.", ["said"]);
  });

/** A place as the sheet and its reports write it: `2:14`, `~2:14`, `line 31`, or seconds. */
function heardAt(at: string | number): HeardAt | null {
  if (typeof at === "number") return Number.isFinite(at) && at >= 0 && at <= MAX_SECONDS ? { time: at } : null;
  const line = /^line ([1-9]\d{0,8})$/i.exec(at.trim());
  if (line !== null) return { line: Number(line[1]) };
  const time = readClock(at.trim().replace(/^~/, ""));
  return time === null ? null : { time };
}

const correctionsSchema = z.strictObject({
  saidwell: z.literal("corrections@1"),
  transcript: words,
  rubric: z.strictObject({ id, hash: z.string().regex(/^[0-9a-f]{12,64}$/, "write the content hash of the sheet, its first 12 characters at least") }),
  corrections: z.array(correctionSchema).min(1, "there is no correction"),
});

/**
 * Reads a corrections file.
 * @throws ProblemError SW-M01 with every fault: file, line, column and how to mend it
 */
export function readCorrections(text: string, file: string): Corrections {
  const yaml = readYaml(text, file);
  const parsed = yaml.findings.length > 0 ? null : correctionsSchema.safeParse(yaml.data);
  if (parsed === null || !parsed.success) {
    const faults = parsed === null ? yaml.findings : findingsOf(parsed.error, yaml, correctionsSchema);
    throw new ProblemError(faults.map((fault) => ({ ...fault, code: "SW-M01" })));
  }
  const { transcript, rubric, corrections } = parsed.data;
  const lineOf = (path: PropertyKey[]) => yaml.positionOf(path).line;
  return {
    file,
    transcript: { name: transcript, line: lineOf(["transcript"]) },
    rubric: { ...rubric, line: lineOf(["rubric"]) },
    corrections: corrections.map((correction, index) => correctionOf(correction, lineOf(["corrections", index]))),
  };
}

function correctionOf({ item, unsafe, content, elicitation, said, at, corrected, by, when, why }: z.output<typeof correctionSchema>, line: number): Correction {
  const signed = { by, when, why, line };
  if (unsafe !== undefined) return content === SAID ? { unsafe, content, at: heardAt(at!)!, corrected: corrected ?? false, ...signed } : { unsafe, content: "absent", ...signed };
  return { item: item!, content: content as Content, ...(elicitation !== undefined && { elicitation }), ...(said !== undefined && { said }), ...signed };
}
