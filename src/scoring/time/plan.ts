import { tenths } from "../rounding.ts";
import type { Seconds } from "../../transcript/types.ts";
import type { Measured, TimePlan, TimeResult } from "../types.ts";
import { perMinute } from "./pace.ts";

interface Cost {
  words: number;
  seconds: Seconds | null;
}

export interface PlanInput {
  time: TimeResult;
  repeats: readonly Cost[];
  asides: readonly Cost[];
}

/**
 * Mean pace of interviews in British English, words a minute: Tauroza and Allison 1990, "Speech rates in British
 * English", Applied Linguistics 11(1) (as later authors quote it). Faster is faster than an interview usually goes.
 * Where understanding falls: Foulke and Sticht 1969, "Review of research on the intelligibility and comprehension of
 * accelerated speech", Psychological Bulletin 72(1), slowly up to about 275 words a minute and faster beyond; Foulke 1971
 * puts the bend at 250 (both as reviewed by Sticht and others, "Auding and reading", 1974).
 */
export const USUAL_PACE = 190;

export const PACE_CAUTION =
  "That is faster than people usually talk in an interview (about 190 words a minute: Tauroza and Allison 1990). Understanding falls as speech gets faster, steeply beyond 250 to 275 words a minute (Foulke and Sticht 1969; Foulke 1971), and sooner for people who are ill, old or new to the language: leave words out rather than hurry.";

/** What could be saved, and what meeting the target takes. */
export function timePlan({ time, repeats, asides }: PlanInput): TimePlan {
  const pace = time.articulation.value;
  const fillerWords = wordsOfFillers(time.fillers);
  const pauses = time.pauses.value;
  const costs: TimePlan["costs"] = [
    { what: "repeats", ...sum(repeats) },
    { what: "fillers", words: fillerWords, seconds: pace === null ? null : tenths((60 * fillerWords) / pace) },
    { what: "asides", ...sum(asides) },
    { what: "pauses", words: 0, seconds: pauses === null ? null : pauses.seconds },
  ];
  const used = time.used;
  if (used.value === null) return { costs, projected: used, wordsToCut: used, paceNeeded: used, caution: null };
  // Pauses may be the patient's, or a hand at work on the device: they are shown, not promised as savings.
  const saved = costs.filter(({ what }) => what !== "pauses").reduce((total, { seconds }) => total + (seconds ?? 0), 0);
  const projected: Measured<Seconds> = { value: tenths(Math.max(0, used.value - saved)), estimated: true };
  const over = used.value - time.target;
  if (over <= 0) {
    return { costs, projected, wordsToCut: { value: 0, estimated: used.estimated }, paceNeeded: { value: null, why: "the target is met at the present pace" }, caution: null };
  }
  if (pace === null) return { costs, projected, wordsToCut: notKnown, paceNeeded: notKnown, caution: null };
  const talking = (60 * time.candidateWords) / pace;
  const left = talking - over;
  if (left <= 0) return { costs, projected, wordsToCut: notByWords, paceNeeded: notByWords, caution: null };
  const wordsToCut: Measured<number> = { value: Math.ceil((over * pace) / 60), estimated: true };
  const needed = tenths(perMinute(time.candidateWords, left));
  return { costs, projected, wordsToCut, paceNeeded: { value: needed, estimated: true }, caution: needed > USUAL_PACE ? PACE_CAUTION : null };
}

const notKnown: Measured<never> = { value: null, why: "the candidate's pace is not measurable" };

const notByWords: Measured<never> = { value: null, why: "the others' talk and the silences alone take longer than the target" };

/** "you know" is one filler of two words. Those not listed among the commonest count as one word each. */
function wordsOfFillers({ count, commonest }: TimeResult["fillers"]): number {
  return commonest.reduce((total, filler) => total + filler.count * (filler.word.split(" ").length - 1), count);
}

function sum(costs: readonly Cost[]): Cost {
  const words = costs.reduce((total, cost) => total + cost.words, 0);
  const known = costs.every(({ seconds }) => seconds !== null);
  return { words, seconds: known ? tenths(costs.reduce((total, { seconds }) => total + (seconds ?? 0), 0)) : null };
}
