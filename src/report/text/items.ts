import type { Elicitation } from "../../matching/types.ts";
import { isDecided, notAskedFor } from "../../scoring/content.ts";
import type { ElementResult, ItemResult, MarkSheet, SectionResult, ToolMark } from "../../scoring/types.ts";
import { clock, number, percent } from "../figures.ts";
import { faint, flatten, strong, styled, type Page, type Text } from "../page.ts";
import { MARK_STYLE, MARK_WORD } from "../style.ts";
import { padEnd } from "../width.ts";
import { listenPlaces, spoken } from "./evidence.ts";

const WORD_COLUMNS = 13;
const INDENT = 2;
/** From here on there is room to set the details under the item's name. */
const ROOMY = 76;
/** One place proves an element; a second shows a repeat. More only lengthen the sheet, the JSON has them all. */
const QUOTES_SHOWN = 2;
const SURE_COLUMNS = 5;

export const ELICITATION: Record<Elicitation, string> = {
  offered: "offered",
  "after-question": "after the patient asked",
  prompted: "after a prompt",
  confirmed: "the patient said it, the candidate confirmed it",
};

export function items(page: Page, sheet: MarkSheet): void {
  page.heading("Items");
  const marksColumns = Math.max(5, ...sheet.items.map((item) => marks(item).length));
  page.entry({
    indent: INDENT,
    lead: faint("mark"),
    hang: WORD_COLUMNS + 2,
    body: faint("item"),
    right: faint(`${"marks".padStart(marksColumns)}${"sure".padStart(SURE_COLUMNS)}`),
  });
  const listed = new Set(sheet.sections.map(({ id }) => id));
  for (const section of sheet.sections) {
    sectionHead(page, section);
    for (const item of sheet.items) if (item.section === section.id) one(page, item, marksColumns);
  }
  for (const item of sheet.items) if (!listed.has(item.section)) one(page, item, marksColumns);
}

function sectionHead(page: Page, { title, earned, available, coverage, seconds }: SectionResult): void {
  page.blank();
  const facts = coverage === null ? ["nothing counts"] : [`${number(earned, 2)} of ${number(available, 2)}`, percent(coverage)];
  if (seconds !== null) facts.push(`${clock(seconds)} of talk`);
  page.entry({ body: strong(title), right: facts.join(` ${page.symbols.dot} `) });
}

function marks(item: ItemResult): string {
  return isDecided(item.content) ? `${number(item.earned, 2)}/${number(item.weight, 2)}` : "-";
}

function one(page: Page, item: ItemResult, marksColumns: number): void {
  const style = MARK_STYLE[item.content];
  const outside = notAskedFor(item.content);
  const how = item.elicitation !== null && item.elicitation !== "offered" ? faint(` (${ELICITATION[item.elicitation]})`) : "";
  // How sure the tool was is said of its own mark, below.
  const sure = outside ? "" : item.overruled === undefined ? percent(item.confidence * 100) : "hand";
  page.entry({
    indent: INDENT,
    lead: styled(`${page.symbols.mark[item.content]} ${padEnd(MARK_WORD[item.content], WORD_COLUMNS - 1)}`, style),
    hang: WORD_COLUMNS + 2,
    body: [item.label, item.critical ? [" ", strong("CRITICAL")] : "", how],
    right: outside ? "" : `${marks(item).padStart(marksColumns)}${sure.padStart(SURE_COLUMNS)}`,
  });
  const indent = page.width >= ROOMY ? INDENT + WORD_COLUMNS + 2 : 6;
  if (item.overruled !== undefined) page.entry({ indent, body: overruledBy(page, item, item.overruled) });
  if (outside) return;
  if (item.elements.length === 1 && item.elements[0]!.label === item.label) single(page, item.elements[0]!, indent);
  else several(page, item, indent);
  const why = whyThisMany(item);
  if (why !== null) page.entry({ indent, body: faint(why) });
  for (const remark of item.remarks) page.entry({ indent, lead: page.symbols.bullet, hang: 2, body: remark });
  if (item.listen) page.entry({ indent, body: styled(listenHint(item), "doubt") });
}

