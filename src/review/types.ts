import type { Finding } from "../problem/problem.ts";
import type { Place } from "../rubric/places.ts";
import type { Seconds } from "../transcript/types.ts";

/** An acceptable response that, said alone, does something to another item of its rubric. */
export interface Confusion {
  /** Whose response it is. */
  item: string;
  element: string;
  /** As written in the rubric. */
  response: string;
  /** One of its variants, as somebody would say it. */
  said: string;
  /** The other item, and which of its elements. */
  other: string;
  otherElement: string;
  /** `earns`: it counts as said. `contradicts`: it counts as said wrongly. */
  effect: "earns" | "contradicts";
  place: Place;
}

/** What the phrases of a rubric come to. */
export interface RubricFigures {
  items: number;
  critical: number;
  elements: number;
  /** Acceptable responses as written. */
  responses: number;
  /** Variants that were run through the matcher. */
  utterances: number;
  /** Responses of which a variant does not earn its own element. */
  unearned: number;
  /** Responses of which a variant earns another item. */
  confused: number;
  /** `confused` over `responses`, 0 to 1. */
  share: number;
  speaking: {
    /** Of the shortest response of every element that applies. */
    words: number;
    /** At the pace of `length.ts`. */
    seconds: Seconds;
    /** The same for the response of middling length (the median) of every element. */
    middleWords: number;
    middleSeconds: Seconds;
    limit: Seconds;
    target: Seconds;
  };
}

export interface FileReview {
  file: string;
  kind: "rubric" | "block" | "responses" | "other";
  /** Null where it could not be read so far. */
  id: string | null;
  /** Null for blocks and responses files, and for a rubric that has errors of form. */
  figures: RubricFigures | null;
  confusion: Confusion[];
}

/** What `saidwell rubric check` found. Its JSON form is `saidwell/rubric-check@1`. */
export interface CheckReport {
  form: "saidwell/rubric-check@1";
  version: string;
  /** The day by which facts had to be reviewed, as 2027-06-30. */
  today: string;
  files: FileReview[];
  /** By file, line and code; each once, however many rubrics include its block. */
  findings: Finding[];
  counts: { errors: number; warnings: number; notes: number };
}
