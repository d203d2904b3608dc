import type { Elicitation, Judgement } from "../matching/types.ts";
import { applies, elementsNeeded } from "../rubric/items.ts";
import type { Credit, Item } from "../rubric/schema.ts";
import { notAskedFor } from "./content.ts";
import type { Context } from "./context.ts";
import { judgeElement, type JudgedElement } from "./elements.ts";
import { hundredths } from "./rounding.ts";
import { chanceOfContent, chancesOf, type ElementChances } from "./item-confidence.ts";
import { nearOf, surenessOf } from "./sureness.ts";
import type { Content, Evidence, ItemResult } from "./types.ts";

/** An item with its judged elements, for the parts of the sheet that look closer. */
export interface JudgedItem {
  item: Item;
  result: ItemResult;
  elements: JudgedElement[];
  /** The chance, 0 to 1, that a careful reader finds the item met, or not met, as it was found here. */
  metConfidence: number;
}

/** Less sure than this, a person should listen. Of annotated talk that `fit:sureness` does not see (hands w15 to w17) that is 15% of the marks, the design's most. */
export const LISTEN_BELOW = 0.75;

/** Words that the recogniser trusts less may be others. */
const HEARD_BELOW = 0.7;

/** An item's label for the sheet; the id where there is no such item. */
export function labelOf(items: readonly JudgedItem[], id: string): string {
  return items.find(({ item }) => item.id === id)?.item.label ?? id;
}

export function judgeItems(context: Context): JudgedItem[] {
  const judged = context.rubric.sections.flatMap(({ id: section, items }) => items.map((item) => ({ item, section, elements: item.elements.map((element) => judgeElement(context, item.id, element)) })));
  const all = judged.flatMap(({ elements }) => elements);
  const found = all.filter(({ content }) => content === "complete").length / Math.max(1, all.length);
  return judged.map(({ item, section, elements }) => {
    const near = elements.map((element) => nearOf(context.matches, item.id, element.id));
    const sure = elements.map((element, place) => ({ ...element, confidence: surenessOf(element, near[place]!, item, elements.filter((other) => other !== element), found) }));
    return judgeItem(context, item, section, sure, near.map(({ judged }) => judged));
  });
}

const CREDIT: Record<Credit, number> = { full: 1, half: 0.5, none: 0 };

/** What a complete element earns, 0 to 1, by how it was elicited. */
export function creditOf(item: Item, elicitation: Elicitation | null): number {
  switch (elicitation) {
    case "after-question":
      return CREDIT[item.credit.after_question];
    case "prompted":
      return CREDIT[item.credit.prompted];
    case "confirmed":
      return CREDIT[item.credit.confirmed];
    default:
      return 1;
  }
}

function judgeItem(context: Context, item: Item, section: string, elements: JudgedElement[], judged: readonly (Judgement | undefined)[]): JudgedItem {
  const needs = elementsNeeded(item);
  const complete = elements.filter(isComplete);
  const credits = complete.map(({ elicitation }) => creditOf(item, elicitation)).sort((a, b) => b - a);
  const credited = credits.filter((credit) => credit > 0).length;
  const essential = essentialOf(item, elements);
  const content = contentOf(context, item, elements, needs, essential);
  const counts = content === "complete" || content === "partial" || content === "incorrect";
  // Where something stands wrongly or what is essential is missing, the rest of the item cannot make it whole.
  const paid = content === "complete" ? needs : needs - 1;
  const earned = counts ? (item.weight * credits.slice(0, paid).reduce((sum, credit) => sum + credit, 0)) / needs : 0;
  const confidence = confidenceOf(content, elements.map((element, place) => chancesOf(element, judged[place], essential.includes(element))), needs);
  const first = firstSaid(elements);
  const reduced = [...new Set(complete.flatMap(({ elicitation }) => (elicitation !== null && creditOf(item, elicitation) < 1 ? [elicitation] : [])))];
  const result: ItemResult = {
    id: item.id,
    section,
    label: item.label,
    critical: item.critical,
    weight: item.weight,
    content,
    elicitation: elicitationOf(complete, needs),
    earned: hundredths(earned),
    met: content !== "incorrect" && !notAskedFor(content) && credited >= (item.minimum ?? needs) && essential.every(isComplete),
    elements: elements.map(({ id, label, content: said, elicitation, evidence, confidence: sure, reason }) => ({ id, label, content: said, elicitation, evidence, confidence: hundredths(sure), ...(reason !== undefined && { reason }) })),
    confidence: hundredths(confidence),
    listen: content === "cannot-tell" || (!notAskedFor(content) && confidence < LISTEN_BELOW),
    remarks: [...remarksOf(elements), ...(content === "partial" && complete.length >= needs ? essential.filter((element) => !isComplete(element)).map(({ label }) => `not without: ${label}`) : [])],
    firstSaid: first,
    ...(reduced.length > 0 && { reduced }),
  };
  return { item, result, elements, metConfidence: metConfidenceOf(result, elements, item.minimum ?? needs, essential) };
}

