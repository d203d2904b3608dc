import { z } from "zod";
import { id } from "./fields.ts";

/*
 * What was learnt from marked sayings about a rubric: a file that a program writes and nobody edits, named by `learnt`.
 * It holds numbers alone, so it is JSON, which reads many times as fast as YAML.
 */

const learntElement = z.strictObject({
  label: z.string().describe("The element's label when it was learnt: of an element that has another one now, nothing is known."),
  place: z.int().nonnegative().describe("Its own in the rows of `words`."),
  about: z.number().describe("Log-odds, before any word, that a stretch is about it."),
  turned: z.number().describe("Log-odds, before any word, that a stretch about it says it wrongly."),
  numbers: z.boolean().describe("Whether numbers are words like others; false, all are one."),
});

export const learntSchema = z.strictObject({
  saidwell: z.literal("learnt@1"),
  id: id.describe("The id of the rubric."),
  elements: z.record(z.string(), learntElement),
  anyhow: z.number().describe("Log-odds, before any word, that whatever is said is said wrongly. They are added to every element's own; in the rows of `words` it has the place behind the elements', and all numbers are one."),
  words: z.record(z.string(), z.array(z.number())),
});
