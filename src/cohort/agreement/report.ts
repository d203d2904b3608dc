import { isDecided } from "../../scoring/content.ts";
import type { Content } from "../../scoring/types.ts";
import { TOOL } from "../marks.ts";
import { type ListenAt, type SheetRecord } from "../record.ts";
import type { ResultKey } from "../result.ts";
import { proportionDifference, wilsonInterval } from "../statistics/proportion.ts";
import type { Joined, JoinedRecord } from "./join.ts";
import { groupMeasures, pairMeasures, type GroupMeasures, type PairMeasures } from "./measures.ts";
import { ratingReport, type RatingReport } from "./rating-scales.ts";
import { pairsOf, totalsReport, type TotalsReport } from "./totals.ts";
import { unsafeReport, type UnsafeReport } from "./unsafe.ts";

export interface PairReport {
  first: string;
  second: string;
  measures: PairMeasures;
}

export interface ItemAgreement {
  rubric: string;
  item: string;
  label: string;
  critical: boolean;
  pairs: PairReport[];
  /** People among themselves; null with one person. */
  people: GroupMeasures | null;
  /** The tool and all people. */
  all: GroupMeasures;
}

export interface Disagreement {
  key: ResultKey;
  file: string;
  item: string;
  label: string;
  critical: boolean;
  weight: number;
  tool: Content;
  confidence: number;
  people: { marker: string; content: Content }[];
  /** Where the tool found it, to listen to; empty when it found nothing. */
  at: ListenAt[];
}

export interface WordingNeed {
  rubric: string;
  item: string;
  label: string;
  /** Pairs of marks that differ, of all pairs: among people, and between the tool and people. */
  people: { differ: number; of: number };
  tool: { differ: number; of: number };
  /** people: they do not read it alike; tool: people agree, or differ far less often than it does from them, so its phrases miss or find too much; both. */
  whose: "people" | "tool" | "both";
  /** Elements where tool and people differ most. */
  elements: { element: string; label: string; differ: number; of: number }[];
}

export interface AgreementReport {
  form: "saidwell/agreement@1";
  version: string;
  rehearsals: number;
  candidates: number;
  markers: string[];
  tool: typeof TOOL;
  /** Marks people left blank. */
  blank: number;
  overall: { pairs: PairReport[]; people: GroupMeasures | null; all: GroupMeasures };
  items: ItemAgreement[];
  /** Null when nobody marked an unsafe statement. */
  unsafe: UnsafeReport | null;
  totals: TotalsReport;
  ratings: RatingReport[];
  wording: WordingNeed[];
  disagreements: Disagreement[];
}

interface Row {
  joined: JoinedRecord;
  cluster: number;
  item: SheetRecord["items"][number];
  /** The tool first, then people; null where not marked. */
  marks: (Content | null)[];
}

/** All figures of agreement between the tool and people, and among people. */
export function agreementReport({ records, markers: people }: Joined, version: string, blank: number): AgreementReport {
  const markers = [TOOL, ...people];
  const rows = records.flatMap((joined, cluster) =>
    joined.record.items.map((item): Row => ({ joined, cluster, item, marks: [item.tool ?? item.content, ...people.map((name) => joined.people.get(name)?.items.get(item.id) ?? null)] })),
  ).filter(({ marks }) => marks.slice(1).some((mark) => mark !== null));
  const items = byItem(rows).map(([rubric, own]) => itemAgreement(rubric, own, markers));
  return {
    form: "saidwell/agreement@1",
    version,
    rehearsals: records.length,
    candidates: new Set(records.map(({ record }) => record.key.candidate)).size,
    markers: people,
    tool: TOOL,
    blank,
    overall: { ...groups(rows, markers, true), pairs: pairReports(rows, markers, true) },
    items,
    unsafe: unsafeReport(records, people, TOOL),
    totals: totalsReport(records, people, TOOL),
    ratings: (["global", "communication"] as const).map((what) => ratingReport(records, people, what)).filter((report) => report !== null),
    wording: byItem(rows).map(([rubric, own]) => wordingNeed(rubric, own, people)).filter((need) => need.people.differ + need.tool.differ > 0).sort((a, b) => urgency(b) - urgency(a)),
    disagreements: disagreements(rows, people),
  };
}

function byItem(rows: readonly Row[]): [rubric: string, rows: Row[]][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const name = JSON.stringify([row.joined.record.rubric.id, row.item.id]);
    const own = groups.get(name);
    if (own === undefined) groups.set(name, [row]);
    else own.push(row);
  }
  return [...groups].map(([name, own]) => [(JSON.parse(name) as [string])[0], own]);
}

