import type { UnsafeMark } from "../marks.ts";
import type { ListenAt } from "../record.ts";
import type { ResultKey } from "../result.ts";
import { agreementTable } from "../statistics/agreement-table.ts";
import { clusteredInterval } from "../statistics/clustered-interval.ts";
import { cohenKappa } from "../statistics/cohen-kappa.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { proportion } from "../statistics/proportion.ts";
import type { JoinedRecord } from "./join.ts";
import { pairsOf } from "./totals.ts";

/* Unsafe statements decide a result by themselves and most talks hold none: a share of agreement would be near 100% whatever is missed. */

/** Two markers; a unit is a statement of the list in a rehearsal that both decided. */
export interface UnsafePair {
  first: string;
  second: string;
  n: number;
  rehearsals: number;
  /** How often it stands by both, by one alone, by neither. */
  both: number;
  firstOnly: number;
  secondOnly: number;
  neither: number;
  /** Of those that stand by the one, the share that stands by the other, 0 to 1. */
  firstBySecond: Estimate;
  secondByFirst: Estimate;
  kappa: Estimate;
}

export interface UnsafeDisagreement {
  key: ResultKey;
  file: string;
  statement: string;
  label: string;
  tool: UnsafeMark;
  people: { marker: string; mark: UnsafeMark }[];
  /** Where the tool found it; empty when it found nothing. */
  at: ListenAt[];
}

export interface UnsafeReport {
  pairs: UnsafePair[];
  /** What all people heard and the tool did not find first, then what the tool found alone. */
  disagreements: UnsafeDisagreement[];
}

interface Row {
  joined: JoinedRecord;
  cluster: number;
  statement: string;
  /** The tool first, then people; null where not marked. */
  marks: (UnsafeMark | null)[];
}

/** Null when nobody marked a statement. */
export function unsafeReport(records: readonly JoinedRecord[], people: readonly string[], tool: string): UnsafeReport | null {
  const rows = records.flatMap((joined, cluster): Row[] => {
    const marked = new Set([...joined.people.values()].flatMap(({ unsafe }) => [...unsafe.keys()]));
    return [...marked].map((statement) => ({ joined, cluster, statement, marks: [toolMark(joined, statement), ...people.map((name) => joined.people.get(name)?.unsafe.get(statement) ?? null)] }));
  });
  if (rows.length === 0) return null;
  const markers = [tool, ...people];
  return { pairs: pairsOf(markers).map(([a, b]) => pairOf(markers[a]!, markers[b]!, rows.map(({ marks, cluster }) => ({ first: marks[a]!, second: marks[b]!, cluster })))), disagreements: disagreementsOf(rows, people) };
}

function toolMark({ record }: JoinedRecord, statement: string): UnsafeMark {
  const found = record.unsafeByTool.filter(({ id }) => id === statement);
  if (found.length === 0) return "absent";
  if (found.some(({ corrected, listen }) => !corrected && !listen)) return "said";
  return found.some(({ listen }) => listen) ? "cannot-tell" : "cleared";
}

/** What is put right does not stand, for the result as for these figures. */
function standing(mark: UnsafeMark): boolean | null {
  return mark === "cannot-tell" ? null : mark === "said";
}

function pairOf(first: string, second: string, units: readonly { first: UnsafeMark | null; second: UnsafeMark | null; cluster: number }[]): UnsafePair {
  const decided = units.flatMap((unit) => {
    const [a, b] = [unit.first, unit.second].map((mark) => (mark === null ? null : standing(mark)));
    return a === null || a === undefined || b === null || b === undefined ? [] : [{ a, b, cluster: unit.cluster }];
  });
  const count = (a: boolean, b: boolean) => decided.filter((unit) => unit.a === a && unit.b === b).length;
  const [both, firstOnly, secondOnly, neither] = [count(true, true), count(true, false), count(false, true), count(false, false)];
  const clusters = [...new Set(decided.map(({ cluster }) => cluster))];
  const tables = clusters.map((cluster) => agreementTable(decided.filter((unit) => unit.cluster === cluster).map(({ a, b }) => [String(a), String(b)] as const), ["true", "false"]));
  return {
    first, second, n: decided.length, rehearsals: clusters.length, both, firstOnly, secondOnly, neither,
    firstBySecond: proportion(both, both + firstOnly),
    secondByFirst: proportion(both, both + secondOnly),
    kappa: clusteredInterval(tables, cohenKappa),
  };
}

function disagreementsOf(rows: readonly Row[], people: readonly string[]): UnsafeDisagreement[] {
  const differs = ({ marks }: Row) => new Set(marks.flatMap((mark) => (mark === null ? [] : [mark === "cannot-tell" ? null : mark === "said"]))).size > 1;
  const heard = ({ people: own }: UnsafeDisagreement) => own.filter(({ mark }) => mark === "said").length / own.length;
  return rows
    .filter(differs)
    .map(({ joined: { record }, statement, marks }): UnsafeDisagreement => {
      const own = record.unsafeByTool.filter(({ id }) => id === statement);
      return {
        key: record.key,
        file: record.file,
        statement,
        label: record.unsafeListed?.find(({ id }) => id === statement)?.label ?? own[0]?.label ?? statement,
        tool: marks[0]!,
        people: people.flatMap((marker, place) => (marks[place + 1] === null ? [] : [{ marker, mark: marks[place + 1]! }])),
        at: own.flatMap(({ at }) => (at === null ? [] : [at])),
      };
    })
    .sort((a, b) => Number(a.tool === "said") - Number(b.tool === "said") || heard(b) - heard(a));
}
