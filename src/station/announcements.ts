import type { Transcript } from "../transcript/types.ts";
import type { Clause, TokenSpan } from "./clauses.ts";
import { OFFICIAL, type CueKind, type CueMatch } from "./cues.ts";
import type { Token } from "./token.ts";

/** What someone in charge of the clock says: tokens `first` up to `end`. */
export interface Announcement extends TokenSpan {
  /** What it tells, in order. */
  kinds: CueKind[];
}

/** Cues closer together than this are one announcement: "station three ... reading time ... you may begin". */
const JOIN_WORDS = 8;
/** A punctuated sentence with a cue is the announcer's as a whole unless it is longer than this. */
const LONGEST_SENTENCE = 25;
/** Without punctuation an announcement reaches back to the start of its stretch, if that is so near. */
const REACH_BACK = 8;
/** And forth to its end, if only so many words remain. */
const REACH_FORTH = 3;

/** Where an announcement may begin at the earliest: a caption that opens with a capital inside a sentence is another voice that cuts in. */
function cutIn(transcript: Transcript, tokens: readonly Token[], clause: Clause, cue: TokenSpan): number {
  for (let at = cue.first; at > clause.first; at--) {
    const token = tokens[at]!;
    if (token.opensSegment && /^\p{Lu}/u.test(transcript.words[token.word]!.text) && !/^i(?:$|')/.test(token.norm)) return at;
  }
  return clause.first;
}

export function announcementsOf(transcript: Transcript, tokens: readonly Token[], cues: readonly CueMatch[], clauses: readonly Clause[]): Announcement[] {
  const found: Announcement[] = [];
  for (const cue of cues.filter((each) => OFFICIAL.includes(each.kind))) {
    const clause = clauses.find((each) => each.first <= cue.first && cue.first < each.end);
    if (clause === undefined) continue;
    const last = clauses.find((each) => each.first < cue.end && cue.end <= each.end) ?? clause;
    const whole = clause === last && clause.closed && clause.end - clause.first <= LONGEST_SENTENCE;
    const opening = cutIn(transcript, tokens, clause, cue);
    const span: Announcement = {
      first: whole || cue.first - opening <= REACH_BACK ? opening : cue.first,
      end: whole || last.end - cue.end <= REACH_FORTH ? last.end : cue.end,
      kinds: [cue.kind],
    };
    const before = found[found.length - 1];
    if (before !== undefined && span.first - before.end <= JOIN_WORDS) {
      before.end = Math.max(before.end, span.end);
      before.kinds.push(cue.kind);
    } else found.push(span);
  }
  return found;
}
