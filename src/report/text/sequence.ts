import type { MarkSheet } from "../../scoring/types.ts";
import { number, plural } from "../figures.ts";
import { faint, strong, styled, type Page } from "../page.ts";
import { spoken } from "./evidence.ts";
import { lasting } from "./time.ts";

/** Order, what was said twice, and what was not the station's business. */
export function sequence(page: Page, sheet: MarkSheet): void {
  page.heading("Order");
  const { inOrder, broken } = sheet.order;
  page.entry({
    body:
      inOrder === null
        ? "not measurable: fewer than two items were plainly said"
        : `${inOrder.longest} of the ${inOrder.said} items plainly said follow the rubric's order, which is free but for the pairs it names`,
  });
  const label = (id: string) => sheet.items.find((item) => item.id === id)?.label ?? id;
  if (broken.length === 0) page.entry({ body: "no such pair was taught the wrong way round" });
  for (const { first, then, severity, reason, firstSaid, thenSaid } of broken) {
    page.entry({
      indent: 2,
      lead: styled(severity, severity === "minor" ? "fair" : "bad"),
      hang: 10,
      body: [strong(label(first)), " must come before ", strong(label(then)), `: ${reason}`],
    });
    page.entry({ indent: 12, body: ["came first ", spoken(thenSaid, page.symbols)] });
    page.entry({ indent: 12, body: ["came after ", spoken(firstSaid, page.symbols)] });
  }
  repeats(page, sheet);
  asides(page, sheet);
}

function repeats(page: Page, { repeats: list }: MarkSheet): void {
  page.heading("Needless repeats");
  if (list.length === 0) {
    page.entry({ body: "none found" });
    return;
  }
  const seconds = list.every((repeat) => repeat.seconds !== null) ? list.reduce((sum, repeat) => sum + repeat.seconds!, 0) : null;
  const words = list.reduce((sum, repeat) => sum + repeat.words, 0);
  const cost = seconds === null ? "" : `, ${lasting(seconds)}`;
  page.entry({ body: `${plural(list.length, "repeat")}: ${number(words)} words${cost}` });
  page.entry({ body: faint("Teach-back, a repeat the patient asked for and a short closing summary are not counted.") });
  for (const { label, firstSaid, again, seconds: each, words: count } of list) {
    const right = each === null ? plural(count, "word") : lasting(each);
    page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: strong(label), right });
    page.entry({ indent: 4, body: ["first ", spoken(firstSaid, page.symbols)] });
    page.entry({ indent: 4, body: ["again ", spoken(again, page.symbols)] });
  }
}

function asides(page: Page, { asides: list }: MarkSheet): void {
  if (list.length === 0) return;
  page.heading("Asides");
  const seconds = list.every((aside) => aside.seconds !== null) ? list.reduce((sum, aside) => sum + aside.seconds!, 0) : null;
  const words = list.reduce((sum, aside) => sum + aside.words, 0);
  page.entry({ body: `${plural(list.length, "aside")}: ${number(words)} words${seconds === null ? "" : `, ${lasting(seconds)}`}` });
  page.entry({ body: faint("Talk of other people and other things, as far as words tell: what could be left out when time is short.") });
  for (const { evidence, words: count, seconds: each } of list) {
    page.entry({ indent: 2, lead: page.symbols.bullet, hang: 2, body: spoken(evidence, page.symbols), right: each === null ? plural(count, "word") : lasting(each) });
  }
}
