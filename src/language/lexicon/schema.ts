import { z } from "zod";

/*
 * The forms of the lexicon files. They are checked when the project is built and tested, not at every start:
 * loading the checker costs more than marking a transcript.
 */

const entry = z.string().trim().min(1);
/** Each entry once: of one that stands twice, people delete the other and wonder. */
const list = z.array(entry).min(1).refine((entries) => new Set(entries).size === entries.length, "an entry stands twice in this list");

export const LEXICON_FORMS = {
  synonyms: z.strictObject({ same: z.array(z.array(entry).min(2)), near: z.array(z.array(entry).min(2)) }),
  wordings: z.strictObject({ sure: z.record(entry, list), likely: z.record(entry, list) }),
  weights: z.strictObject({ silent: list, light: list, direction: list }),
  polarity: z.strictObject({
    forward: list,
    backward: list,
    backward_last: list,
    neutral: list,
    dismissals: list,
    dispenses: list,
    list_heads: list,
    asides: list,
    rulings: list,
    negative_verbs: list,
    enders: list,
    awaits: list,
    lacks: list,
    turners: list,
    hypothetical: list,
    supposing: list,
    looks: list,
    looked_for: list,
    unable: list,
    permits: list,
    outright: list,
    allowances: list,
    harms: list,
    plays_down: list,
    plays_nothing_down: list,
    faults: list,
  }),
  fillers: z.strictObject({ always: list, parenthetical: list, meant_after: list, meant_before: list }),
  repairs: z.strictObject({ editing: list, waits: list, set_off: list, hesitations: list, trailing: list, meant_after: list, takes_back: list, opposites: z.array(z.array(entry).min(2)) }),
  "small-words": z.strictObject({ meant: z.record(entry, entry), beside: z.array(z.strictObject({ heard: entry, meant: entry, previous: list.optional(), next: list.optional() })) }),
  "small-talk": z.strictObject({ mine: list, others: list, tellers: list, past: list, openers: list, interruptions: list, spoken_of: list, fetching: list, done_here: list }),
  devices: z.array(z.array(entry).min(1)).min(1),
  technical: z.array(z.strictObject({ word: entry, also: z.array(entry).optional(), plain: entry })).min(1),
  "speech-act": z.strictObject({
    auxiliaries: list,
    subjects: list,
    question_words: list,
    not_questions: list,
    strong_openings: list,
    openers: list,
    tags: list,
    leading_tags: list,
    requests: list,
    information: list,
    indirect: list,
    open: list,
    asked_of_oneself: list,
    asks_whether_known: list,
    between_statements: list,
    of_adults: list,
    of_children: list,
    each_use: list,
    first_use_only: list,
    of_the_patient: list,
    comprehension_checks: list,
    confirmations: list,
    sure: list,
    corrections: list,
    deferrals: list,
    refusals: list,
    showing: list,
    repeat_requests: list,
    teach_back_requests: list,
    acting_out: list,
    supposing: list,
    others: list,
    stalls: list,
    topic_changes: list,
    affirmations: list,
  }),
} as const;

export type LexiconFile<Name extends keyof typeof LEXICON_FORMS> = z.output<(typeof LEXICON_FORMS)[Name]>;