/** The audit line: who, when, and the tool's own mark beside the one that counts. */
function overruledBy(page: Page, { weight }: ItemResult, { by, when, tool }: NonNullable<ItemResult["overruled"]>): Text {
  return [strong("overruled"), ` by ${by}, ${when}; the tool's mark: `, toolMark(page, tool, weight)];
}

export function toolMark(page: Page, { content, earned, confidence }: ToolMark, weight: number): string {
  return [`${page.symbols.mark[content]} ${MARK_WORD[content]}`, ...(isDecided(content) ? [`${number(earned, 2)}/${number(weight, 2)}`] : []), `${percent(confidence * 100)} sure`].join(", ");
}

const LESS: Record<Exclude<Elicitation, "offered">, string> = {
  "after-question": "what came only after the patient asked",
  prompted: "what came only after a prompt",
  confirmed: "what the patient said and the candidate confirmed",
};

/** Where the word for the mark and its number do not go together by themselves. */
function whyThisMany(item: ItemResult): string | null {
  if (!isDecided(item.content) || item.earned >= item.weight) return null;
  const marked = `${number(item.earned, 2)} of ${number(item.weight, 2)}`;
  if (item.content === "incorrect") return item.earned > 0 ? `${marked}: for what was said rightly beside what was said wrongly` : null;
  // Only where the rubric gives less for it: what is missing is listed below anyway.
  const later = new Set((item.reduced ?? []).flatMap((elicitation) => (elicitation === "offered" ? [] : [LESS[elicitation]])));
  if (later.size === 0 || (item.content !== "complete" && item.content !== "partial")) return null;
  return `${marked}: ${[...later].join(" and ")} earns ${item.earned > 0 ? "less" : "nothing"}`;
}

function single(page: Page, { evidence, reason, content }: ElementResult, indent: number): void {
  if (reason !== undefined) page.entry({ indent, body: styled(reason, MARK_STYLE[content]) });
  for (const piece of evidence.slice(0, QUOTES_SHOWN)) page.entry({ indent, body: spoken(piece, page.symbols) });
  more(page, evidence.length, indent);
}

/** Elements with something to show one by one; those simply not found together: that they were not said is more than the words can tell. */
function several(page: Page, { elements, content, overruled }: ItemResult, indent: number): void {
  const silent = elements.filter((element) => element.content === "absent" && element.reason === undefined && element.evidence.length === 0);
  for (const element of elements) if (!silent.includes(element)) oneOfMany(page, element, indent);
  if (silent.length === 0) return;
  const needless = content === "complete" && overruled === undefined;
  page.entry({
    indent,
    lead: styled(page.symbols.mark.absent, needless ? "faint" : MARK_STYLE.absent),
    hang: 2,
    body: [styled(needless ? "not needed, not found: " : "not found: ", needless ? "faint" : "poor"), silent.map(({ label }) => label).join("; ")],
  });
}

function oneOfMany(page: Page, element: ElementResult, indent: number): void {
  const { label, content, evidence, reason, elicitation } = element;
  const body: Text[] = [label];
  if (content === "absent") body.push(": ", styled("not found", "poor"));
  if (content === "incorrect") body.push(": ", styled("said wrongly", "bad"));
  if (content === "cannot-tell") body.push(": ", styled("cannot tell", "doubt"));
  if (reason !== undefined) body.push(`, ${reason}`);
  if (content === "complete" && elicitation !== null && elicitation !== "offered") body.push(faint(` (${ELICITATION[elicitation]})`));
  page.entry({ indent, lead: styled(page.symbols.mark[content], MARK_STYLE[content]), hang: 2, body: flatten(body) });
  for (const piece of evidence.slice(0, QUOTES_SHOWN)) page.entry({ indent: indent + 2, body: spoken(piece, page.symbols) });
  more(page, evidence.length, indent + 2);
}

function more(page: Page, count: number, indent: number): void {
  if (count > QUOTES_SHOWN) page.entry({ indent, body: faint(`and ${count - QUOTES_SHOWN} more (all in --format json)`) });
}

function listenHint(item: ItemResult): string {
  const { confidence } = item;
  const places = listenPlaces(item);
  const sure = `only ${percent(confidence * 100)} sure`;
  return places.length > 0 ? `LISTEN at ${places.join(", ")}: ${sure}` : `LISTEN for it: not found, but ${sure}`;
}