/** Elements without which the item is neither complete nor met. */
function essentialOf(item: Item, elements: readonly JudgedElement[]): JudgedElement[] {
  const ids = new Set(item.elements.filter(({ essential }) => essential === true).map(({ id }) => id));
  return elements.filter(({ id }) => ids.has(id));
}

const isComplete = ({ content }: JudgedElement): boolean => content === "complete";

function contentOf(context: Context, item: Item, elements: JudgedElement[], needs: number, essential: readonly JudgedElement[]): Content {
  if (!applies(item, context.rubric.scenario)) return "not-applicable";
  const count = (content: JudgedElement["content"]) => elements.filter((element) => element.content === content).length;
  const complete = count("complete");
  if (complete >= needs && count("incorrect") === 0 && essential.every(isComplete)) return "complete";
  if (count("incorrect") > 0) return "incorrect";
  if (complete + count("cannot-tell") >= needs && essential.every((element) => isComplete(element) || element.content === "cannot-tell")) return "cannot-tell";
  if (complete > 0) return "partial";
  if (count("cannot-tell") > 0) return "cannot-tell";
  if (item.cue !== undefined && !context.matches.cues.some((cue) => cue.item === item.id)) return "not-offered";
  return "absent";
}

const LATER: readonly Elicitation[] = ["offered", "after-question", "prompted", "confirmed"];

/** Part offered, the rest after a question: by the later part of those that the item needs. */
function elicitationOf(complete: readonly JudgedElement[], needs: number): Elicitation | null {
  const kinds = complete.flatMap(({ elicitation }) => (elicitation === null ? [] : [elicitation])).sort((a, b) => LATER.indexOf(a) - LATER.indexOf(b));
  return kinds[Math.min(needs, kinds.length) - 1] ?? null;
}

/** What was not asked for is no mark to doubt; what cannot be told leaves all open. */
function confidenceOf(content: Content, chances: readonly ElementChances[], needs: number): number {
  if (notAskedFor(content)) return 1;
  return content === "cannot-tell" ? 0.5 : chanceOfContent(content, chances, needs);
}

/** The chance of the essential ones among these elements together, and of the likeliest others until there are enough. */
function chanceOf(elements: readonly JudgedElement[], essential: readonly JudgedElement[], chance: (element: JudgedElement) => number, enough: number): number {
  const taken = elements.filter((element) => essential.includes(element)).map(chance);
  const others = elements.filter((element) => !essential.includes(element)).map(chance).sort((a, b) => b - a);
  return [...taken, ...others.slice(0, Math.max(0, enough - taken.length))].reduce((all, each) => all * each, 1);
}

/** @param least elements that a pass of the item takes, the essential ones among them. */
function metConfidenceOf({ met, content, confidence }: ItemResult, elements: readonly JudgedElement[], least: number, essential: readonly JudgedElement[]): number {
  if (content === "incorrect" || notAskedFor(content)) return confidence;
  const complete = elements.filter(isComplete);
  if (met) return chanceOf(complete, essential, (element) => element.confidence, least);
  // What is missing would have to have been said after all.
  return 1 - chanceOf(elements.filter((element) => !isComplete(element)), essential, (element) => 1 - element.confidence, Math.max(1, least - complete.length));
}

function firstSaid(elements: readonly JudgedElement[]): Evidence | null {
  const all = elements.flatMap(({ evidence, content }) => (content === "complete" || content === "incorrect" ? evidence : []));
  return all.sort((a, b) => a.first - b.first)[0] ?? null;
}

function remarksOf(elements: readonly JudgedElement[]): string[] {
  return elements.flatMap((element) => [
    ...element.slips.map((slip) => `slip put right: ${slip.reason ?? "said wrongly at first"} (${element.label})`),
    ...element.elsewhere.map((other) => `differs from this station's guidance: ${other.reason ?? "right elsewhere"}`),
    ...(element.best?.heard !== undefined && element.best.heard < HEARD_BELOW ? [`rests on words that the recogniser doubts: ${element.label}`] : []),
    ...(element.late.length > 0 && element.content !== "complete" ? [`said only after the time limit: ${element.label}`] : []),
  ]);
}
