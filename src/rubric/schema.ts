import { z } from "zod";
import { duration } from "./duration.ts";
import type { learntSchema } from "./learnt-schema.ts";
import { factSchema, id, jurisdictions, phrases, phraseSchema, quantitySchema, severitySchema } from "./fields.ts";

/*
 * The form of a rubric file. Every field says in words what it is for: the same texts go into the
 * JSON Schema that editors show.
 */

const elsewhereSchema = z
  .strictObject({
    jurisdiction: jurisdictions,
    say: phrases.optional(),
    quantity: quantitySchema.optional(),
    note: z.string(),
  })
  .describe("What is right in another country: reported as 'differs from this station's guidance', never unsafe.");

const elementFields = {
  say: phrases.describe("Acceptable responses, in several people's words."),
  must: z
    .array(phraseSchema)
    .optional()
    .describe("Words without which nothing counts, one notion an entry: 'shake|rattle'. A response of `say` that does without one stands by its own words."),
  not_with: z.array(phraseSchema).optional().describe("Words whose presence in the same clause means that something else is meant."),
  red_flag: z.boolean().optional().describe("A sign that must alarm: who says it is nothing, normal or harmless states it wrongly."),
  quantity: quantitySchema.optional(),
  incorrect: phrases.optional().describe("What is wrong to say here; the plain denial of `say` need not be listed."),
  elsewhere: z.array(elsewhereSchema).optional(),
  fact: factSchema.optional(),
  examples: z
    .strictObject({ earns: z.array(z.string()).default([]), misses: z.array(z.string()).default([]) })
    .optional()
    .describe("Passages that must and must not earn the element; `rubric check` runs them."),
};

export const elementSchema = z.strictObject({
  id,
  label: z.string().describe("What has to be said, in plain words."),
  essential: z.boolean().optional().describe("Without it the item is neither complete nor met, whatever else of it was said: the call for an ambulance among what to do in an emergency."),
  ...elementFields,
});

const creditSchema = z.enum(["full", "half", "none"]);

const kindSchema = z
  .enum(["tell", "ask", "ask-openly", "teach-back", "invite-questions", "summary"])
  .describe(
    "tell: the candidate states or instructs. ask: must be a question. ask-openly: must be an open question. " +
      "teach-back: asks the patient to say or show it in their own way. invite-questions, summary: as named.",
  );

const itemFields = {
  label: z.string().describe("The checklist item in plain words, as a coach would read it out."),
  // Beyond these a mark would be lost in rounding, or no number any more.
  weight: z.number().min(0.01).max(1000).default(1),
  critical: z.boolean().default(false).describe("Missing or incorrect, it decides the result by the pass rule."),
  kind: kindSchema.default("tell"),
  needs: z
    .union([z.literal("all"), z.int().positive()])
    .default("all")
    .describe("How many of the elements make it complete."),
  minimum: z.int().positive().optional().describe("The fewest elements for a pass of this item; left out, as many as `needs`."),
  credit: z
    .strictObject({
      after_question: creditSchema.default("full").describe("The patient asked first."),
      prompted: creditSchema.default("half").describe("Said only after the examiner or patient prompted for it."),
      confirmed: creditSchema.default("half").describe("The candidate asked, the patient said it, the candidate confirmed."),
    })
    .prefault({}),
  when: z
    .array(z.string().regex(/^(not )?[a-z][a-z0-9-]*$/, "write the condition as the scenario has it, with 'not' before one that must not hold"))
    .optional()
    .describe("Scenario conditions that must hold; 'not child' for one that must not. Otherwise the item does not apply."),
  cue: z
    .strictObject({ patient: phrases })
    .optional()
    .describe("What the patient must say first; never said, the item is 'not offered' and leaves the denominator."),
  fact: factSchema.optional().describe("For all elements that have none of their own."),
  advice: z.string().optional().describe("What to do differently, for the list of changes; left out, made from the label."),
};

const wholeItemSchema = z.strictObject({
  id,
  ...itemFields,
  elements: z.array(elementSchema).min(1).optional(),
  say: elementFields.say.optional().describe("Short form for an item of one element."),
  must: elementFields.must,
  not_with: elementFields.not_with,
  red_flag: elementFields.red_flag,
  quantity: elementFields.quantity,
  incorrect: elementFields.incorrect,
  elsewhere: elementFields.elsewhere,
  examples: elementFields.examples,
});

