import { isDecided, notAskedFor } from "../../scoring/content.ts";
import type { JoinedRecord } from "../agreement/join.ts";
import { keyText, type SheetRecord } from "../record.ts";
import { compareNatural } from "../result.ts";
import { clusteredDifference, clusteredProportion, type Cluster } from "../statistics/clustered-proportion.ts";
import { notMeasurable, type Estimate } from "../statistics/estimate.ts";

/** A group of fewer rehearsals is flagged: one odd recording moves its rates (common practice in reporting, no source). */
export const SMALL_GROUP = 10;

export type RateName = "error" | "cannot-tell" | "listen" | "missed";

/** What each rate counts. */
export const RATE_MEANING: Record<RateName, string> = {
  error: "marks of the tool that differ from people's, of those that both decided",
  "cannot-tell": "items the tool could not tell, of all that apply",
  listen: "items to be listened to, of all that apply",
  missed: "items absent or incorrect, of those that count",
};

export interface GroupRates {
  value: string;
  rehearsals: number;
  /** Rehearsals by station. */
  stations: { station: string; count: number }[];
  candidates: number;
  small: boolean;
  rates: Record<RateName, Estimate>;
  /** This group minus all others together; an interval that leaves out nought marks a difference. */
  differences: Record<RateName, Estimate>;
}

export interface GroupReport {
  column: string;
  /** Rehearsals whose column is empty: in no group. */
  without: number;
  groups: GroupRates[];
  /** The groups did not sit the same stations alike often, so a difference may be the stations'. */
  stationsDiffer: boolean;
  /** Pairs of group and rate whose interval leaves out nought. */
  differing: { value: string; rate: RateName }[];
}

const NAMES = Object.keys(RATE_MEANING) as RateName[];

/**
 * Rates of the tool's errors by a column of the plan. Errors need people's marks: without any they are not measurable.
 * Intervals treat the candidates, not the rehearsals or marks, as the sample.
 */
export function groupReport(records: readonly SheetRecord[], column: string, joined: readonly JoinedRecord[] | null): GroupReport {
  const people = new Map((joined ?? []).map((one) => [keyText(one.record.key), one]));
  const groups = new Map<string, SheetRecord[]>();
  let without = 0;
  for (const record of records) {
    const value = record.columns[column]?.trim() ?? "";
    if (value === "") without += 1;
    else groups.set(value, [...(groups.get(value) ?? []), record]);
  }
  const clusters = (of: readonly SheetRecord[], rate: RateName) => byCandidate(of).map((own) => sum(own.map((record) => clusterOf(record, rate, people.get(keyText(record.key))))));
  const rated = (of: readonly SheetRecord[], rate: RateName) =>
    rate === "error" && joined === null ? notMeasurable(0, "no people's marks were given (--marks)") : clusteredProportion(clusters(of, rate));
  const report = [...groups].sort(([a], [b]) => compareNatural(a, b)).map(([value, own]): GroupRates => {
    const others = [...groups].filter(([name]) => name !== value).flatMap(([, of]) => of);
    return {
      value,
      rehearsals: own.length,
      stations: countsOf(own.map(({ key }) => key.station)),
      candidates: new Set(own.map(({ key }) => key.candidate)).size,
      small: own.length < SMALL_GROUP,
      rates: fromNames((rate) => rated(own, rate)),
      differences: fromNames((rate) => (others.length === 0 || (rate === "error" && joined === null) ? notMeasurable(0, "there is nothing to compare with") : clusteredDifference(clusters(own, rate), clusters(others, rate)))),
    };
  });
  // Of two groups the second says only the same with the other sign.
  const told = report.length === 2 ? report.slice(0, 1) : report;
  const differing = told.flatMap(({ value, differences }) => NAMES.filter((rate) => leavesOutNought(differences[rate])).map((rate) => ({ value, rate })));
  return { column, without, groups: report, stationsDiffer: mixesDiffer(report), differing };
}

/** From this the shares of a station in two groups are told apart; common practice, no source. */
const SAME_MIX = 0.1;

function countsOf(names: readonly string[]): GroupRates["stations"] {
  const found = new Map<string, number>();
  for (const name of [...names].sort(compareNatural)) found.set(name, (found.get(name) ?? 0) + 1);
  return [...found].map(([station, count]) => ({ station, count }));
}

function mixesDiffer(groups: readonly GroupRates[]): boolean {
  const stations = new Set(groups.flatMap((group) => group.stations.map(({ station }) => station)));
  return [...stations].some((station) => {
    const shares = groups.map((group) => (group.stations.find((own) => own.station === station)?.count ?? 0) / group.rehearsals);
    return Math.max(...shares) - Math.min(...shares) > SAME_MIX;
  });
}

function byCandidate(records: readonly SheetRecord[]): SheetRecord[][] {
  const found = new Map<string, SheetRecord[]>();
  for (const record of records) found.set(record.key.candidate, [...(found.get(record.key.candidate) ?? []), record]);
  return [...found.values()];
}

function sum(clusters: readonly Cluster[]): Cluster {
  return { having: clusters.reduce((all, { having }) => all + having, 0), of: clusters.reduce((all, { of }) => all + of, 0) };
}

function fromNames(figure: (rate: RateName) => Estimate): Record<RateName, Estimate> {
  return Object.fromEntries(NAMES.map((rate) => [rate, figure(rate)])) as Record<RateName, Estimate>;
}

function leavesOutNought(figure: Estimate): boolean {
  return figure.value !== null && figure.interval !== null && (figure.interval.low > 0 || figure.interval.high < 0);
}

function clusterOf({ items }: SheetRecord, rate: RateName, joined: JoinedRecord | undefined): Cluster {
  if (rate === "error") {
    const outcomes = items.flatMap(({ id, content }) => [...(joined?.people.values() ?? [])].flatMap((sheet) => {
      const mark = sheet.items.get(id);
      return mark !== undefined && isDecided(mark) && isDecided(content) ? [mark !== content] : [];
    }));
    return { having: outcomes.filter(Boolean).length, of: outcomes.length };
  }
  const applying = items.filter(({ content }) => !notAskedFor(content));
  if (rate === "missed") {
    const deciding = applying.filter(({ content }) => content !== "cannot-tell");
    return { having: deciding.filter(({ content }) => content === "absent" || content === "incorrect").length, of: deciding.length };
  }
  return { having: applying.filter(({ content, listen }) => (rate === "cannot-tell" ? content === "cannot-tell" : listen)).length, of: applying.length };
}
