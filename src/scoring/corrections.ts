import type { Elicitation } from "../matching/types.ts";
import type { Finding } from "../problem/problem.ts";
import { elementsNeeded, itemsOf } from "../rubric/items.ts";
import type { Item, Rubric } from "../rubric/schema.ts";
import { creditOf, type JudgedItem } from "./items.ts";
import { hundredths } from "./rounding.ts";
import { stands } from "./standing.ts";
import type { Content, CorrectionResult, HeardAt, ItemResult, StatementResult } from "./types.ts";

/*
 * A person overrules marks of one sheet. The corrections stand beside the sheet, as data: the words are marked as ever,
 * the corrections are laid over that, and both marks stay to be seen.
 */

interface Signed {
  by: string;
  /** As 2026-11-26. */
  when: string;
  why: string;
  /** 1-based line of the corrections file. */
  line: number;
}

export interface ItemCorrection extends Signed {
  item: string;
  content: Content;
  elicitation?: Elicitation;
  /** Ids of the elements that were said rightly, of an item that is partial or incorrect. */
  said?: string[];
}

/** An unsafe statement that was not said after all, or that was said though the tool did not find it or left it to a listener. */
export type UnsafeCorrection = Signed & { unsafe: string } & ({ content: "absent" } | HeardUnsafe);

export interface HeardUnsafe {
  content: "said";
  at: HeardAt;
  /** Put right by the candidate before the end: listed, not counted. */
  corrected: boolean;
}

/** One mark overruled. */
export type Correction = ItemCorrection | UnsafeCorrection;

export interface Corrections {
  /** As the person named it. */
  file: string;
  /** Name of the transcript's file, without folders. */
  transcript: { name: string; line: number };
  /** `hash`: the content hash of the sheet that was corrected, or its first 12 characters or more. */
  rubric: { id: string; hash: string; line: number };
  corrections: Correction[];
}

/** What keeps corrections from being laid over a sheet; none when they are of this transcript and this rubric. */
export function correctionFaults(corrections: Corrections, rubric: Rubric, transcript: string): Finding[] {
  const { file } = corrections;
  const fault = (code: "SW-M02" | "SW-M03", line: number, message: string, mend: string): Finding => ({ code, severity: "error", file, line, message, mend });
  const faults: Finding[] = [];
  const name = nameOf(transcript);
  if (nameOf(corrections.transcript.name) !== name) faults.push(fault("SW-M03", corrections.transcript.line, `the corrections are of '${corrections.transcript.name}', not of '${name}'`, "Mark the transcript that they are of, or name this one once they have been looked at again."));
  const { id, hash, line } = corrections.rubric;
  if (id !== rubric.id) faults.push(fault("SW-M03", line, `the corrections are of the rubric '${id}', not of '${rubric.id}'`, "Mark with the rubric that they are of."));
  else if (!rubric.hash.startsWith(hash)) faults.push(fault("SW-M03", line, `the rubric's content is not that of the corrected sheet: its hash is ${rubric.hash.slice(0, hash.length)}, not ${hash}`, "Mark with the version that they are of, or look at each correction again and write the new hash."));
  if (faults.length > 0) return faults;
  const items = itemsOf(rubric);
  const seen = new Set<string>();
  for (const correction of corrections.corrections) {
    const tell = (message: string, mend: string) => faults.push(fault("SW-M02", correction.line, message, mend));
    const of = "unsafe" in correction ? `unsafe/${correction.unsafe}` : correction.item;
    if (seen.has(of)) tell(`'${"unsafe" in correction ? correction.unsafe : correction.item}' is corrected twice`, "Keep the correction that holds.");
    seen.add(of);
    if ("unsafe" in correction) {
      if (!rubric.unsafe.some((statement) => statement.id === correction.unsafe)) tell(`the rubric has no unsafe statement '${correction.unsafe}'`, `They are: ${rubric.unsafe.map((statement) => statement.id).join(", ") || "none"}.`);
      continue;
    }
    const item = items.find((candidate) => candidate.id === correction.item);
    if (item === undefined) tell(`the rubric has no item '${correction.item}'`, `Its items are: ${items.map((candidate) => candidate.id).join(", ")}.`);
    else for (const [message, mend] of elementFaults(item, correction)) tell(message, mend);
  }
  return faults;
}

