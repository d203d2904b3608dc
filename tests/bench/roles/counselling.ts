// Invented counselling talk of many hands: no open corpus of counselling is known to us, and consultations, which are
// mostly questions and answers, say little about a voice that teaches for minutes and a voice that breaks in.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readTalk } from "../match/talk.ts";
import type { Consultation, GoldTurn, Side } from "./corpora.ts";
import { DIALOGUES, DIALOGUE_WEIGHT, TALK_WEIGHT } from "./settings.ts";

const SIDES: Record<string, Side> = { C: "candidate", P: "patient" };

/** A dialogue's file: "C: ..." or "P: ..." a line; lines that open with "#" are about it. */
function turnsOf(text: string): GoldTurn[] {
  return text.split("\n").filter((line) => line !== "" && !line.startsWith("#")).map((line) => {
    const side = SIDES[line.slice(0, line.indexOf(":"))];
    if (side === undefined) throw new Error(`a line of a dialogue begins with neither C: nor P:: ${line}`);
    return { side, text: line.slice(line.indexOf(":") + 1).trim(), start: null, end: null };
  });
}

/** All of it, each with the hand who wrote it: whoever measures leaves whole hands out of the fit. */
export function counsellingTalks(): Consultation[] {
  const dialogues = readdirSync(DIALOGUES).sort().map((name): Consultation => ({ id: name.replace(/\.txt$/, ""), corpus: "counselling", hand: name.slice(0, name.indexOf("-")), weight: DIALOGUE_WEIGHT, turns: turnsOf(readFileSync(join(DIALOGUES, name), "utf8")) }));
  // The annotated talk is nearly all the candidate's: it counts less, lest every doubtful word be taken for the candidate's.
  const talks = readTalk().map(({ name, writer, turns }): Consultation => ({ id: name, corpus: "counselling", hand: writer, weight: TALK_WEIGHT, turns: turns.map(({ role, says }) => ({ side: role === "patient" ? "patient" : "candidate", text: says, start: null, end: null })) }));
  return [...dialogues, ...talks];
}
