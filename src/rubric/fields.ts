import { z } from "zod";
import { UNITS } from "../language/units.ts";
import { isJurisdiction, jurisdictionMeant } from "./jurisdictions.ts";
import { notationFaults } from "./notation.ts";

/*
 * The forms of single fields that stand in rubrics, blocks and files of responses alike: an id, a phrase, a number with
 * its unit, where guidance holds and where a fact comes from.
 */

export const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, "write ids in lower case, words joined by hyphens")
  .describe("Lower case, words joined by hyphens; unique in its rubric.");

/**
 * A phrase of the acceptable-response notation: plain words; `a|b` for either word; `(a b|c)` for either
 * group of words; `{quantity}` where the element's number stands; `{name}` where the speaker gives a name.
 */
export const phraseSchema = z
  .string()
  .trim()
  .min(2, "write at least one word")
  .superRefine((phrase, context) => {
    for (const { message, mend } of notationFaults(phrase)) context.addIssue({ code: "custom", message, params: { mend } });
  });
export const phrases = z.array(phraseSchema).min(1, "give at least one phrase");

export const severitySchema = z.enum(["minor", "moderate", "major"]);

/** Units the number grammar knows; `quantity` compares only within one dimension. */
const unitSchema = z.enum(UNITS);

const count = z.number().refine((value) => value >= 0, { error: "numbers below zero are not read in speech", params: { mend: "Write a number of 0 or more; what lies below zero say in words ('below freezing'), without a quantity." } });

const amount = z.union([
  count,
  z.tuple([count, count]).refine(([low, high]) => low <= high, { error: "the low end comes first", params: { mend: "Turn the two round: [low, high]." } }),
], "neither a number nor a range");

export const quantitySchema = z
  .union([
    z.strictObject({
      value: amount.describe("The right number, or [low, high] when any number between is right."),
      unit: unitSchema,
      tolerance: z.number().nonnegative().default(0).describe("How far off still counts, in the same unit."),
      bound: z
        .enum(["exact", "at-least", "at-most"])
        .default("exact")
        .describe("at-least: more is right too; at-most: less is right too."),
    }),
    z.strictObject({ label: id.describe("Take the quantity of this entry of the scenario's label.") }),
  ])
  .describe("The number that the words must carry. A wrong number is incorrect, not absent.");

/** Where guidance holds. */
export const jurisdictions = z
  .array(
    z.string().superRefine((code, context) => {
      if (isJurisdiction(code)) return;
      const meant = jurisdictionMeant(code);
      context.addIssue({ code: "custom", message: `'${code}' is no ISO 3166 code of a country`, params: { mend: meant === null ? "Write two capital letters, such as GB or AU, a part of a country as GB-SCT, or 'any'." : `Write '${meant}'.` } });
    }),
  )
  .min(1, "give at least one country, or 'any'");

export const NO_SOURCE = "common practice, no source";

const factFields = {
  source: z.string().describe(`A key of 'sources', or '${NO_SOURCE}'.`),
  jurisdiction: jurisdictions.describe("Where it holds: ISO 3166 codes such as GB, or 'any'."),
  applies_to: z.string().optional().describe("Device class, age group or product form it holds for."),
  review_by: z.iso.date("write the date as 2027-06-30").describe("When somebody must look at it again."),
  note: z.string().optional(),
};
export const factSchema = z.strictObject(factFields).describe("Where a clinical fact comes from and where it holds.");
