import { isDecided } from "../../scoring/content.ts";
import { stands } from "../../scoring/standing.ts";
import { SMALL_COHORT } from "../items/station.ts";
import type { RecordItem, SheetRecord } from "../record.ts";
import { compareNatural, compareResults, type ResultKey } from "../result.ts";
import { binomialError } from "../statistics/binomial-error.ts";
import { normalQuantile } from "../statistics/distributions.ts";
import { LEVEL, type Estimate } from "../statistics/estimate.ts";

/** How the error of one total was had. */
export type ErrorSource = "cohort" | "given" | "items";

export const ERROR_MEANING: Record<ErrorSource, string> = {
  cohort: "standard error of measurement of the cohort",
  given: "standard error of measurement as given with --sem",
  items: "binomial error of the items (Lord 1955)",
};

export interface Attempt {
  key: ResultKey;
  file: string;
  rubric: SheetRecord["rubric"];
  /** A scenario met before in this folder, or a new one. */
  scenario: "same" | "new";
  /** The rubric of this scenario is another than the time before. */
  rubricChanged: boolean;
  percent: number | null;
  provisional: boolean;
  error: Estimate;
  errorBy: ErrorSource;
  /** Why the cohort that was given does not tell the error; null when it does, or none was given. */
  cohortUnused: string | null;
  criticalMissed: string[];
  /** Those of them that listening may well find said. */
  criticalDoubted: string[];
  unsafe: string[];
  used: number | null;
  limit: number;
  overLimit: number | null;
  wordsPerMinute: number | null;
}

export type Verdict = "higher" | "lower" | "not told apart" | "not comparable";

export interface Comparison {
  station: string;
  from: ResultKey;
  to: ResultKey;
  /** Points of the per cent total, later minus earlier; null when not comparable. */
  difference: number | null;
  /** The smallest difference that is more than measurement error, in points. */
  smallest: number | null;
  verdict: Verdict;
  why: string;
}

export interface KeptMissing {
  item: string;
  label: string;
  critical: boolean;
  missed: number;
  of: number;
}

export interface ProgressReport {
  form: "saidwell/progress@1";
  version: string;
  candidate: string;
  attempts: Attempt[];
  /** Each attempt with the one before at the same scenario, and the last with the first where there are more than two. */
  comparisons: Comparison[];
  keepsMissing: KeptMissing[];
  /** Missed before, complete the last time. */
  nowSaid: { item: string; label: string; critical: boolean }[];
  practise: { what: string; why: string }[];
}

export interface ProgressOptions {
  /** By rubric id, in per cent points; `n` is the candidates it rests on. */
  cohortErrors?: ReadonlyMap<string, Estimate>;
  /** Per cent points; goes before a cohort's. */
  error?: number;
}

/** Missed at least so often to count as kept missing. */
const KEPT = 2;
const MOST_PRACTISE = 3;

/** One candidate's attempts in order. @param records of one candidate, not empty */
export function progressReport(records: readonly SheetRecord[], version: string, options: ProgressOptions = {}): ProgressReport {
  const ordered = [...records].sort((a, b) => compareNatural(a.key.attempt, b.key.attempt) || compareResults(a, b));
  const latest = ordered.at(-1)!;
  const keepsMissing = kept(ordered);
  return {
    form: "saidwell/progress@1",
    version,
    candidate: latest.key.candidate,
    attempts: ordered.map((record, place) => attemptOf(record, ordered.slice(0, place), options)),
    comparisons: comparisons(ordered, options),
    keepsMissing,
    nowSaid: histories(ordered).filter(({ marks }) => marks.length > 1 && complete(marks.at(-1)!) && marks.slice(0, -1).some((mark) => !complete(mark))).map(({ item, label, critical }) => ({ item, label, critical })),
    practise: practise(latest, keepsMissing),
  };
}

function attemptOf(record: SheetRecord, before: readonly SheetRecord[], options: ProgressOptions): Attempt {
  const same = before.filter(({ rubric }) => rubric.id === record.rubric.id);
  const labels = new Map(record.items.map(({ id, label }) => [id, label]));
  const { error, source, unused } = errorOf(record, options);
  return {
    key: record.key,
    file: record.file,
    rubric: record.rubric,
    scenario: same.length > 0 ? "same" : "new",
    rubricChanged: same.length > 0 && same.at(-1)!.rubric.hash !== record.rubric.hash,
    percent: record.percent,
    provisional: record.provisional,
    error,
    errorBy: source,
    cohortUnused: unused,
    criticalMissed: record.criticalMissed.map((id) => labels.get(id) ?? id),
    criticalDoubted: record.criticalDoubted.map((id) => labels.get(id) ?? id),
    unsafe: record.unsafe.filter(stands).map(({ label }) => label),
    used: record.used,
    limit: record.limit,
    overLimit: record.overLimit,
    wordsPerMinute: record.wordsPerMinute,
  };
}

/**
 * A cohort's error needs candidates enough: one candidate's attempts have no reliability between candidates, and a few
 * candidates give a reliability of any size. Below that the items' own error is taken, which claims less.
 */
function errorOf(record: SheetRecord, { cohortErrors, error }: ProgressOptions): { error: Estimate; source: ErrorSource; unused: string | null } {
  const items = record.items.filter(({ content }) => isDecided(content));
  if (error !== undefined) return { error: { value: error, n: items.length, standardError: null, interval: null }, source: "given", unused: null };
  const known = cohortErrors?.get(record.rubric.id);
  if (known !== undefined && known.value !== null && known.n >= SMALL_COHORT) return { error: known, source: "cohort", unused: null };
  return { error: binomialError(items), source: "items", unused: cohortErrors === undefined ? null : whyUnused(known, record.rubric.id) };
}