function elementFaults(item: Item, { content, said = [] }: ItemCorrection): [string, string][] {
  const unknown = said.filter((id) => !item.elements.some((element) => element.id === id));
  const elements = `The elements of '${item.id}' are: ${item.elements.map(({ id }) => id).join(", ")}.`;
  if (unknown.length > 0) return [[`'${item.id}' has no element '${unknown[0]}'`, elements]];
  if (content !== "partial") return [];
  if (item.elements.length === 1) return [[`'${item.id}' has one element: it cannot be partial`, "Write complete or absent."]];
  const whole = new Set(said).size >= elementsNeeded(item) && essentialsIn(item, said);
  return whole ? [[`these elements make '${item.id}' complete`, "Write complete, or take out what was not said."]] : [];
}

/** The items with what was overruled in place of the tool's own marks, which stay beside it. */
export function overrule(items: readonly JudgedItem[], corrections: readonly Correction[]): JudgedItem[] {
  return items.map((judged) => {
    const correction = corrections.find((one): one is ItemCorrection => "item" in one && one.item === judged.item.id);
    return correction === undefined ? judged : overruled(judged, correction);
  });
}

function overruled({ item, result, elements }: JudgedItem, correction: ItemCorrection): JudgedItem {
  const { content, said = [], by, when } = correction;
  const elicitation = correction.elicitation ?? result.elicitation;
  const credit = creditOf(item, elicitation);
  const count = new Set(said).size;
  const needs = elementsNeeded(item);
  // As the tool's own marks: what is not whole earns at most all but one of what it needs.
  const share = content === "complete" ? 1 : content === "partial" || content === "incorrect" ? Math.min(count, needs - 1) / needs : 0;
  const met = credit > 0 && (content === "complete" || (content === "partial" && count >= (item.minimum ?? needs) && essentialsIn(item, said)));
  const changed: ItemResult = {
    ...result,
    content,
    elicitation: content === "complete" || content === "partial" ? elicitation : null,
    earned: hundredths(item.weight * share * credit),
    met,
    // A person listened.
    confidence: 1,
    listen: false,
    remarks: content === result.content ? result.remarks : [],
    overruled: { by, when, tool: toolMark(result) },
  };
  if (credit < 1 && elicitation !== null && share > 0) changed.reduced = [elicitation];
  else delete changed.reduced;
  const judgedElements = content === "partial" ? elements.map((element) => ({ ...element, content: said.includes(element.id) ? ("complete" as const) : ("absent" as const) })) : elements;
  return { item, result: changed, elements: judgedElements, metConfidence: 1 };
}

const toolMark = ({ content, elicitation, earned, met, confidence }: ItemResult) => ({ content, elicitation, earned, met, confidence });

/** The audit lines: what was overruled, by whom, when and why, and what the tool had found. */
export function auditOf(corrections: readonly Correction[], tool: { items: readonly JudgedItem[]; unsafe: readonly StatementResult[] }, items: readonly JudgedItem[], rubric: Rubric): CorrectionResult[] {
  return corrections.map((correction) => {
    const { by, when, why, line } = correction;
    const signed = { by, when, why, line };
    if ("unsafe" in correction) {
      const { unsafe, content } = correction;
      const label = rubric.unsafe.find((statement) => statement.id === unsafe)!.label;
      const found = tool.unsafe.filter(({ id }) => id === unsafe);
      const heard = correction.content === "said" ? { at: correction.at, corrected: correction.corrected } : {};
      return { unsafe, label, content, ...heard, ...signed, tool: { found: found.length, standing: found.filter(stands).length } };
    }
    const { item, content, said } = correction;
    const before = tool.items.find((judged) => judged.item.id === item)!.result;
    const { label, earned, met, weight } = items.find((judged) => judged.item.id === item)!.result;
    return { item, label, content, earned, met, weight, ...(said !== undefined && { said }), ...signed, tool: toolMark(before) };
  });
}

function essentialsIn(item: Item, said: readonly string[]): boolean {
  return item.elements.every(({ id, essential }) => essential !== true || said.includes(id));
}

/** Of a path of any system. */
function nameOf(path: string): string {
  return path.split(/[/\\]/).at(-1)!.normalize("NFC");
}
