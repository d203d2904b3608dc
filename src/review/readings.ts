import { z } from "zod";

/*
 * What a rubric's own phrases come to when they are said to the matcher, without the lines they stand on. It follows
 * from the rubric (its blocks and responses read in) and from the program alone, so it can be kept from one check to
 * the next, while lines and dates are today's. Numbers count in the order in which the rubric has the phrases.
 */

/** What an acceptable response does to another item. */
const effectSchema = z.object({
  /** The variant that does it, as somebody would say it. */
  said: z.string(),
  /** The other item, and which of its elements. */
  other: z.string(),
  otherElement: z.string(),
  /** `earns`: it counts as said. `contradicts`: it counts as said wrongly. */
  effect: z.enum(["earns", "contradicts"]),
});

const responseSchema = z.object({
  /** Which of the rubric's acceptable responses, from 0. */
  response: z.int().nonnegative(),
  /** The first variant that does not earn its own element, and why; null when all do. */
  missed: z.object({ said: z.string(), why: z.string(), mend: z.string() }).nullable(),
  effects: z.array(effectSchema),
  /** The first variant that is taken for an unsafe statement. */
  unsafe: z.object({ said: z.string(), statement: z.string() }).nullable(),
});

/** A phrase that says something wrong and is not told when somebody says it, word for word. */
const silent = {
  /** Which of its statement's or element's phrases, from 0. */
  phrase: z.int().nonnegative(),
  /** The first variant, as somebody would say it. */
  said: z.string(),
  why: z.string(),
  mend: z.string(),
};

export const readingsSchema = z.object({
  /** Variants that were run through the matcher. */
  utterances: z.int().nonnegative(),
  /** Responses that do anything but earn their own element. */
  responses: z.array(responseSchema),
  /** Which of the rubric's examples (`examplesOf`) do not hold, from 0. */
  examples: z.array(z.int().nonnegative()),
  /** Elements without a quantity of which most responses state a number. */
  numbers: z.array(
    z.object({
      /** Which of the rubric's elements, from 0. */
      element: z.int().nonnegative(),
      /** The first number, as it is said. */
      first: z.string(),
      /** How many of the element's responses state one. */
      responses: z.int().positive(),
    }),
  ),
  /** Responses that write out the number which the quantity of their element compares. */
  written: z.array(
    z.object({
      /** Which of the rubric's acceptable responses, from 0. */
      response: z.int().nonnegative(),
      /** The number, as it is said. */
      number: z.string(),
    }),
  ),
  /** Phrases of unsafe statements that are not found when somebody says them, word for word. */
  unfound: z.array(
    z.object({
      /** Which of the rubric's unsafe statements, from 0. */
      statement: z.int().nonnegative(),
      ...silent,
    }),
  ),
  /** Wrong statements of elements (`incorrect`) that are told to nobody who makes them, word for word. */
  untold: z.array(
    z.object({
      /** Which of the rubric's elements, from 0. */
      element: z.int().nonnegative(),
      ...silent,
    }),
  ),
  /** Must-words of elements that no response of the element has: they ask for nothing. */
  idle: z.array(
    z.object({
      /** Which of the rubric's elements, and which of its must-words, from 0. */
      element: z.int().nonnegative(),
      must: z.int().nonnegative(),
    }),
  ),
  /** Phrases of patient's questions that are not heard as what they are there for. */
  questions: z.array(
    z.object({
      /** Which of the scenario's questions, from 0, and which of its lists. */
      question: z.int().nonnegative(),
      list: z.enum(["says", "answer", "incorrect"]),
      ...silent,
    }),
  ),
  /** Phrases made of a few words that everybody says, with no must-word: any talk has them. */
  light: z.array(
    z.object({
      list: z.enum(["say", "incorrect", "unsafe", "cue"]),
      /** Which of the rubric's elements, unsafe statements, or cues, from 0. */
      owner: z.int().nonnegative(),
      /** As the rubric writes it. */
      phrase: z.string(),
    }),
  ),
  /** Words of the shortest and of the middling sentence of every element that applies. */
  speaking: z.object({ words: z.int().nonnegative(), middleWords: z.int().nonnegative() }),
});

export type Effect = z.infer<typeof effectSchema>;
export type ResponseReading = z.infer<typeof responseSchema>;
export type Readings = z.infer<typeof readingsSchema>;
