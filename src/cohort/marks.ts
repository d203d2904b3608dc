import type { FindingCode } from "../problem/catalogue.ts";
import { ProblemError, type Finding } from "../problem/problem.ts";
import type { Content, ItemResult } from "../scoring/types.ts";
import { csvFinding, readTable, type NamedRow } from "./csv.ts";

/** The tool's name among the markers. */
export const TOOL = "saidwell";

/** In the column `item`: what a marker gives of the rehearsal as a whole. Item ids hold no colon. No sign stands first, since spreadsheets would take it for a formula. */
export const WHOLE = { total: "overall:total", global: "overall:global", communication: "overall:communication" } as const;
export type Whole = keyof typeof WHOLE;

/** In the column `item`, before the id of an unsafe statement. */
export const UNSAFE = "unsafe:";
/** Of one statement of the rubric's list in one rehearsal. `cleared`: said, and put right before the end. */
export type UnsafeMark = "said" | "cleared" | "absent" | "cannot-tell";
/** As people write them. */
const UNSAFE_MARKS: Record<string, UnsafeMark> = { said: "said", "put-right": "cleared", absent: "absent", "cannot-tell": "cannot-tell", "?": "cannot-tell" };

/** Columns of the marks file and of the blank sheet. `what` is for the reader of the sheet only. */
export const MARK_COLUMNS = ["candidate", "station", "attempt", "marker", "item", "element", "content", "elicitation", "what"] as const;
const NEEDED = ["candidate", "marker", "item", "content"] as const;

/** One thing that one marker said of one rehearsal. */
export interface MarkRow {
  /** Of the file, 1-based. */
  line: number;
  candidate: string;
  /** Null when the file does not say; then the candidate must have sat only one. */
  station: string | null;
  attempt: string | null;
  marker: string;
  /** An item's content, an element's, or a figure of the whole. */
  mark:
    | { kind: "item"; item: string; content: Content; elicitation: ItemResult["elicitation"] }
    | { kind: "element"; item: string; element: string; content: Content }
    | { kind: "unsafe"; statement: string; content: UnsafeMark }
    | { kind: "whole"; what: Whole; value: number };
}

export interface Marks {
  file: string;
  rows: MarkRow[];
  /** Lines whose content was left empty: not marked. */
  blank: number;
}

const CONTENTS: readonly Content[] = ["complete", "partial", "incorrect", "absent", "cannot-tell", "not-offered", "not-applicable"];
const ELICITATIONS: readonly NonNullable<ItemResult["elicitation"]>[] = ["offered", "after-question", "prompted", "confirmed"];
/** Short ways of writing that the mark sheet itself uses. */
const ALSO: Record<string, Content> = { "?": "cannot-tell", "n/a": "not-applicable" };
const CODE: FindingCode = "SW-A04";

/**
 * Reads people's marks: CSV with the columns candidate, marker, item, content and, where needed, station, attempt,
 * element, elicitation. A line without a candidate belongs to the candidate, station and attempt of the line above; one
 * without a marker to the marker above. `item` is an item's id, or overall:total (per cent), overall:global or overall:communication (a
 * number of the rating scale); `content` is complete, partial, incorrect, absent, cannot tell, not offered or n/a. For
 * `unsafe:` and the id of an unsafe statement it is said, put right, absent or cannot tell.
 * @throws ProblemError SW-A04 with every fault, file and line; SW-A05 where one marker marks the same thing twice
 */