/** Fields of an element that an item of one element has on itself. */
export const SHORT_FORM = ["say", "must", "not_with", "red_flag", "quantity", "incorrect", "elsewhere", "examples"] as const;

export const itemSchema = wholeItemSchema
  .superRefine((item, context) => {
    if ((item.elements === undefined) === (item.say === undefined)) {
      context.addIssue({ code: "custom", message: "give either 'elements' or the short form 'say', one of the two", params: { mend: item.say === undefined ? "Add 'say' with acceptable responses, or 'elements'." : "Take one of the two out." } });
    }
    if (item.elements !== undefined) {
      for (const key of SHORT_FORM) {
        if (key !== "say" && item[key] !== undefined) {
          context.addIssue({ code: "custom", path: [key], message: `'${key}' belongs to the short form; put it on an element`, params: { mend: `Move '${key}' to the element that it is about.` } });
        }
      }
    }
    const count = item.elements?.length ?? 1;
    if (item.needs !== "all" && item.needs > count) {
      context.addIssue({ code: "custom", path: ["needs"], message: `needs ${item.needs} elements, but has ${count}`, params: { mend: "Lower 'needs', write 'all', or add elements." } });
    }
    if (item.minimum !== undefined && item.minimum > (item.needs === "all" ? count : item.needs)) {
      context.addIssue({ code: "custom", path: ["minimum"], message: "the minimum is more than what makes it complete", params: { mend: "Lower 'minimum', or raise 'needs'." } });
    }
  })
  .transform(({ elements, say, must, not_with, red_flag, quantity, incorrect, elsewhere, examples, ...item }) => ({
    ...item,
    elements: elements ?? [
      {
        id: item.id,
        label: item.label,
        say: say ?? [],
        ...(must && { must }),
        ...(not_with && { not_with }),
        ...(red_flag !== undefined && { red_flag }),
        ...(quantity && { quantity }),
        ...(incorrect && { incorrect }),
        ...(elsewhere && { elsewhere }),
        ...(examples && { examples }),
      },
    ],
  }));

export const sectionSchema = z.strictObject({ id, title: z.string(), items: z.array(itemSchema).min(1) });

export const includeSchema = z.strictObject({
  include: z.string().describe("A block file, relative to this file and inside the same folder tree."),
  title: z.string().optional(),
  drop: z.array(id).default([]).describe("Items of the block that this station does without."),
  override: z
    .record(id, z.record(z.string(), z.unknown()))
    .default({})
    .describe("By item id: fields put in place of the block's own."),
});

export const sourceSchema = z.strictObject({
  body: z.string().describe("Who published it."),
  title: z.string(),
  year: z.int(),
  detail: z.string().optional().describe("Page, section or document number."),
});

export const questionSchema = z.strictObject({
  id,
  says: phrases.describe("The question in the patient's words, several ways."),
  answered_by: z.array(id).optional().describe("Items whose content answers it."),
  answer: phrases.optional().describe("An answer of its own, where no item holds it."),
  incorrect: phrases.optional(),
});

const elementKeys = z.array(z.string().regex(/^[a-z0-9-]+\/[a-z0-9-]+$/, "must be ITEM/ELEMENT"));

export const unsafeSchema = z.strictObject({
  id,
  label: z.string().describe("The unsafe statement in plain words."),
  severity: severitySchema,
  say: phrases,
  must: z.array(phraseSchema).optional(),
  not_with: z.array(phraseSchema).optional(),
  quantity: quantitySchema.optional(),
  wrong_of: elementKeys
    .optional()
    .describe("Elements, as ITEM/ELEMENT, whose wrong statements all amount to this one: who is told of one of those has stated this as well, but for wrong numbers and with none of its not_with."),
  contradicts: elementKeys
    .optional()
    .describe("Elements, as ITEM/ELEMENT, that it states wrongly: who is found to have stated it is told of them as well."),
  fact: factSchema.optional(),
  examples: elementFields.examples,
});

