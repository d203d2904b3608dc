// Variants of the invented counselling talks (invented.yaml), for training only.
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import type { Consultation, GoldTurn } from "./corpora.ts";
import { seededRandom } from "../../../src/cohort/statistics/random.ts";

interface Talk {
  id: string;
  turns: ({ c: string } | { p: string })[];
}

/** Takes one of each `{a|b}`. */
function choose(text: string, next: () => number): string {
  return text
    .replace(/\{([^{}]*)\}/g, (_, list: string) => {
      const options = list.split("|");
      return options[Math.floor(next() * options.length)]!;
    })
    .replace(/\s+/g, " ")
    .trim();
}

/** `variants` of every talk, the same ones every time. */
export function inventedTalks(path: string, variants: number): Consultation[] {
  const { talks } = parse(readFileSync(path, "utf8")) as { talks: Talk[] };
  const next = seededRandom(7);
  return talks.flatMap((talk) =>
    Array.from({ length: variants }, (_, at): Consultation => ({
      id: `${talk.id}-${at + 1}`,
      corpus: "invented",
      turns: talk.turns
        .map((turn): GoldTurn => ("c" in turn ? { side: "candidate", text: choose(turn.c, next), start: null, end: null } : { side: "patient", text: choose(turn.p, next), start: null, end: null }))
        .filter((turn) => /[\p{L}\p{N}]/u.test(turn.text)),
    })),
  );
}
