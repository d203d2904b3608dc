import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { z } from "zod";
import { readTranscript } from "../../src/transcript/read.ts";
import type { Transcript } from "../../src/transcript/types.ts";

const FOLDER = "fixtures/rehearsals";
/** Eight more of one hand who saw labels only, in odder voices; what was found on them was mended, so they are tuned on and judge nothing. */
const PRACTICE = "fixtures/rehearsals-practice";
/**
 * Rubrics that the matcher was tuned on, two more so that there are stations enough to fit on, and those of the demo,
 * whose sheets were read against their transcripts to be mended; all others judge.
 */
const TUNED = ["pressurised-inhaler", "nasal-spray", "inhaler-with-spacer", "dry-powder-multidose", "insulin-pen", "eye-drops"];

const marksForm = z.object({
  reader: z.string(),
  rubric: z.string(),
  items: z.record(z.string(), z.object({ content: z.string(), elicitation: z.string().nullish(), missing: z.array(z.string()).nullish() }).loose()),
  unsafe: z.array(z.string()).nullish(),
  /** Seconds; null in a transcript without times. */
  station: z.object({ start: z.number().nullish(), end: z.number().nullish() }).loose().nullish(),
  /** Elements that stand stated wrongly, as item/element. */
  incorrect: z.array(z.string()).nullish(),
  questions: z.record(z.string(), z.string()).nullish(),
  teach_back: z.string().nullish(),
  needless_repeats: z.number().nullish(),
  /** Pairs `first/then` of the rubric that were taught the wrong way round. */
  order: z.array(z.string()).optional(),
}).loose();

export type ReaderMarks = z.output<typeof marksForm>;

/** An invented rehearsal with a reader's marks, and a second reader's where there are. */
export interface Rehearsal {
  name: string;
  side: "tuned" | "unseen";
  transcript: Transcript;
  marks: ReaderMarks;
  second?: ReaderMarks;
}

/** All rehearsals that a reader marked, by name. @param practice those of the practice folder instead. */
export function readRehearsals({ practice = false } = {}): Rehearsal[] {
  const folder = practice ? PRACTICE : FOLDER;
  const files = readdirSync(folder);
  return files.filter((file) => file.endsWith(".marks.yaml")).sort().map((file): Rehearsal => {
    const name = file.replace(/\.marks\.yaml$/, "");
    const spoken = files.find((other) => other.startsWith(`${name}.`) && !other.endsWith(".yaml"));
    if (spoken === undefined) throw new Error(`${file} marks a rehearsal that is not there`);
    const marks = readMarks(folder, file);
    const second = `${name}.second.yaml`;
    return {
      name,
      side: practice || TUNED.includes(marks.rubric) ? "tuned" : "unseen",
      transcript: readTranscript(readFileSync(join(folder, spoken)), { file: spoken }),
      marks,
      ...(existsSync(join(folder, second)) && { second: readMarks(folder, second) }),
    };
  });
}

const readMarks = (folder: string, file: string): ReaderMarks => marksForm.parse(parse(readFileSync(join(folder, file), "utf8")));
