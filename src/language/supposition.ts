import { SUPPOSES, tellingFrom, type Clause } from "./clause.ts";
import { supposesByOrder } from "./inverted-condition.ts";
import polarityData from "./lexicon/polarity.yaml";
import type { LexiconFile } from "./lexicon/schema.ts";
import { opensInstructionBehind, opensTelling } from "./main-clause.ts";
import { phraseList } from "./phrase-set.ts";
import type { Token } from "./token.ts";

/*
 * What is supposed: what a clause speaks of as what may or does happen ("if you don't shake it"), not as what to do.
 */

const HYPOTHETICAL = phraseList((polarityData as LexiconFile<"polarity">).hypothetical);

/** By token, whether its own clause supposes it. */
export function supposedByClause(tokens: readonly Token[], clauses: readonly Clause[]): boolean[] {
  const supposed = tokens.map(() => false);
  for (const clause of clauses) {
    const start = tellingFrom(tokens, clause);
    if ((HYPOTHETICAL.at(tokens, start) === null && !supposesByOrder(tokens, start)) || givesARule(tokens, start, clause.end)) continue;
    supposed.fill(true, clause.first, SUPPOSES.has(tokens[start]!.text) ? mainFrom(tokens, start, clause.end) : clause.end);
  }
  return supposed;
}

/** The same with what goes on behind "and": "if you're on holiday and you stop it, your chest gets worse". */
export function carrySuppositions(tokens: readonly Token[], clauses: readonly Clause[], byClause: readonly boolean[]): boolean[] {
  const supposed = [...byClause];
  clauses.forEach((clause, place) => supposed.fill(true, clause.first, goesOnUpTo(tokens, clauses[place - 1], clause, clauses[place + 1], supposed)));
  return supposed;
}

/** Subject, verb and what it is done to: what is supposed takes so many words at least, and one less before an instruction ("if that happens take"). */
const SHORTEST_SUPPOSITION = 4;

/** Behind a comma these go on with what is supposed. */
const SUPPOSES_ON = /^(and|or|but|not|if|when|because|like|say|even|in|on|at|for|with|by|from|to)$/;

/** Where what is told begins behind what is supposed: "when she's had the jab walk her to the car", "if it's been a week, prime it". */
function mainFrom(tokens: readonly Token[], start: number, end: number): number {
  // Where the clause itself ends at a comma, those before it part a list.
  const parted = tokens[end - 1]!.after !== ",";
  let comma = end;
  for (let place = start + SHORTEST_SUPPOSITION - 1; place < end; place += 1) {
    if (opensInstructionBehind(tokens, place) || judges(tokens, place) || ((place >= start + SHORTEST_SUPPOSITION || happensBefore(tokens, place)) && opensTelling(tokens, place))) return place;
    if (parted && tokens[place - 1]!.after === "," && !SUPPOSES_ON.test(tokens[place]!.text)) comma = place;
  }
  return comma;
}

/** "If it clicks | you've gone too far": a thing and what it does are a supposition. */
function happensBefore(tokens: readonly Token[], place: number): boolean {
  return /^(it|that|this|one)$/.test(tokens[place - 2]?.text ?? "") && /[^s]s$/.test(tokens[place - 1]!.text) && !/^(is|was|has|does|its|needs|wants|gets|makes|lets|helps)$/.test(tokens[place - 1]!.text);
}

/** "If it's below four | that's a hypo", but not "if you get a cough that is dry". */
function judges(tokens: readonly Token[], place: number): boolean {
  return tokens[place]!.text === "that" && tokens[place + 1]?.text === "is" && /^(a|an|the|when|why|your|not|too|fine|okay|normal)$/.test(tokens[place + 2]?.text ?? "") && tokens[place + 3]?.text !== "bit";
}

/** Up to where a clause goes on with what the one before it supposes, until what comes of it is told; its own beginning where it does not. */
function goesOnUpTo(tokens: readonly Token[], before: Clause | undefined, clause: Clause, next: Clause | undefined, supposed: readonly boolean[]): number {
  if (before === undefined || tokens[clause.first]!.text !== "and" || tokens[clause.first - 1]!.after !== "" || !supposed[clause.first - 1] || supposed[clause.first]) return clause.first;
  if (/^(then|so|if|when)$/.test(tokens[clause.first + 1]?.text ?? "")) return clause.first;
  // "If you're ill, halve the dose and carry on": behind a comma it was told already.
  for (let k = before.first; k < before.end; k += 1) if (tokens[k]!.after !== "" || !supposed[k]) return clause.first;
  const end = mainFrom(tokens, clause.first + 1, clause.end);
  // Without anything told behind it, it is what is told: "if it's blocked up and you just use a pin".
  return end === clause.end && (tokens[clause.end - 1]!.after !== "," || next === undefined) ? clause.first : end;
}

/** "Because it must not go in a fire" is a reason that is a rule; "because you don't shake it" tells what happens. */
function givesARule(tokens: readonly Token[], first: number, end: number): boolean {
  if (!/^(because|since)$/.test(tokens[first]!.text)) return false;
  for (let place = first; place + 1 < end; place += 1) if (/^(can|must|should)$/.test(tokens[place]!.text) && tokens[place + 1]!.text === "not") return true;
  return false;
}