function whyUnused(known: Estimate | undefined, rubric: string): string {
  if (known === undefined) return `the cohort holds nobody marked by ${rubric}`;
  if (known.value === null) return `the cohort's error at ${rubric} is not measurable: ${known.why}`;
  return `the cohort has ${known.n} ${known.n === 1 ? "candidate" : "candidates"} at ${rubric}, and its error is not steady below ${SMALL_COHORT}`;
}

function comparisons(ordered: readonly SheetRecord[], options: ProgressOptions): Comparison[] {
  const rubrics = [...new Set(ordered.map(({ rubric }) => rubric.id))];
  return rubrics.flatMap((id) => {
    const own = ordered.filter(({ rubric }) => rubric.id === id);
    const steps = own.slice(1).map((to, place) => compare(own[place]!, to, options));
    return own.length > 2 ? [...steps, compare(own[0]!, own.at(-1)!, options)] : steps;
  });
}

/**
 * Two totals are told apart when they differ by more than 1.96 times the error of their difference: N. S. Jacobson and
 * P. Truax, Journal of Consulting and Clinical Psychology 59 (1991) 12-19, reliable change (from memory).
 */
function compare(from: SheetRecord, to: SheetRecord, options: ProgressOptions): Comparison {
  const base = { station: to.key.station, from: from.key, to: to.key };
  const none = (why: string): Comparison => ({ ...base, difference: null, smallest: null, verdict: "not comparable", why });
  if (from.rubric.hash !== to.rubric.hash) return none(`the rubric is not the same (version ${from.rubric.version}, then ${to.rubric.version}): mark both with one`);
  if (from.percent === null || to.percent === null) return none("one of the totals is not measurable");
  const [a, b] = [errorOf(from, options).error, errorOf(to, options).error];
  if (a.value === null || b.value === null) return none("the error of measurement is not measurable");
  const difference = to.percent - from.percent;
  const smallest = normalQuantile(1 - (1 - LEVEL) / 2) * Math.hypot(a.value, b.value);
  if (Math.abs(difference) <= smallest) return { ...base, difference, smallest, verdict: "not told apart", why: "the difference is within measurement error" };
  const provisional = from.provisional || to.provisional;
  return { ...base, difference, smallest, verdict: difference > 0 ? "higher" : "lower", why: `the difference is more than measurement error${provisional ? "; provisional: somebody must listen first" : ""}` };
}

interface History {
  item: string;
  label: string;
  critical: boolean;
  /** Of the attempts in which it counted, in order. */
  marks: RecordItem[];
}

/** Items by id over all rubrics: shared blocks give the same ids to the same points. */
function histories(ordered: readonly SheetRecord[]): History[] {
  const found = new Map<string, History>();
  for (const { items } of ordered) {
    for (const item of items) {
      if (!isDecided(item.content)) continue;
      const known = found.get(item.id) ?? { item: item.id, label: item.label, critical: item.critical, marks: [] };
      known.marks.push(item);
      found.set(item.id, { ...known, label: item.label, critical: known.critical || item.critical });
    }
  }
  return [...found.values()];
}

function complete({ content }: RecordItem): boolean {
  return content === "complete";
}

function kept(ordered: readonly SheetRecord[]): KeptMissing[] {
  return histories(ordered)
    .map(({ item, label, critical, marks }) => ({ item, label, critical, missed: marks.filter((mark) => !complete(mark)).length, of: marks.length, last: marks.at(-1)! }))
    .filter(({ missed, last }) => missed >= KEPT && !complete(last))
    .map(({ item, label, critical, missed, of }) => ({ item, label, critical, missed, of }))
    .sort((a, b) => Number(b.critical) - Number(a.critical) || b.missed / b.of - a.missed / a.of || b.missed - a.missed);
}

/** What can hurt first, then what decides, then what keeps being missed, then the last sheet's own advice. */
function practise(latest: SheetRecord, keepsMissing: readonly KeptMissing[]): ProgressReport["practise"] {
  const advice = new Map(latest.changes.flatMap(({ item, advice: text }) => (item === undefined ? [] : [[item, text] as const])));
  const label = (id: string) => latest.items.find((item) => item.id === id)?.label ?? id;
  const wishes = [
    ...latest.unsafe.filter(stands).map(({ id, label: what }) => ({ id: `unsafe/${id}`, what: advice.get(`unsafe/${id}`) ?? `Never say this: ${what}.`, why: "unsafe statement in the last attempt" })),
    ...latest.criticalMissed.map((id) => ({ id, what: advice.get(id) ?? `Say this: ${label(id)}.`, why: latest.criticalDoubted.includes(id) ? "critical item, to be confirmed by listening to the last attempt" : "critical item missed in the last attempt" })),
    ...keepsMissing.map(({ item, label: what, missed, of }) => ({ id: item, what: advice.get(item) ?? `Say this: ${what}.`, why: `missed in ${missed} of ${of} attempts in which it counted` })),
    ...latest.changes.map(({ item, advice: what }) => ({ id: item ?? what, what, why: "worth most in the last attempt" })),
  ];
  const seen = new Set<string>();
  return wishes.filter(({ id }) => !seen.has(id) && seen.add(id)).slice(0, MOST_PRACTISE).map(({ what, why }) => ({ what, why }));
}
