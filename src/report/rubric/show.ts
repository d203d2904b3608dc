import { elementsNeeded, itemsOf } from "../../rubric/items.ts";
import { quantityWords } from "../../rubric/quantity-words.ts";
import type { Element, Fact, Item, Rubric } from "../../rubric/schema.ts";
import { cleanDeep } from "../clean.ts";
import { clock, number, plural, sentence } from "../figures.ts";
import { faint, strong, styled, type Page, type Text } from "../page.ts";
import { pageOf, type Look } from "../page-of.ts";
import { row } from "../text/row.ts";

interface RubricLook extends Look {
  /** Print the acceptable responses, the must-words and what is wrong to say. */
  responses: boolean;
}

/** How many characters of a content hash identify it for a reader. */
const HASH_SHOWN = 12;
/** An element that needs no label of its own: the item's. */
const isShort = (item: Item) => item.elements.length === 1 && item.elements[0]!.id === item.id;

/** A rubric as a page for the person who wants to know what it asks. */
export function rubricPage(raw: Rubric, look: RubricLook): string {
  const rubric = cleanDeep(raw);
  const page = pageOf(look);
  head(page, rubric);
  for (const section of rubric.sections) {
    page.heading(section.title, plural(section.items.length, "item"));
    for (const item of section.items) oneItem(page, rubric, item, look.responses);
  }
  unsafe(page, rubric, look.responses);
  questions(page, rubric, look.responses);
  order(page, rubric);
  sources(page, rubric);
  if (rubric.history.length > 0) {
    page.heading("History");
    for (const line of rubric.history) bullet(page, 0, line);
  }
  return page.toString();
}

function head(page: Page, rubric: Rubric): void {
  const { scenario, time, pass } = rubric;
  const items = itemsOf(rubric);
  page.entry({ body: [styled("Rubric:", "title"), " ", strong(rubric.title)] });
  page.entry({ body: faint(`${rubric.id}, version ${rubric.version}, content ${rubric.hash.slice(0, HASH_SHOWN)}; follows guidance of ${rubric.jurisdiction.join(", ")}`) });
  page.blank();
  row(page, "Task", scenario.task);
  row(page, "Counselled", scenario.counselled === "carer" ? "a carer" : "the patient");
  if (scenario.setting !== undefined) row(page, "Setting", scenario.setting);
  for (const [index, text] of Object.values(scenario.label).map(({ text: line }) => line).entries()) row(page, index === 0 ? "Label" : "", text);
  if (scenario.conditions.length > 0) row(page, "Conditions", scenario.conditions.join(", "));
  row(page, "Time", `limit ${clock(time.limit)}, target ${clock(time.target)}`);
  row(page, "Items", `${items.length}, ${items.filter(({ critical }) => critical).length} critical; ${plural(items.reduce((sum, { weight }) => sum + weight, 0), "mark")} in all`);
  const allowed = (["major", "moderate", "minor"] as const).map((severity) => `${pass.unsafe[severity]} ${severity}`).join(", ");
  row(page, "Pass", `${number(pass.minimum)}% of the total; ${pass.critical === "all" ? "every" : pass.critical} critical ${pass.critical === 1 || pass.critical === "all" ? "item" : "items"} met; unsafe statements allowed: ${allowed}${pass.within_limit ? "; within the limit" : ""}`);
}

function oneItem(page: Page, rubric: Rubric, item: Item, responses: boolean): void {
  const about: string[] = [];
  if (item.kind !== "tell") about.push(item.kind.replaceAll("-", " "));
  if (!isShort(item) && (item.needs !== "all" || item.elements.length > 1)) {
    const needs = elementsNeeded(item);
    const complete = `complete with ${item.needs === "all" ? `all ${needs}` : `${needs} of ${item.elements.length}`}`;
    about.push(item.minimum === undefined || item.minimum === needs ? complete : `${complete}, enough for a pass with ${item.minimum}`);
  }
  const { after_question: asked, prompted, confirmed } = item.credit;
  if (asked !== "full") about.push(`${asked === "none" ? "no" : asked} credit after a question`);
  if (prompted !== "half") about.push(`${prompted === "none" ? "no" : prompted} credit when prompted`);
  if (confirmed !== "half") about.push(`${confirmed === "none" ? "no" : confirmed} credit when confirmed`);
  if (item.when !== undefined) about.push(`only when ${item.when.join(" and ")}`);
  if (item.cue !== undefined) about.push("only when the patient gives the cue");
  const only = isShort(item) ? item.elements[0]! : undefined;
  if (only !== undefined) about.push(...particulars(only, rubric));
  page.entry({
    lead: page.symbols.bullet,
    hang: 2,
    body: [strong(item.label), faint(` (${item.id})`), ...(item.critical ? [" ", styled("CRITICAL", "bad")] : [])],
    right: plural(item.weight, "mark"),
  });
  if (about.length > 0) page.entry({ indent: 2, body: faint(about.join("; ")) });
  if (item.fact !== undefined) page.entry({ indent: 2, body: faint(factWords(item.fact)) });
  if (responses) phrases(page, 2, "cue", item.cue?.patient);
  if (only !== undefined) return detail(page, only, 2, responses);
  for (const element of item.elements) {
    const extra = particulars(element, rubric);
    bullet(page, 2, [element.label, element.essential === true ? " (essential)" : "", faint(` (${element.id})${extra.length > 0 ? `; ${extra.join("; ")}` : ""}`)], "-");
    detail(page, element, 4, responses);
  }
}