const scenarioSchema = z.strictObject({
  task: z.string().describe("What the candidate is asked to do, as the station card says it."),
  counselled: z.enum(["patient", "carer"]),
  setting: z.string().optional(),
  label: z
    .record(id, z.strictObject({ text: z.string(), quantity: quantitySchema.optional() }))
    .default({})
    .describe("What the supplied label says. It goes before the rubric's own facts."),
  conditions: z.array(id).default([]).describe("Such as child, arthritis, used-one-before."),
  questions: z.array(questionSchema).default([]).describe("The patient's scripted questions."),
});

const orderSchema = z.strictObject({
  first: id,
  then: id,
  severity: severitySchema,
  reason: z.string(),
});

const passSchema = z.strictObject({
  minimum: z.number().min(0).max(100).describe("Per cent of the weighted total."),
  critical: z.union([z.literal("all"), z.int().nonnegative()]).default("all").describe("How many critical items must be met."),
  unsafe: z
    .strictObject({
      major: z.int().nonnegative().default(0),
      moderate: z.int().nonnegative().default(0),
      minor: z.int().nonnegative().default(99),
    })
    .prefault({})
    .describe("How many standing unsafe statements of each severity a pass still allows."),
  within_limit: z.boolean().default(false).describe("Whether running over the limit fails the station."),
});

const responsesField = z
  .string()
  .optional()
  .describe("A file of more acceptable responses, relative to this file: a text of the form 'saidwell: responses@1'.");

export const rubricSchema = z.strictObject({
  saidwell: z.literal("rubric@1"),
  id,
  title: z.string(),
  version: z.int().positive().describe("Raise it when the marks could change."),
  jurisdiction: jurisdictions.describe("Whose guidance this station follows."),
  scenario: scenarioSchema,
  time: z
    .strictObject({ limit: duration, target: duration })
    .refine(({ limit, target }) => target <= limit, { error: "the target is later than the limit", params: { mend: "Make the target as long as the limit or shorter." } }),
  responses: responsesField,
  learnt: z.string().optional().describe("A file of what was learnt from marked sayings about this rubric, relative to this file: of the form 'saidwell: learnt@1'. A program writes it."),
  sources: z.record(id, sourceSchema).default({}),
  sections: z.array(z.union([includeSchema, sectionSchema])).min(1),
  order: z.array(orderSchema).default([]).describe("Pairs of items whose order matters."),
  unsafe: z.array(unsafeSchema).default([]),
  pass: passSchema,
  history: z.array(z.string()).default([]).describe("Who changed what and why, newest first."),
});

export const blockSchema = z.strictObject({
  saidwell: z.literal("block@1"),
  id,
  title: z.string(),
  responses: responsesField,
  sources: z.record(id, sourceSchema).default({}),
  items: z.array(itemSchema).min(1),
  unsafe: z.array(unsafeSchema).default([]),
  history: z.array(z.string()).default([]),
});

export type RubricFile = z.output<typeof rubricSchema>;
export type Phrase = z.output<typeof phraseSchema>;
export type Severity = z.output<typeof severitySchema>;
export type Quantity = z.output<typeof quantitySchema>;
export type Fact = z.output<typeof factSchema>;
export type Element = z.output<typeof elementSchema>;
export type Item = z.output<typeof itemSchema>;
export type Section = z.output<typeof sectionSchema>;
export type PatientQuestion = z.output<typeof questionSchema>;
export type UnsafeStatement = z.output<typeof unsafeSchema>;
export type Credit = z.output<typeof creditSchema>;
export type ItemKind = z.output<typeof kindSchema>;

/**
 * Straight lines over the words of a stretch, two an element. Plain data. `elements` by item/element and by `statementKey`;
 * `anyhow`, in the place behind them, of whatever element; `words` by word, or pair of words, rows of three: the place, and what the word adds to `about` and to `turned`.
 */
export type Learnt = Pick<z.output<typeof learntSchema>, "elements" | "anyhow" | "words">;

/** A rubric with its blocks read in: what the matcher and the marker work from. */
export interface Rubric extends Omit<RubricFile, "sections" | "learnt"> {
  /** What was learnt from marked sayings. */
  learnt?: Learnt;
  sections: Section[];
  /** As the person named it. */
  file: string;
  /** SHA-256 of the resolved content, in hexadecimal; locks the version into every sheet. */
  hash: string;
}