function groups(rows: readonly Row[], markers: readonly string[], clustered: boolean) {
  const clusters = clustered ? rows.map(({ cluster }) => cluster) : null;
  return {
    people: markers.length > 2 ? groupMeasures(markers.slice(1), rows.map(({ marks }) => marks.slice(1)), clusters) : null,
    all: groupMeasures(markers, rows.map(({ marks }) => marks), clusters),
  };
}

function pairReports(rows: readonly Row[], markers: readonly string[], clustered: boolean): PairReport[] {
  return pairsOf(markers).map(([a, b]) => ({
    first: markers[a]!,
    second: markers[b]!,
    measures: pairMeasures(
      rows.flatMap(({ marks, cluster }) => (marks[a] == null || marks[b] == null ? [] : [{ first: marks[a], second: marks[b], cluster }])),
      clustered,
    ),
  }));
}

function itemAgreement(rubric: string, rows: readonly Row[], markers: readonly string[]): ItemAgreement {
  const { id, label, critical } = rows[0]!.item;
  return { rubric, item: id, label, critical, pairs: pairReports(rows, markers, false), ...groups(rows, markers, false) };
}

function differing(first: Content | null, second: Content | null): boolean | null {
  return first !== null && second !== null && isDecided(first) && isDecided(second) ? first !== second : null;
}

function tally(outcomes: readonly (boolean | null)[]): { differ: number; of: number } {
  return { differ: outcomes.filter((differ) => differ === true).length, of: outcomes.filter((differ) => differ !== null).length };
}

/** A share of differing pairs from which an item is worth a look: one in ten, common practice, no source. */
const WORTH_A_LOOK = 0.1;
const MOST_ELEMENTS = 3;

function wordingNeed(rubric: string, rows: readonly Row[], markers: readonly string[]): WordingNeed {
  const { id, label } = rows[0]!.item;
  const people = tally(rows.flatMap(({ marks }) => pairsOf(markers).map(([a, b]) => differing(marks[a + 1]!, marks[b + 1]!))));
  const tool = tally(rows.flatMap(({ marks }) => marks.slice(1).map((mark) => differing(marks[0]!, mark))));
  const often = ({ differ, of }: { differ: number; of: number }) => of > 0 && differ / of >= WORTH_A_LOOK;
  // People differ somewhere on every item: where the tool differs from them far more often, its phrases are what needs work.
  const more = proportionDifference({ successes: tool.differ, n: tool.of }, { successes: people.differ, n: people.of });
  const farMore = more.value !== null && more.interval !== null && more.interval.low > 0;
  const whose = often(people) && !farMore ? (often(tool) ? "both" : "people") : "tool";
  return { rubric, item: id, label, people, tool, whose, elements: elementNeeds(rows) };
}

function elementNeeds(rows: readonly Row[]): WordingNeed["elements"] {
  const found = new Map<string, { label: string; outcomes: (boolean | null)[] }>();
  for (const { joined, item } of rows) {
    for (const element of item.elements) {
      const known = found.get(element.id) ?? { label: element.label, outcomes: [] };
      found.set(element.id, known);
      for (const sheet of joined.people.values()) known.outcomes.push(differing(element.content, sheet.elements.get(`${item.id}/${element.id}`) ?? null));
    }
  }
  return [...found]
    .map(([element, { label, outcomes }]) => ({ element, label, ...tally(outcomes) }))
    .filter(({ differ }) => differ > 0)
    .sort((a, b) => b.differ - a.differ)
    .slice(0, MOST_ELEMENTS);
}

/** By what the differing is at least, not by a chance run of two or three. */
function urgency({ people, tool }: WordingNeed): number {
  const least = ({ differ, of }: { differ: number; of: number }) => (of === 0 ? 0 : wilsonInterval(differ, of).low);
  return Math.max(least(people), least(tool));
}

function disagreements(rows: readonly Row[], people: readonly string[]): Disagreement[] {
  return rows
    .filter(({ marks }) => pairsOf(marks.map(String)).some(([a, b]) => differing(marks[a]!, marks[b]!) === true))
    .map(({ joined: { record }, item, marks }) => ({
      key: record.key,
      file: record.file,
      item: item.id,
      label: item.label,
      critical: item.critical,
      weight: item.weight,
      tool: item.tool ?? item.content,
      confidence: item.confidence,
      people: people.flatMap((marker, place) => (marks[place + 1] === null ? [] : [{ marker, content: marks[place + 1]! }])),
      at: item.at,
    }))
    .sort((a, b) => Number(b.critical) - Number(a.critical) || against(b) - against(a) || b.weight - a.weight);
}

/** The share of people who differ from the tool: where all do, listening tells most; where none does, people differ among themselves. */
function against({ tool, people }: Disagreement): number {
  const { differ, of } = tally(people.map(({ content }) => differing(tool, content)));
  return of === 0 ? 0 : differ / of;
}
