import { z } from "zod";
import { ProblemError } from "../problem/problem.ts";
import { findingsOf, readYaml } from "../rubric/positions.ts";
import { id } from "../rubric/schema.ts";
import type { Corrections } from "./corrections.ts";
import type { Content } from "./types.ts";

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

const words = z.string().trim().min(1, "write at least one word");

const correctionSchema = z
  .strictObject({
    item: id.optional(),
    unsafe: id.optional(),
    content: z.enum(Object.keys(CONTENTS) as (keyof typeof CONTENTS)[]).transform((content): Content => CONTENTS[content]),
    elicitation: z.enum(["offered", "after-question", "prompted", "confirmed"]).optional(),
    said: z.array(id).optional(),
    by: words,
    when: z.iso.date("write the date as 2026-11-26"),
    why: words,
  })
  .superRefine(({ item, unsafe, content, said }, context) => {
    const tell = (message: string, mend: string, path: string[] = []) => context.addIssue({ code: "custom", path, message, params: { mend } });
    if ((item === undefined) === (unsafe === undefined)) tell("a correction is of one thing", "Give either 'item' or 'unsafe'.");
    if (unsafe !== undefined && content !== "absent") tell("of an unsafe statement only 'absent' can be said: that it was not said", "Write 'content: absent'.", ["content"]);
    if (content === "partial" && (said ?? []).length === 0) tell("it is not said which elements were said", "Add 'said' with their ids.");
    if (said !== undefined && content !== "partial" && content !== "incorrect") tell("elements are named only of what is partial or incorrect", "Take 'said' out.", ["said"]);
  });

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
    const faults = parsed === null ? yaml.findings : findingsOf(parsed.error, yaml);
    throw new ProblemError(faults.map((fault) => ({ ...fault, code: "SW-M01" })));
  }
  const { transcript, rubric, corrections } = parsed.data;
  const lineOf = (path: PropertyKey[]) => yaml.positionOf(path).line;
  return {
    file,
    transcript: { name: transcript, line: lineOf(["transcript"]) },
    rubric: { ...rubric, line: lineOf(["rubric"]) },
    corrections: corrections.map(({ item, unsafe, elicitation, said, ...rest }, index) => ({
      ...rest,
      line: lineOf(["corrections", index]),
      ...(item !== undefined && { item }),
      ...(unsafe !== undefined && { unsafe }),
      ...(elicitation !== undefined && { elicitation }),
      ...(said !== undefined && { said }),
    })),
  };
}
