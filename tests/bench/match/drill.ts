import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { z } from "zod";

const FOLDER = "fixtures/drill";
const form = z
  .object({
    invented: z.literal(true),
    writer: z.string(),
    rubric: z.string(),
    elements: z.record(z.string(), z.object({ right: z.array(z.string()).default([]), near: z.array(z.string()).default([]), wrong: z.array(z.string()).default([]) }).strict()),
    unsafe: z.record(z.string(), z.array(z.string())),
    safe: z.record(z.string(), z.array(z.string())).default({}),
  })
  .strict();

/** Single utterances about one rubric by one hand: by element (item/element) right ones, near misses and wrong ones; by unsafe statement what states it, and what speaks of the same and does not. */
export type Drill = z.infer<typeof form> & { name: string };

/** @param round which hands: "d3" were read by nobody, the others by who widened and mended. */
export function readDrills(round: string): Drill[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith(`-${round}.yaml`))
    .sort()
    .map((file) => ({ name: file.replace(/\.yaml$/, ""), ...form.parse(parse(readFileSync(join(FOLDER, file), "utf8")), { error: () => `${file} is not a file of drills` }) }));
}