export function readMarks(text: string, file: string): Marks {
  const marks: Marks = { file, rows: [], blank: 0 };
  const faults: Finding[] = [];
  const seen = new Map<string, number>();
  let above = { candidate: "", station: "", attempt: "", marker: "" };
  for (const row of readTable(text, file, CODE, "the marks file", NEEDED)) {
    above = inherit(row, above);
    const value = (name: string) => row.cells.get(name) ?? "";
    if (value("content") === "") {
      if ([...row.cells.values()].some((cell) => cell !== "")) marks.blank += 1;
      continue;
    }
    const fault = (message: string, mend: string, code: FindingCode = CODE) => faults.push(csvFinding(code, file, row.line, message, mend));
    if (above.candidate === "") fault("the line names no candidate, and none stands above it", "Write the candidate into the first line of each sheet.");
    else if (above.marker === "") fault("the line names no marker, and none stands above it", "Write the marker into the first line.");
    else if (above.marker.toLowerCase() === TOOL) fault(`'${above.marker}' is the tool's own name`, "Give the person another name.");
    else if (value("item") === "") fault("the line names no item", `Write the item's id, or ${Object.values(WHOLE).join(", ")}.`);
    else {
      const mark = markOf(value("item"), value("element"), value("content"), value("elicitation"), fault);
      if (mark === null) continue;
      const { candidate, station, attempt, marker } = above;
      const identity = JSON.stringify([candidate, station, attempt, marker, value("item"), value("element")]);
      const before = seen.get(identity);
      if (before !== undefined) fault(`the marker '${marker}' has marked '${value("item")}' of this rehearsal in line ${before} already`, "Keep one of the two lines.", "SW-A05");
      seen.set(identity, row.line);
      marks.rows.push({ line: row.line, candidate, station: station || null, attempt: attempt || null, marker, mark });
    }
  }
  if (faults.length > 0) throw new ProblemError(faults);
  return marks;
}

type Carried = Record<"candidate" | "station" | "attempt" | "marker", string>;

function inherit(row: NamedRow, above: Carried): Carried {
  const value = (name: string) => row.cells.get(name) ?? "";
  const own = value("candidate") !== "";
  return {
    candidate: own ? value("candidate") : above.candidate,
    station: own ? value("station") : value("station") || above.station,
    attempt: own ? value("attempt") : value("attempt") || above.attempt,
    marker: value("marker") || above.marker,
  };
}

function markOf(item: string, element: string, content: string, elicitation: string, fault: (message: string, mend: string) => void): MarkRow["mark"] | null {
  if (item.toLowerCase().startsWith(UNSAFE)) {
    const said = UNSAFE_MARKS[written(content)];
    if (said === undefined) {
      fault(`'${content}' is not one that an unsafe statement can have`, "Write said, put right, absent or cannot tell.");
      return null;
    }
    return { kind: "unsafe", statement: item.slice(UNSAFE.length).trim(), content: said };
  }
  if (item.includes(":")) {
    const what = (Object.keys(WHOLE) as Whole[]).find((name) => WHOLE[name] === item.toLowerCase());
    if (what === undefined) {
      fault(`'${item}' is not one of ${Object.values(WHOLE).join(", ")}, ${UNSAFE}ID`, "Write one of these, or an item's id.");
      return null;
    }
    const value = Number(content.replace(",", ".").replace(/\s*%$/, ""));
    if (!Number.isFinite(value) || value < 0 || (what === "total" && value > 100)) {
      fault(`${WHOLE[what]} is '${content}', which is not ${what === "total" ? "a per cent figure from 0 to 100" : "a number of the scale"}`, "Write a number.");
      return null;
    }
    return { kind: "whole", what, value };
  }
  const said = contentOf(content);
  if (said === null) {
    fault(`the content '${content}' is not one that an item can have`, "Write complete, partial, incorrect, absent, cannot tell, not offered or n/a.");
    return null;
  }
  if (element !== "") return { kind: "element", item, element, content: said };
  const how = elicitation === "" ? null : (ELICITATIONS.find((name) => name === written(elicitation)) ?? "wrong");
  if (how === "wrong") {
    fault(`the elicitation '${elicitation}' is not one of ${ELICITATIONS.join(", ")}`, "Write one of these, or leave it empty.");
    return null;
  }
  return { kind: "item", item, content: said, elicitation: how };
}

function written(text: string): string {
  return text.trim().toLowerCase().replace(/[\s_]+/g, "-");
}

function contentOf(text: string): Content | null {
  return CONTENTS.find((name) => name === written(text)) ?? ALSO[written(text)] ?? null;
}
