import type { TokenSpan } from "./clauses.ts";
import type { CueMatch } from "./cues.ts";
import { TAIL_CLAUSE_WORDS, TAIL_WORDS } from "./edges.ts";
import { clauseEnd, cuesOf, official, pauseBefore, wordAt, type Scene } from "./scene.ts";

/** Silence after a leave-taking, in seconds, that ends the station. */
const END_PAUSE = 8;
/** What is said so soon after a leave-taking is a debrief or the pair's last words. */
const AFTER_WORDS = 80;
/** A leave-taking with thanks so near, or another leave-taking, is both speakers'. */
const EXCHANGE_WORDS = 8;
/** A stretch that ends so few words after the parting ends with it: a name. */
const NAME_WORDS = 2;
/** A leave-taking of both speakers ends the station though nothing tells what came after, if no more than this share of the talk does. */
const AFTER_SHARE = 0.35;

/** The leave-taking, up to the end of its tail. */
export interface Farewell extends TokenSpan {
  /** A long silence follows. */
  silent: boolean;
}

/** The leave-taking that ends the talk before `limit`, with its tail of thanks. `limited`: something tells that the talk ends there. */
export function farewellBefore(scene: Scene, from: number, limit: number, limited: boolean): Farewell | undefined {
  const cues = cuesOf(scene, ["leave_taking"], from, limit).filter((cue) => !official(scene, cue.first));
  // The last farewell counts, unless a long silence or new set-up talk follows an earlier one.
  for (const [at, cue] of cues.entries()) {
    const end = tailEnd(scene, cue.end, limit);
    const next = cues[at + 1];
    const silent = end < limit && (pauseBefore(scene, end) ?? 0) >= END_PAUSE;
    if (silent) return { first: cue.first, end, silent };
    if (next !== undefined) {
      if (next.first >= end && cuesOf(scene, ["setup"], end, Math.min(limit, end + AFTER_WORDS)).length > 0) return { first: cue.first, end, silent };
      continue;
    }
    const rest = limit - end;
    const chat = cuesOf(scene, ["setup", "feedback", "examiner_question"], end, limit).length > 0;
    const sure = exchanged(scene, cue, end, cues[at - 1]) && rest <= AFTER_SHARE * (end - from);
    if (rest <= TAIL_WORDS || chat || sure || (limited && rest <= AFTER_WORDS)) return { first: cue.first, end: rest <= TAIL_WORDS && !limited && !chat && !sure ? limit : end, silent };
  }
  return undefined;
}

function exchanged(scene: Scene, cue: CueMatch, end: number, before: CueMatch | undefined): boolean {
  if (before !== undefined && cue.first - before.end <= EXCHANGE_WORDS) return true;
  return cuesOf(scene, ["farewell_tail"], cue.first - EXCHANGE_WORDS, cue.first).length > 0 || cuesOf(scene, ["farewell_tail"], cue.end, end).length > 0;
}

/** From the end of a leave-taking on over the rest of its sentence and what else is said in parting, but not into an examiner's words. */
export function tailEnd(scene: Scene, token: number, limit: number): number {
  let end = Math.min(limit, firstSentenceEnd(scene, token, limit));
  while (end < limit) {
    const next = Math.min(limit, clauseEnd(scene, end));
    const polite = cuesOf(scene, ["farewell_tail", "leave_taking"], end, next).length > 0;
    const other = cuesOf(scene, ["setup", "stop", "feedback", "examiner_question"], end, next).length > 0;
    if (next - end > TAIL_CLAUSE_WORDS || !polite || other || official(scene, end) || (pauseBefore(scene, end) ?? 0) >= END_PAUSE) break;
    end = next;
  }
  return end;
}

function firstSentenceEnd(scene: Scene, token: number, limit: number): number {
  const { closed, end } = scene.clauses[scene.clauseOf[token - 1]!]!;
  const labelled = scene.transcript.segments[wordAt(scene, token - 1).segment]!.speaker !== null;
  if ((closed || labelled) && end - token <= TAIL_WORDS) return end;
  const polite = politeEnd(scene, token, limit);
  return end - polite <= NAME_WORDS ? end : polite;
}

/** In a run without punctuation: over the phrases of parting that follow each other at once. */
function politeEnd(scene: Scene, token: number, limit: number): number {
  const cues = cuesOf(scene, ["farewell_tail", "leave_taking"], token, limit);
  let end = token;
  for (const cue of cues) if (cue.first === end) end = cue.end;
  return end;
}
