import { OPENINGS_OF_TALK } from "./cues.ts";
import { clauseEnd, cuesOf, quote, type Scene } from "./scene.ts";

export interface Restart {
  /** First token of the new start. */
  token: number;
  /** First token of the words that announce it. */
  saidAt: number;
  reason: string;
  certain: boolean;
}

/** The new start greets or introduces within so many words of "let me start again". */
const GREETING_WITHIN = 40;
/** Words that make a restart one of the whole station, without a greeting after it. */
const WHOLE = /\b(?:over|beginning|top|restart|station)\b/;
/** Such a restart, without a new greeting, is believed in this first part of the talk only; later it is one explanation's. */
const EARLY_SHARE = 0.4;

/** Where the candidate starts the whole station anew, inside tokens `first` to `end`. */
export function restartsIn(scene: Scene, first: number, end: number): Restart[] {
  const found: Restart[] = [];
  for (const cue of cuesOf(scene, ["restart"], first, end)) {
    if (scene.roles[cue.first] === "patient" && scene.roles[cue.end - 1] === "patient" && !closeToGreeting(scene, cue.end, end)) continue;
    if (cuesOf(scene, ["restart_of_a_step"], cue.first, Math.min(end, cue.end + 4)).some((step) => step.first < cue.end)) continue;
    if (found.some((each) => cue.first < each.token)) continue;
    const greeting = cuesOf(scene, OPENINGS_OF_TALK, cue.end, Math.min(end, cue.end + GREETING_WITHIN))[0];
    const words = scene.tokens.slice(cue.first, cue.end).map((token) => token.norm).join(" ");
    const early = cue.first - first <= (end - first) * EARLY_SHARE;
    if (greeting === undefined && !(early && WHOLE.test(words))) continue;
    const next = clauseEnd(scene, cue.end - 1);
    const token = greeting?.first ?? (next < end && next - cue.end <= GREETING_WITHIN ? next : cue.end);
    found.push({ token, saidAt: cue.first, reason: `after the candidate started anew: ${quote(scene, cue)}`, certain: greeting !== undefined });
  }
  return found.filter((each) => each.token < end);
}

function closeToGreeting(scene: Scene, first: number, end: number): boolean {
  return cuesOf(scene, ["greeting", "introduction"], first, Math.min(end, first + GREETING_WITHIN)).length > 0;
}
