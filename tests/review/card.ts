import { ProblemError, type Finding } from "../../src/problem/problem.ts";
import { loadPlacedRubric } from "../../src/rubric/load.ts";
import { reviewRubric, type RubricReview } from "../../src/review/check.ts";
import { readPhrases } from "../../src/review/read-phrases.ts";

/** Invented: a rubric with nothing wrong. The tests break one thing each. */
export const SOUND = `saidwell: rubric@1
id: card
title: Card
version: 1
jurisdiction: [any]
scenario: { task: Explain it., counselled: patient, label: { dose: { text: Two puffs, quantity: { value: 2, unit: puff } } } }
time: { limit: 7 min, target: 6 min }
sources:
  guideline: { body: Some body, title: Some guideline, year: 2024 }
sections:
  - id: steps
    title: Steps
    items:
      - id: shake
        label: Shakes it
        critical: true
        fact: { source: guideline, jurisdiction: [any], review_by: 2028-01-31 }
        say:
          - shake the inhaler well
          - give the inhaler a good shake
          - always shake the inhaler hard
      - id: hold
        label: Holds the breath
        say:
          - hold your breath for {quantity}
          - keep holding your breath for {quantity}
          - don't breathe for {quantity}
        quantity: { value: 10, unit: second }
      - id: rinse
        label: Rinses the mouth
        say:
          - rinse your mouth with water afterwards
          - gargle with water and spit it out
          - rinse and spit afterwards
order:
  - { first: shake, then: hold, severity: minor, reason: It mixes. }
  - { first: hold, then: rinse, severity: minor, reason: Last. }
unsafe:
  - { id: swallow, label: Swallow it, severity: major, say: [swallow the rinsing water every time] }
pass: { minimum: 60 }
`;

export const TODAY = "2026-11-25";

export const BLOCK = `saidwell: block@1
id: opening
title: Opening
items:
  - id: greet
    label: Greets
    say: [hello and welcome to the pharmacy, good morning and welcome, hi and welcome to the pharmacy]
`;

/** @param blocks texts by the name under which the rubric includes them. */
export function review(text: string, { today = TODAY, blocks = {}, foreign = () => false }: { today?: string; blocks?: Record<string, string>; foreign?: (include: string) => boolean } = {}): RubricReview {
  const readBlock = (include: string) => {
    const block = blocks[include];
    if (block === undefined) throw new Error("no such file");
    return block;
  };
  const placed = loadPlacedRubric(text, { file: "card.yaml", readBlock, blockFile: (include) => `folder/${include}`, foreign });
  return reviewRubric(placed, today, readPhrases(placed.rubric));
}

/** Findings, also of a rubric that cannot even be read. */
export function findingsOf(text: string, options: Parameters<typeof review>[1] = {}): readonly Finding[] {
  try {
    return review(text, options).findings;
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
}

/** The sound rubric with one thing put in place of another, which must be there. */
export function broken(from: string, to: string): string {
  if (!SOUND.includes(from)) throw new Error(`the sound rubric has no '${from}'`);
  return SOUND.replace(from, to);
}

/** 1-based line on which a text first has this. */
export function lineOf(text: string, part: string): number {
  const before = text.indexOf(part);
  if (before < 0) throw new Error(`no '${part}'`);
  return text.slice(0, before).split("\n").length;
}
