import type { Finding } from "../../problem/problem.ts";
import type { Content } from "../../scoring/types.ts";
import { LeftOut } from "../left-out.ts";
import { type MarkRow, type Marks, type UnsafeMark, type Whole } from "../marks.ts";
import { keyText, type SheetRecord } from "../record.ts";

/** What one person gave one rehearsal. */
export interface PersonSheet {
  items: Map<string, Content>;
  /** By `item/element`. */
  elements: Map<string, Content>;
  /** By the statement's id. */
  unsafe: Map<string, UnsafeMark>;
  whole: Partial<Record<Whole, number>>;
}

export interface JoinedRecord {
  record: SheetRecord;
  people: Map<string, PersonSheet>;
}

export interface Joined {
  /** Rehearsals with at least one person's mark, in the order of the results. */
  records: JoinedRecord[];
  /** Markers, sorted. */
  markers: string[];
  findings: Finding[];
}

/** Brings people's marks to the rehearsals they are of. What fits none is told, with its lines, and left out. */
export function joinMarks(records: readonly SheetRecord[], marks: Marks): Joined {
  const people = new Map<string, Map<string, PersonSheet>>();
  const byCandidate = new Map<string, SheetRecord[]>();
  for (const record of records) byCandidate.set(record.key.candidate, [...(byCandidate.get(record.key.candidate) ?? []), record]);
  const lost = new LeftOut();
  const markers = new Set<string>();
  for (const row of marks.rows) {
    const record = recordFor(row, byCandidate, lost);
    if (record === null) continue;
    const { mark, marker } = row;
    const item = mark.kind !== "item" && mark.kind !== "element" ? undefined : record.items.find(({ id }) => id === mark.item);
    if (mark.kind === "unsafe" && record.unsafeListed !== null && !record.unsafeListed.some(({ id }) => id === mark.statement)) {
      lost.add(`the rubric '${record.rubric.id}' (version ${record.rubric.version}) has no unsafe statement '${mark.statement}'`, "'saidwell rubric sheet' prints a sheet with the statements as they are called.", row.line);
      continue;
    }
    if ((mark.kind === "item" || mark.kind === "element") && item === undefined) {
      lost.add(`the rubric '${record.rubric.id}' (version ${record.rubric.version}) has no item '${mark.item}'`, "'saidwell rubric sheet' prints a sheet with the items as they are called.", row.line);
      continue;
    }
    if (mark.kind === "element" && !item!.elements.some(({ id }) => id === mark.element)) {
      lost.add(`the item '${mark.item}' has no element '${mark.element}'`, "'saidwell rubric sheet' prints a sheet with the elements as they are called.", row.line);
      continue;
    }
    markers.add(marker);
    const sheets = people.get(keyText(record.key)) ?? new Map<string, PersonSheet>();
    people.set(keyText(record.key), sheets);
    const sheet: PersonSheet = sheets.get(marker) ?? { items: new Map(), elements: new Map(), unsafe: new Map(), whole: {} };
    sheets.set(marker, sheet);
    if (mark.kind === "item") sheet.items.set(mark.item, mark.content);
    else if (mark.kind === "element") sheet.elements.set(`${mark.item}/${mark.element}`, mark.content);
    else if (mark.kind === "unsafe") sheet.unsafe.set(mark.statement, mark.content);
    else sheet.whole[mark.what] = mark.value;
  }
  return {
    records: records.flatMap((record) => {
      const sheets = people.get(keyText(record.key));
      return sheets === undefined ? [] : [{ record, people: sheets }];
    }),
    markers: [...markers].sort(),
    findings: [...alike([...markers].sort(), marks.file), ...lost.findings("SW-A06", marks.file, "mark")],  };
}

/** One person under two spellings would be compared with themselves. */
function alike(markers: readonly string[], file: string): Finding[] {
  const folded = (name: string) => name.normalize("NFKD").replace(/\p{M}+|[\s._-]+/gu, "").toLowerCase();
  const groups = new Map<string, string[]>();
  for (const name of markers) groups.set(folded(name), [...(groups.get(folded(name)) ?? []), name]);
  return [...groups.values()].filter((names) => names.length > 1).map((names) => ({
    code: "SW-A10",
    severity: "warning",
    file,
    message: `the markers ${names.map((name) => `'${name}'`).join(" and ")} are taken for different people, though their names are almost the same`,
    mend: "Write each marker's name in one way.",
  }));
}

/** The one rehearsal that the line can mean. */
function recordFor(row: MarkRow, byCandidate: ReadonlyMap<string, SheetRecord[]>, lost: LeftOut): SheetRecord | null {
  const own = byCandidate.get(row.candidate);
  if (own === undefined) {
    lost.add(`no result is of the candidate '${row.candidate}'`, "Write candidates as the results do ('saidwell cohort' takes them from file names or the plan).", row.line);
    return null;
  }
  const fitting = own.filter(({ key }) => (row.station === null || key.station === row.station) && (row.attempt === null || key.attempt === row.attempt));
  if (fitting.length === 1) return fitting[0]!;
  const asked = [row.station === null ? null : `station '${row.station}'`, row.attempt === null ? null : `attempt '${row.attempt}'`].filter((part) => part !== null).join(", ");
  if (fitting.length === 0) lost.add(`the candidate '${row.candidate}' has no result of ${asked}`, `There is: ${own.map(({ key }) => `${key.station}, attempt ${key.attempt}`).join("; ")}.`, row.line);
  else lost.add(`the candidate '${row.candidate}' has ${fitting.length} results${asked === "" ? "" : ` of ${asked}`}, and the line does not say which`, "Fill in the columns station and attempt.", row.line);
  return null;
}