function particulars(element: Element, rubric: Rubric): string[] {
  return [
    ...(element.quantity === undefined ? [] : [quantityWords(element.quantity, rubric.scenario.label)]),
    ...(element.red_flag === true ? ["a red flag"] : []),
    ...(element.elsewhere ?? []).map(({ jurisdiction, quantity, note }) => `${whereWords(jurisdiction)}${quantity === undefined ? "" : ` ${quantityWords(quantity, rubric.scenario.label)}`}: ${note}`),
  ];
}

function detail(page: Page, element: Element, indent: number, responses: boolean): void {
  if (element.fact !== undefined) page.entry({ indent, body: faint(factWords(element.fact)) });
  if (!responses) return;
  phrases(page, indent, "say", element.say);
  phrases(page, indent, "must", element.must);
  phrases(page, indent, "not with", element.not_with);
  phrases(page, indent, "wrong", element.incorrect);
  for (const { jurisdiction, say } of element.elsewhere ?? []) phrases(page, indent, whereWords(jurisdiction), say);
  if (element.red_flag === true) phrases(page, indent, "wrong", ["that it is nothing, normal or harmless: it is a red flag"]);
}

const whereWords = (jurisdiction: readonly string[]) => `in ${jurisdiction.join(", ")}`;

/** One phrase a line: they are alternatives and hold bars and brackets of their own. */
function phrases(page: Page, indent: number, name: string, list: readonly string[] | undefined): void {
  for (const [index, phrase] of (list ?? []).entries()) page.entry({ indent, lead: faint(index === 0 ? name : ""), hang: 10, body: phrase });
}

function factWords({ source, jurisdiction, applies_to: applies, review_by: review, note }: Fact): string {
  return [`source: ${source}`, jurisdiction.join(", "), ...(applies === undefined ? [] : [`for ${applies}`]), `review by ${review}`, ...(note === undefined ? [] : [note])].join("; ");
}

function unsafe(page: Page, { unsafe: statements, scenario }: Rubric, responses: boolean): void {
  page.heading("Unsafe statements", String(statements.length));
  if (statements.length === 0) page.entry({ body: "none listed" });
  for (const { id, label, severity, say, must, not_with: notWith, quantity, fact } of statements) {
    page.entry({ lead: page.symbols.bullet, hang: 2, body: [label, faint(` (${id})`)], right: styled(severity, severity === "major" ? "bad" : "plain") });
    if (quantity !== undefined) page.entry({ indent: 2, body: faint(quantityWords(quantity, scenario.label)) });
    if (fact !== undefined) page.entry({ indent: 2, body: faint(factWords(fact)) });
    if (!responses) continue;
    phrases(page, 2, "say", say);
    phrases(page, 2, "must", must);
    phrases(page, 2, "not with", notWith);
  }
}

function questions(page: Page, { scenario }: Rubric, responses: boolean): void {
  page.heading("Questions of the patient", String(scenario.questions.length));
  if (scenario.questions.length === 0) page.entry({ body: "none scripted" });
  for (const { id, says, answered_by: items, answer, incorrect } of scenario.questions) {
    bullet(page, 0, [sentence(says[0]!).replace(/\.$/, "?"), faint(` (${id})${items === undefined ? "" : `; answered by ${items.join(", ")}`}`)]);
    // What no item answers has its answer here alone.
    if (!responses && items === undefined) phrases(page, 2, "answer", answer);
    if (!responses) continue;
    phrases(page, 2, "says", says);
    phrases(page, 2, "answer", answer);
    phrases(page, 2, "wrong", incorrect);
  }
}

function order(page: Page, rubric: Rubric): void {
  page.heading("Order", plural(rubric.order.length, "pair"));
  if (rubric.order.length === 0) page.entry({ body: "no order matters" });
  const labels = new Map(itemsOf(rubric).map(({ id, label }) => [id, label]));
  for (const { first, then, severity, reason } of rubric.order) {
    page.entry({ lead: page.symbols.bullet, hang: 2, body: [labels.get(first) ?? first, strong(" before "), labels.get(then) ?? then], right: severity });
    page.entry({ indent: 2, body: faint(reason) });
  }
}

function sources(page: Page, { sources: list }: Rubric): void {
  page.heading("Sources", String(Object.keys(list).length));
  for (const [key, { body, title, year, detail: where }] of Object.entries(list)) {
    bullet(page, 0, [strong(key), `: ${body}, ${title}, ${year}`, ...(where === undefined ? [] : [faint(` (${where})`)])]);
  }
}

function bullet(page: Page, indent: number, body: Text, lead = page.symbols.bullet): void {
  page.entry({ indent, lead, hang: 2, body });
}
