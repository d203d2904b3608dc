// Reads the three corpora as consultations: turns with a role, times where the corpus has them.
// primock57 (Papadopoulos Korfiatis et al., 2022), aci-bench (Yim et al., 2023) and
// mts-dialog (Ben Abacha et al., 2023), each CC BY 4.0.
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";

export type Side = "candidate" | "patient";
export type Corpus = "primock57" | "aci-bench" | "mts-dialog" | "counselling" | "invented";
/** The open corpora. */
export const CORPORA: readonly Corpus[] = ["primock57", "aci-bench", "mts-dialog"];
/** What is measured: the counselling talk is invented too, but by many hands, some of whom are left out of each fit. The variants of `invented.yaml` are only ever trained on. */
export const MEASURED: readonly Corpus[] = [...CORPORA, "counselling"];

export interface GoldTurn {
  side: Side;
  text: string;
  /** Seconds; null where the corpus has no times. */
  start: number | null;
  end: number | null;
}

export interface Consultation {
  id: string;
  corpus: Corpus;
  /** Who wrote it, where it is invented: folds keep a hand together. */
  hand?: string;
  /** How much one pass of the fit counts it; 1 where left out. */
  weight?: number;
  turns: GoldTurn[];
}

/** Comma-separated values with quoted fields that may hold commas, quotes and line breaks (RFC 4180). */
export function readCsv(text: string): Record<string, string>[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = "";
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const char = text[at]!;
    if (quoted) {
      if (char !== '"') field += char;
      else if (text[at + 1] === '"') {
        field += '"';
        at++;
      } else quoted = false;
    } else if (char === '"') quoted = true;
    else if (char === ",") {
      row.push(field);
      field = "";
    } else if (char === "\n") {
      rows.push([...row, field.replace(/\r$/, "")]);
      row = [];
      field = "";
    } else field += char;
  }
  if (field !== "" || row.length > 0) rows.push([...row, field]);
  const [head, ...body] = rows;
  return body.map((cells) => Object.fromEntries(head!.map((key, at) => [key, cells[at] ?? ""])));
}

function dropTags(text: string): string {
  return text.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ").trim();
}

function readIntervals(path: string, side: Side): GoldTurn[] {
  const text = readFileSync(path, "utf8");
  const pattern = /xmin = ([\d.]+)\s+xmax = ([\d.]+)\s+text = "((?:[^"]|"")*)"/g;
  const turns: GoldTurn[] = [];
  for (const match of text.matchAll(pattern)) {
    const words = dropTags(match[3]!.replaceAll('""', '"'));
    if (/[\p{L}\p{N}]/u.test(words)) turns.push({ side, text: words, start: Number(match[1]), end: Number(match[2]) });
  }
  return turns;
}

function readPrimock(folder: string): Consultation[] {
  const doctors = readdirSync(folder).filter((name) => name.endsWith("_doctor.TextGrid")).sort();
  return doctors.map((name) => {
    const turns = [
      ...readIntervals(join(folder, name), "candidate"),
      ...readIntervals(join(folder, name.replace("_doctor", "_patient")), "patient"),
    ];
    turns.sort((a, b) => a.start! - b.start!);
    return { id: name.replace("_doctor.TextGrid", ""), corpus: "primock57", turns };
  });
}

function readAci(folder: string): Consultation[] {
  return readCsv(readFileSync(join(folder, "train.csv"), "utf8")).map((row) => {
    const turns: GoldTurn[] = [];
    for (const line of row["dialogue"]!.split("\n")) {
      const match = /^\[(doctor|patient)\]\s*(.*)$/.exec(line);
      const last = turns[turns.length - 1];
      if (match !== null) turns.push({ side: match[1] === "doctor" ? "candidate" : "patient", text: match[2]!, start: null, end: null });
      else if (last !== undefined) last.text += ` ${line}`;
    }
    return { id: row["encounter_id"]!, corpus: "aci-bench", turns };
  });
}

// Labels of mts-dialog besides Doctor and Patient, its own misspellings included.
const MTS_CLINICIAN = /^(?:doctor|docotr|guest_clini\w+)/i;

function readMts(folder: string): Consultation[] {
  return readCsv(readFileSync(join(folder, "training-set.csv"), "utf8")).map((row) => {
    const turns: GoldTurn[] = [];
    for (const line of row["dialogue"]!.split(/\r?\n/)) {
      const match = /^\s*((?:doctor|docotr|patient|guest|gest)\w*)\s*[:.]\s*(.*)$/i.exec(line);
      const last = turns[turns.length - 1];
      if (match !== null) turns.push({ side: MTS_CLINICIAN.test(match[1]!) ? "candidate" : "patient", text: match[2]!, start: null, end: null });
      else if (last !== undefined) last.text += ` ${line}`;
    }
    return { id: `mts-${row["ID"]!}`, corpus: "mts-dialog", turns };
  });
}

/** One encounter's mend; the form is explained in corrections.yaml. */
export interface Correction {
  encounter: string;
  swap?: "all" | number[];
  except?: number[];
  cut?: { turn: number; at: number[]; by: ("doctor" | "patient")[] }[];
}

export function readCorrections(path: string): Correction[] {
  return parse(readFileSync(path, "utf8")).corrections as Correction[];
}

const other = (side: Side): Side => (side === "candidate" ? "patient" : "candidate");

function mendTurn(turn: GoldTurn, number: number, mend: Correction): GoldTurn[] {
  const cut = mend.cut?.find((each) => each.turn === number);
  if (cut !== undefined) {
    const words = turn.text.split(/\s+/);
    if (cut.by.length !== cut.at.length + 1 || cut.at.some((at) => at >= words.length)) throw new Error(`corrections.yaml, ${mend.encounter}, turn ${number}: the cut does not fit its ${words.length} words`);
    return cut.by.map((by, part) => ({ ...turn, side: by === "doctor" ? "candidate" : "patient", text: words.slice(cut.at[part - 1] ?? 0, cut.at[part] ?? words.length).join(" ") }));
  }
  const swapped = mend.swap === "all" ? mend.except?.includes(number) !== true : mend.swap?.includes(number) === true;
  return [swapped ? { ...turn, side: other(turn.side) } : turn];
}

export function correct(consultations: Consultation[], corrections: Correction[]): Consultation[] {
  const byId = new Map(corrections.map((each) => [each.encounter, each]));
  return consultations.map((each) => {
    const mend = byId.get(each.id);
    return mend === undefined ? each : { ...each, turns: each.turns.flatMap((turn, at) => mendTurn(turn, at + 1, mend)) };
  });
}

/** All consultations of the corpora found under the folder, as their sources tag them. */
export function readCorpora(data: string): Consultation[] {
  const readers: [string, (folder: string) => Consultation[]][] = [
    ["primock57", readPrimock],
    ["aci-bench", readAci],
    ["mts-dialog", readMts],
  ];
  return readers
    .flatMap(([name, read]) => (existsSync(join(data, name)) ? read(join(data, name)) : []))
    .map((each) => ({ ...each, turns: each.turns.filter((turn) => /[\p{L}\p{N}]/u.test(turn.text)) }))
    .filter((each) => each.turns.length > 1);
}
