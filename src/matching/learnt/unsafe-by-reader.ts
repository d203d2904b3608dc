import { meets } from "../../station/span.ts";
import type { WordSpan } from "../../station/types.ts";
import { statementKey } from "../../rubric/learnt-keys.ts";
import type { CompiledRubric, CompiledStatement } from "../compile.ts";
import { likelihoodOf } from "../curve.ts";
import { toldOfOthers } from "../others.ts";
import type { Passage } from "../passages.ts";
import type { Postings } from "../postings.ts";
import { wordsOf, type Stream } from "../stream.ts";
import type { UnsafeMatch } from "../types.ts";
import curves from "./curves.json" with { type: "json" };
import { learntReading, readingSigns, type Company, type LearntReading, type ReadSaying } from "./reading.ts";
import { isAllOf } from "./second-reading.ts";
import { isWarning } from "./warned-of.ts";

/*
 * Unsafe statements in words that the rubric does not have: "when it goes off just thaw it on the side". To hold one
 * against somebody, the second reader must be surer than for any other mark.
 */

/** In the order of the weights of `unsafe` in curves.json. */
export const UNSAFE_SIGNS = ["about", "how far an element that it contradicts is turned", "about that element", "it contradicts none", "lesser of about and turned"] as const;

/** From here on it is taken for stated. Where hardly anything else is said nothing tells what it is said of: then it is held against nobody. */
export const UNSAFE_ALONE = 0.8;

/** A passage as likely as this says its element. */
const SAID = 0.5;

/**
 * @param told statements found in their own words.
 * @param passages all that were tried: who says rightly what a statement contradicts does not state it there.
 */
export function unsafeByReader(rubric: CompiledRubric, told: readonly UnsafeMatch[], passages: readonly Passage[], postings: Postings, stream: Stream): UnsafeMatch[] {
  const reading = learntReading(rubric, stream);
  if (reading === null) return [];
  return rubric.unsafe.flatMap((statement): UnsafeMatch[] => {
    if (told.some((other) => other.statement === statement.statement)) return [];
    const place = reading.placeOf(statementKey(statement.statement));
    const opposites = oppositesOf(statement, reading);
    // Of a statement that is no element's opposite little more than its topic is known: what is safe to say beside it (d8) was marked, and not measured yet.
    if (place === undefined || opposites.length === 0) return [];
    const contradicted = [...statement.contradicts, ...statement.wrongOf];
    const right = passages.filter(({ element, verdict, closed, likelihood }) => verdict === "right" && closed.length === 0 && (likelihood ?? 0) >= SAID && contradicted.includes(`${element.item}/${element.element}`));
    let best: { saying: ReadSaying; likelihood: number } | null = null;
    for (const saying of reading.sayings) {
      if (saying.company === "lonely" || opposites.every((at) => saying.readings[at]!.turned < 0) || right.some((passage) => meets(passage, saying))) continue;
      const likelihood = likelihoodOf(curves.company.unsafe, unsafeSigns(saying, place, opposites));
      if (likelihood < UNSAFE_ALONE || (best !== null && likelihood <= best.likelihood) || saying.asks || toldOfOthers(saying, stream)) continue;
      best = { saying, likelihood };
    }
    if (best === null || isWarning(statement.say, best.saying, postings, stream)) return [];
    const { saying, likelihood } = best;
    return [{ statement: statement.statement, span: wordsOf(stream, saying.first, saying.end), score: likelihood, confidence: likelihood, verdict: "unsafe", response: statement.say[0]!.text }];
  });
}

/** In the order of the weights of `stated` in curves.json. */
export const STATED_SIGNS = ["its fit", ...UNSAFE_SIGNS] as const;

/** From here on a statement that was found in the rubric's words stands against the speaker. In a station it must be surer, so that of annotated talk no more than one in ten has one falsely. */
export const STANDS_STATED: Readonly<Record<Company, number>> = { company: 0.6, lonely: 0.5 };

/** Whether the second reader lets a statement be held against the speaker that responses, its own or an element's, were found to state: some fit a few loose words. */
export function statedForReader(match: UnsafeMatch, rubric: CompiledRubric, stream: Stream): boolean {
  const stated = statedSigns(match, rubric, stream);
  return stated === null || likelihoodOf(curves[stated.company].stated, stated.signs) >= STANDS_STATED[stated.company];
}

/** What a curve of unsafe statements is asked with. */
interface Weighed {
  company: Company;
  signs: number[];
}

/** The signs of a statement that responses were found to state; null where nothing is known of it, or where hardly more is said than the rubric has. */
export function statedSigns({ statement: id, span, score }: UnsafeMatch, rubric: CompiledRubric, stream: Stream): Weighed | null {
  const reading = learntReading(rubric, stream);
  const place = reading?.placeOf(statementKey(id));
  const statement = rubric.unsafe.find((one) => one.statement === id);
  if (reading === null || place === undefined || statement === undefined) return null;
  const stretch = stretchOf(span, stream);
  const [saying] = reading.around(stretch);
  if (saying === undefined || isAllOf(score, stretch.end - stretch.first, saying)) return null;
  return { company: saying.company, signs: [Math.min(1, score), ...unsafeSigns(saying, place, oppositesOf(statement, reading))] };
}

/** The tokens of a span of words. */
function stretchOf({ first, end }: WordSpan, { tokens }: Stream): { first: number; end: number } {
  const from = tokens.findIndex(({ word }) => word >= first);
  const behind = tokens.findIndex(({ word }) => word >= end);
  return { first: from, end: behind < 0 ? tokens.length : behind };
}

/** Places of the elements that a statement states wrongly. */
export function oppositesOf({ contradicts, wrongOf }: CompiledStatement, { placeOf }: LearntReading): number[] {
  return [...contradicts, ...wrongOf].flatMap((key) => placeOf(key) ?? []);
}

export function unsafeSigns(saying: ReadSaying, place: number, opposites: readonly number[]): number[] {
  const { about } = readingSigns(saying, place);
  if (opposites.length === 0) return [about, 0, 0, 1, Math.min(about, 0)];
  const contradicted = opposites.map((at) => readingSigns(saying, at));
  const turned = Math.max(...contradicted.map((signs) => signs.turned));
  return [about, turned, Math.max(...contradicted.map((signs) => signs.about)), 0, Math.min(about, turned)];
}
