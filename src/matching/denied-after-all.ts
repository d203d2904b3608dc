import type { Token } from "../language/token.ts";
import { inOneSentence, type Stream } from "./stream.ts";
import { noTakingUp, SUBJECT } from "./taking-up.ts";

/*
 * "So I don't need the blue one now?" "You do, always carry it.": who takes up what the patient denied, and does not deny
 * it, says no to the denial, though a "yes" or a "you do" opens the reply.
 */

const AUXILIARIES: Readonly<Record<string, string>> = {
  do: "do", does: "do", did: "do", is: "be", are: "be", am: "be", was: "be", were: "be", can: "can", could: "can", will: "will", would: "will", should: "should", must: "must", need: "need", have: "have", has: "have",
};
/** May stand between the one who does it and the doing: "you still need it". */
const STRESSES = /^(still|really|always|definitely|certainly|absolutely|most|very|much|do|does|will|too|actually)$/;
/** Open a reply before what it says: "oh yes, you still need it", "no, you do". */
const LEADS = /^(yes|yeah|yep|aye|oh|ah|well|no|nope|um|er|erm|uh|so|but|actually|indeed|sure|definitely|certainly|absolutely|and)$/;
/** "I don't need it", "it is not the": what is denied stands so near behind its denial. */
const VERB_WITHIN = 3;
/** So far before what is asked its denial may stand, in the same sentence. */
const DENIED_BEFORE = 5;

/**
 * Whether a reply affirms what the patient has just denied.
 * @param from tokens of the patient's stream that are asked or proposed, `to` exclusive.
 * @param first tokens of the candidate's reply, `end` exclusive.
 */
export function affirmsTheDenied(patient: Stream, from: number, to: number, reply: readonly Token[], first: number, end: number): boolean {
  const denied = deniedIn(patient, from, to);
  if (denied.length === 0) return false;
  let place = first;
  while (place < end && LEADS.test(reply[place]!.text)) place += 1;
  if (place >= end || !SUBJECT.test(reply[place]!.text)) return false;
  place += 1;
  for (let stress = place; stress < end; stress += 1) {
    const { text, stem } = reply[stress]!;
    if (reply[stress + 1]?.text === "not" || reply[stress + 1]?.text === "never") return false;
    // "You do" takes the verb up by itself; "you do it" tells how.
    const isAlone = stress + 1 >= end || reply[stress]!.after !== "";
    if (denied.some(({ auxiliary, verb }) => stem === verb || (isAlone && AUXILIARIES[text] === auxiliary))) return true;
    if (!STRESSES.test(text)) return false;
  }
  return false;
}

/**
 * Whether a reply takes up what the patient has just denied and denies it too ("I don't need to ring, do I?" "You don't,
 * no."). @returns the token behind it; null where it does not.
 */
export function deniesTheDenied(patient: Stream, from: number, to: number, reply: readonly Token[], first: number, end: number): number | null {
  let place = first;
  while (place < end && LEADS.test(reply[place]!.text)) place += 1;
  const behind = noTakingUp(reply, place, end);
  if (behind === null) return null;
  const auxiliary = AUXILIARIES[reply[place + 1]!.text];
  return deniedIn(patient, from, to).some((denied) => denied.auxiliary === auxiliary) ? behind : null;
}

/** What is denied in a stretch of the patient's, with the auxiliary and the verb that a reply may take up. */
function deniedIn(patient: Stream, from: number, to: number): { auxiliary: string; verb: string | undefined }[] {
  let start = from;
  while (start > 0 && from - start < DENIED_BEFORE && inOneSentence(patient, start - 1, from) && patient.turnOf[start - 1] === patient.turnOf[from]) start -= 1;
  const { tokens } = patient;
  const denied: { auxiliary: string; verb: string | undefined }[] = [];
  for (let place = start; place + 1 < to; place += 1) {
    const auxiliary = AUXILIARIES[tokens[place]!.text];
    // "Can't she?" and "don't I?" ask, and deny nothing.
    if (auxiliary !== undefined && tokens[place + 1]!.text === "not" && !SUBJECT.test(tokens[place + 2]?.text ?? "")) denied.push({ auxiliary, verb: verbBehind(tokens, place + 2, to) });
  }
  return denied;
}

function verbBehind(tokens: readonly Token[], from: number, to: number): string | undefined {
  for (let place = from; place < Math.min(to, from + VERB_WITHIN); place += 1) if (!STRESSES.test(tokens[place]!.text)) return tokens[place]!.stem;
  return undefined;
}
