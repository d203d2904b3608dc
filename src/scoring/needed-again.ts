import { speechPhrases } from "../language/speech-phrases.ts";
import { tokenise } from "../language/token.ts";
import type { SaidClause } from "../matching/types.ts";
import { beginsIn, meets } from "../station/span.ts";
import { turnAt, turnsOf } from "../station/turns.ts";
import type { Turn, WordSpan } from "../station/types.ts";
import { textsIn } from "../station/written-words.ts";
import type { Context } from "./context.ts";
import type { TeachBackResult } from "./types.ts";

const REPEAT_REQUESTS = speechPhrases("repeat_requests");
/** So much of a clause that the patient has just said is confirmed, not told again. Share by weight. */
const SAID_BACK = 0.6;
/** A question with fewer weighty words of its own ("why's that?") may be about anything: its answer opens the reply. */
const OWN_WORDS = 1;
/** What answers such a question, or confirms what was said, opens the reply: its first sentence, so many words at least. */
const OPENING = 12;
/** After a wrong word of anybody's, saying it again within so many words puts it right. */
const PUTS_RIGHT = 70;
/** Who says a sentence must be this sure before it is held against the candidate. */
const SURE_ROLE = 0.7;

/** Tells which of the candidate's clauses had to be said, said before or not. */
export function neededAgain(context: Context, teachBack: TeachBackResult): (clause: SaidClause) => boolean {
  const { station, matches } = context;
  const turns = turnsOf(station);
  const back = teachBackSpan(context, turns, teachBack);
  const unsure = station.sentences.filter(({ role, confidence }) => role === "candidate" && confidence < SURE_ROLE);
  const wrong = [...matches.patient, ...matches.elements].filter(({ verdict }) => verdict === "wrong");
  const heard = matches.heard;
  return (clause) => {
    if (back !== null && beginsIn(clause, back)) return true;
    if (unsure.some((sentence) => beginsIn(clause, sentence))) return true;
    if (wrong.some(({ span, item, element }) => span.end <= clause.first && clause.first - span.end < PUTS_RIGHT && matches.elements.some((match) => match.verdict === "right" && match.item === item && match.element === element && meets(match.span, clause)))) return true;
    const place = turnAt(turns, clause);
    const before = othersBefore(turns, place);
    if (before.length === 0) return false;
    if (before.some(({ role }) => role === "examiner")) return true;
    const asked = matches.asked.filter((span) => before.some((turn) => beginsIn(span, turn)));
    const said = heard.filter((other) => before.some((turn) => beginsIn(other, turn)));
    if (asksForRepeat(context, before)) return true;
    const turn = turns[place]!;
    const opens = clause.first < turn.first + OPENING || matches.said.find(({ first }) => first >= turn.first)?.sentence === clause.sentence;
    if (opens && shareOf(clause, new Set(said.flatMap(({ words }) => words.map(({ sense }) => sense)))) >= SAID_BACK) return true;
    if (asked.length === 0) return false;
    const own = new Set(said.filter((other) => asked.some((span) => meets(other, span))).flatMap(({ words }) => words.filter(({ weight }) => weight === 1).map(({ sense }) => sense)));
    return (own.size <= OWN_WORDS && opens) || clause.words.some(({ sense, weight }) => weight === 1 && own.has(sense));
  };
}

/** What the others said since the candidate's last turn. */
function othersBefore(turns: readonly Turn[], place: number): Turn[] {
  const before: Turn[] = [];
  for (let k = place - 1; k >= 0 && turns[k]!.role !== "candidate"; k -= 1) before.push(turns[k]!);
  return before;
}

function asksForRepeat({ station }: Context, turns: readonly Turn[]): boolean {
  return turns.some((turn) => REPEAT_REQUESTS.find(tokenise(textsIn(station.transcript, turn))).length > 0);
}

function shareOf({ words }: SaidClause, senses: ReadonlySet<string>): number {
  const all = words.reduce((sum, { weight }) => sum + weight, 0);
  return all === 0 ? 0 : words.filter(({ sense }) => senses.has(sense)).reduce((sum, { weight }) => sum + weight, 0) / all;
}

/** From the request for a teach-back to the candidate's reply to what the patient said. */
function teachBackSpan({ station }: Context, turns: readonly Turn[], { asked, answered }: TeachBackResult): WordSpan | null {
  if (asked === null) return null;
  const behind = turns.find((turn) => turn.role === "candidate" && turn.first >= (answered?.end ?? asked.end));
  return { first: asked.first, end: behind?.end ?? station.end.word };
}
