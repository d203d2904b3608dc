import type { Context } from "./context.ts";
import { withDenial } from "./elements.ts";
import type { JudgedItem } from "./items.ts";
import { meets } from "../station/span.ts";
import type { Match } from "../matching/types.ts";
import { hundredths } from "./rounding.ts";
import type { AsideResult, ClaimResult, IncorrectResult, RepeatResult, StatementResult } from "./types.ts";

/** Statements of the rubric's unsafe list that were found: standing, taken back, or to be listened to. */
export function unsafeStatements(context: Context): StatementResult[] {
  return context.matches.unsafe.flatMap((match) => {
    const statement = context.rubric.unsafe.find(({ id }) => id === match.statement);
    if (statement === undefined) return [];
    return [
      {
        id: statement.id,
        label: statement.label,
        severity: statement.severity,
        evidence: context.evidence(match.span),
        confidence: hundredths(match.confidence),
        corrected: match.correctedBy !== undefined,
        listen: match.verdict === "unclear",
      },
    ];
  });
}

/** What was said wrongly, standing first; slips put right behind. */
export function incorrectStatements(context: Context, items: readonly JudgedItem[]): IncorrectResult[] {
  const list = items.flatMap(({ item, elements }) =>
    elements.flatMap((element) => [
      ...(element.standing === null ? [] : [statementOf(context, item.id, element, element.standing, false)]),
      ...element.slips.map((slip) => statementOf(context, item.id, element, slip, true)),
    ]),
  );
  return list.sort((a, b) => Number(a.corrected) - Number(b.corrected) || a.evidence.first - b.evidence.first);
}

/** What is right in another country. */
export function differences(context: Context, items: readonly JudgedItem[]): IncorrectResult[] {
  return items.flatMap(({ item, elements }) => elements.flatMap((element) => element.elsewhere.map((match) => statementOf(context, item.id, element, match, false))));
}

function statementOf(context: Context, item: string, element: { id: string; label: string; reason?: string }, match: Match, corrected: boolean): IncorrectResult {
  return { item, element: element.id, label: element.label, evidence: context.evidence(withDenial(context, match)), reason: (corrected ? match.reason : element.reason) ?? match.reason ?? "said wrongly", corrected, confidence: hundredths(match.confidence) };
}

/** Clinical numbers that the rubric does not list: not those of small talk, and each once. */
export function otherClaims(context: Context, asides: readonly AsideResult[], repeats: readonly RepeatResult[]): ClaimResult[] {
  const aside = [...asides.map(({ evidence }) => evidence), ...repeats.map(({ again }) => again)];
  return context.matches.claims.filter((span) => !aside.some((other) => meets(span, other))).map((span) => ({ evidence: context.evidence(span) }));
}
