import type { Matches } from "../matching/types.ts";
import type { Rubric } from "../rubric/schema.ts";
import type { Role, Station } from "../station/types.ts";
import { asidesOf } from "./asides.ts";
import { changesOf } from "./changes.ts";
import { auditOf, overrule, type Corrections } from "./corrections.ts";
import { contextOf } from "./context.ts";
import { withHeard } from "./heard-unsafe.ts";
import { judgeItems, type JudgedItem } from "./items.ts";
import { orderOf } from "./order.ts";
import { patientQuestions } from "./questions.ts";
import { repeatsOf } from "./repeats.ts";
import { criticalOf, decide } from "./result.ts";
import { sectionResults, totalOf } from "./sections.ts";
import { differences, incorrectStatements, otherClaims, unsafeStatements } from "./statements.ts";
import { teachBack } from "./teach-back.ts";
import { timeFigures } from "./time/figures.ts";
import { timePlan } from "./time/plan.ts";
import { isSpokenWord } from "./time/spoken.ts";
import type { MarkSheet, TimeResult } from "./types.ts";

export interface ScoreOptions {
  version: string;
  /** Seconds, in place of the rubric's own. */
  limit?: number;
  target?: number;
  /** Who was marked, as the person wants it on the sheet. */
  candidate?: string | null;
  /** Marks overruled by a person; of this rubric and transcript (`correctionFaults`). */
  corrections?: Corrections;
}

/** Said on every sheet. */
export const CAUTION =
  "A practice aid: a machine read a transcript. Current labelling, local rules and licensed supervision decide what is right for a patient; a person decides any mark that matters.";

/** Turns what was found into the mark sheet. Pure. */
export function scoreStation(station: Station, rubric: Rubric, matches: Matches, options: ScoreOptions): MarkSheet {
  const limit = options.limit ?? rubric.time.limit;
  const target = Math.min(options.target ?? rubric.time.target, limit);
  const context = contextOf(station, rubric, matches, limit, target);
  const own = { items: judgeItems(context), unsafe: unsafeStatements(context) };
  const overrides = options.corrections?.corrections ?? [];
  const items = overrule(own.items, overrides);
  const unsafe = withHeard(own.unsafe, overrides, station, rubric);
  const rightByHand = (id: string) => items.some(({ item, result }) => item.id === id && result.overruled !== undefined && result.content !== "incorrect");
  const incorrect = incorrectStatements(context, own.items).filter((statement) => statement.corrected || !rightByHand(statement.item));
  const taughtBack = teachBack(context, items);
  const order = orderOf(context, items, taughtBack);
  const repeats = repeatsOf(context, items, taughtBack);
  const asides = asidesOf(context);
  const questions = patientQuestions(context);
  const time = withLateItems(timeFigures(station, { limit, target }), items);
  const plan = timePlan({ time, repeats, asides });
  const total = totalOf(items);
  const critical = criticalOf(items);
  return {
    form: "saidwell/mark-sheet@1",
    version: options.version,
    candidate: options.candidate ?? null,
    transcript: transcriptOf(station),
    rubric: { id: rubric.id, title: rubric.title, version: rubric.version, hash: rubric.hash, file: rubric.file },
    scenario: { task: rubric.scenario.task, counselled: rubric.scenario.counselled },
    station: stationOf(station),
    items: items.map(({ result }) => result),
    corrections: options.corrections === undefined ? null : { file: options.corrections.file, applied: auditOf(overrides, own, items, rubric) },
    sections: sectionResults(context, items),
    total,
    critical,
    unsafe: { listed: rubric.unsafe.length, statements: rubric.unsafe.map(({ id, label, severity }) => ({ id, label, severity })), found: unsafe },
    incorrect,
    differs: differences(context, items),
    claims: otherClaims(context, asides, repeats),
    questions,
    teachBack: taughtBack,
    order,
    repeats,
    asides,
    time,
    plan,
    changes: changesOf({ items, unsafe, incorrect, order, repeats, asides, questions, time, plan, total, teachBack: taughtBack }),
    result: decide(rubric, items, total, critical, unsafe, time, time.candidateWords),
    findings: [...station.transcript.findings, ...station.findings],
    caution: CAUTION,
  };
}

function withLateItems(time: TimeResult, items: readonly JudgedItem[]): TimeResult {
  if (time.afterLimit === null) return time;
  const late = items.filter(({ elements }) => elements.some((element) => element.late.length > 0 && element.content !== "complete")).map(({ item }) => item.id);
  return { ...time, afterLimit: { ...time.afterLimit, items: late } };
}

function transcriptOf({ transcript }: Station): MarkSheet["transcript"] {
  return { file: transcript.file, format: transcript.format, words: transcript.words.filter(({ kind }) => kind === "word").length, timing: transcript.timing, duration: transcript.duration };
}

function stationOf(station: Station): MarkSheet["station"] {
  const { words } = station.transcript;
  const edge = (boundary: Station["start"]) => ({ time: boundary.time, line: words[Math.min(boundary.word, words.length - 1)]?.line ?? 1, reason: boundary.reason, confidence: boundary.confidence });
  const roles = new Map<Role, { words: number; sure: number }>();
  for (const sentence of station.sentences) {
    if (!sentence.inStation) continue;
    // Words as the pace counts them, so that the sheet has one number for one thing.
    const leftOut = sentence.role === "candidate" || sentence.role === "patient" ? station.excluded : [];
    const size = words.slice(sentence.first, sentence.end).filter((word) => isSpokenWord(word) && !leftOut.some(({ first, end }) => word.index >= first && word.index < end)).length;
    if (size === 0) continue;
    const known = roles.get(sentence.role) ?? { words: 0, sure: 0 };
    roles.set(sentence.role, { words: known.words + size, sure: known.sure + size * sentence.confidence });
  }
  return {
    start: edge(station.start),
    end: edge(station.end),
    restarts: station.restarts.length,
    roles: [...roles].map(([role, { words: count, sure }]) => ({ role, words: count, confidence: Math.round((100 * sure) / count) / 100 })).sort((a, b) => b.words - a.words),
    roleSource: station.roleSource,
    labelRoles: station.labelRoles,
  };
}
