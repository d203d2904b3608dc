import { tellingFrom, type Clause } from "./clause.ts";
import { deniedBefore, denialsBehindIn, isTerminal, judgedBy } from "./denial-behind.ts";
import { cueAt, silentIn } from "./denial-cue.ts";
import { scopeBehind } from "./denial-scope.ts";
import type { Token } from "./token.ts";

/** A clause that denies what is before it has its own verb: "you can leave that out". */
const WHOLE = 4;

/** By token, whether its clause denies it: by a denial before it, or by what is said about it behind. @param supposed by token, whether its clause supposes it. */
export function deniedByClause(tokens: readonly Token[], clauses: readonly Clause[], supposed: readonly boolean[]): boolean[] {
  const denied = tokens.map(() => false);
  clauses.forEach((clause, place) => {
    const deniesTheOneBefore = denyIn(tokens, clause, supposed, denied);
    const before = clauses[place - 1];
    // "Shaking it, you can leave that out": the clause says no more than that what came before its comma is not needed.
    if (deniesTheOneBefore && before !== undefined && tokens[clause.first - 1]!.after === ",") denied.fill(true, before.first, before.end);
  });
  return denied;
}

/** Marks what one clause denies. @returns whether it begins with what denies the thing before it. */
function denyIn(tokens: readonly Token[], clause: Clause, supposed: readonly boolean[], denied: boolean[]): boolean {
  const silent = silentIn(tokens, clause);
  const behind = denialsBehindIn(tokens, clause, silent);
  for (const { first, end } of behind) for (let k = first; k < end; k += 1) silent.add(k);
  let deniedOnce = false;
  for (let place = clause.first; place < clause.end; place += 1) {
    const cue = silent.has(place) ? null : cueAt(tokens, clause, place, denied[place]!);
    if (cue === null) continue;
    if (cue.does !== "nothing") {
      // "Never inject without changing the needle": two denials cancel.
      if (deniedOnce && tokens[place]!.text === "without") continue;
      deniedOnce = true;
      if (isTerminal(tokens, place, cue.end, clause)) denied.fill(true, deniedBefore(tokens, clause, place, supposed), place);
      else {
        const end = scopeBehind(tokens, clause, place, cue.end, supposed);
        // "No pain, no cough" denies twice.
        for (let k = cue.end; k < end; k += 1) denied[k] = cue.does === "turns" ? !denied[k] : true;
      }
    }
    place = cue.end - 1;
  }
  for (const phrase of behind) {
    const judged = judgedBy(tokens, clause, phrase, denied);
    if (judged !== null) denied.fill(judged.isDenied, judged.first, judged.end);
  }
  const start = tellingFrom(tokens, clause);
  return behind.some(({ first, end }) => first === start && (end - first >= WHOLE || end === clause.end));
}
