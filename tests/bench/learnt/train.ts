import { statementKey } from "../../../src/rubric/learnt-keys.ts";
import type { StretchWords } from "../../../src/matching/learnt/stretch-words.ts";
import type { Element, Learnt, Rubric } from "../../../src/rubric/schema.ts";
import { fitLine, valueOf, type Line } from "../newton-logistic.ts";
import type { MarkedSaying } from "./marked-sayings.ts";

/** Penalties, chosen on sayings of hands e and o by lines learnt without them. */
const RIDGE = { about: 0.15, turned: 0.3, anyhow: 20 } as const;
/** So much of what sounds wrong of anything counts for each thing. */
const ANYHOW = 0.6;
/** Parts of the sayings that each get what sounds wrong of anything from the others. */
const FOLDS = 5;
/** Sayings of others that are most like an element's, and some spread over the rest, a rubric: what it is told from. */
const NEAREST = 100;
const SPREAD = 200;
/** An element of so many rubrics or more is told from the others of so many. */
const MOST_RUBRICS = 4;
/** Fewer right or wrong ones teach nothing. */
const FEWEST = 4;
/** Weights nearer to nought are left out. */
const LEAST_WEIGHT = 0.35;
const LEAST_ANYHOW = 0.1;

/**
 * Learns the elements and unsafe statements of rubrics from the sayings about them. An element that stands in several
 * rubrics under one label, as those of the shared blocks do, is learnt from the sayings about all of them.
 */
export function learnt(rubrics: readonly Rubric[], sayings: readonly MarkedSaying[]): Map<string, Learnt> {
  const own = new Map(rubrics.map(({ id }) => [id, sayings.filter(({ rubric }) => rubric === id)]));
  const anyhow = whateverTheElement(sayings);
  const shared = sharedElements(rubrics);
  const result = new Map<string, Learnt>(rubrics.map(({ id }) => [id, { elements: {}, anyhow: rounded(ANYHOW * anyhow.line.start), words: {} }]));
  const lines = new Map<string, { about: Line; turned: Line } | null>();
  for (const rubric of rubrics) {
    const into = result.get(rubric.id)!;
    for (const { key, element } of elementsOf(rubric)) {
      const name = sharedName(key, element);
      if (!lines.has(name)) lines.set(name, linesOfElement(key, element, shared.get(name)!.flatMap((id) => own.get(id) ?? []), shared.get(name)!.length, anyhow.known));
      const found = lines.get(name)!;
      if (found !== null) put(into, key, { label: element.label, numbers: element.quantity === undefined }, found.about, found.turned);
    }
    for (const { id, label, quantity } of rubric.unsafe) {
      const line = statementLine(id, quantity === undefined ? "numbers" : "numberless", own.get(rubric.id) ?? []);
      if (line !== null) put(into, statementKey(id), { label, numbers: quantity === undefined }, line, NO_LINE);
    }
    const place = Object.keys(into.elements).length;
    for (const [word, weight] of anyhow.line.words) {
      if (Math.abs(ANYHOW * weight) >= LEAST_ANYHOW) rowOf(into, word).push(place, 0, rounded(ANYHOW * weight));
    }
  }
  return result;
}

type Kind = keyof MarkedSaying["saying"]["wording"];

const elementsOf = (rubric: Rubric) => rubric.sections.flatMap(({ items }) => items).flatMap((item) => item.elements.map((element) => ({ key: `${item.id}/${element.id}`, element })));
const sharedName = (key: string, { label, quantity }: Element) => `${key}\n${label}\n${quantity === undefined}`;

/** Ids of the rubrics in which an element stands, by its name. */
function sharedElements(rubrics: readonly Rubric[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const rubric of rubrics) {
    for (const { key, element } of elementsOf(rubric)) found.set(sharedName(key, element), [...(found.get(sharedName(key, element)) ?? []), rubric.id]);
  }
  return found;
}

/** Of nothing in particular: what sounds wrong, and, of each saying, how wrong it sounds by what others say. */
function whateverTheElement(sayings: readonly MarkedSaying[]): { line: Line; known: ReadonlyMap<MarkedSaying, number> } {
  const clear = sayings.filter(({ right, wrong }) => (right.length === 0) !== (wrong.length === 0));
  const fit = (some: readonly MarkedSaying[]) => fitLine(some.map(({ saying, wrong }) => ({ words: saying.wording.numberless, known: 0, truth: wrong.length > 0 })), RIDGE.anyhow);
  const known = new Map<MarkedSaying, number>();
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const line = fit(clear.filter((_, at) => at % FOLDS !== fold));
    clear.forEach((one, at) => {
      if (at % FOLDS === fold) known.set(one, ANYHOW * valueOf(line, one.saying.wording.numberless));
    });
  }
  const line = fit(clear);
  // What says one thing rightly and another wrongly taught the line nothing.
  for (const one of sayings) if (!known.has(one)) known.set(one, ANYHOW * valueOf(line, one.saying.wording.numberless));
  return { line, known };
}

/** @param rubrics how many the sayings are about. @returns null where too few say it. */
function linesOfElement(key: string, { quantity }: Element, sayings: readonly MarkedSaying[], rubrics: number, known: ReadonlyMap<MarkedSaying, number>): { about: Line; turned: Line } | null {
  const kind: Kind = quantity === undefined ? "numbers" : "numberless";
  // Which elements a saying of the drills states that is about something unsafe nobody has marked.
  const marked = sayings.filter(({ unsafe, safe, judged }) => (unsafe.length === 0 && safe.length === 0) || judged === null);
  const right = marked.filter((one) => one.right.includes(key));
  const wrong = marked.filter((one) => one.wrong.includes(key) && !one.right.includes(key));
  if (right.length < FEWEST || wrong.length < FEWEST) return null;
  const spoken = [...right, ...wrong];
  const others = marked.filter((one) => !one.right.includes(key) && !one.wrong.includes(key) && one.judged?.includes(key) !== true);
  // What was judged and does not say it is the hardest to tell it from.
  const near = marked.filter((one) => one.judged?.includes(key) === true && one.right.length === 0 && one.wrong.length === 0);
  return {
    about: lineOf(spoken, [...near, ...told(spoken, others, kind, Math.min(MOST_RUBRICS, rubrics))], kind, RIDGE.about),
    turned: lineOf(wrong, right, kind, RIDGE.turned, known),
  };
}

function statementLine(id: string, kind: Kind, sayings: readonly MarkedSaying[]): Line | null {
  const stated = sayings.filter(({ unsafe }) => unsafe.includes(id));
  if (stated.length < FEWEST) return null;
  // What is stated wrongly may be unsafe too, unless somebody marked it for that.
  const others = sayings.filter(({ unsafe, safe, wrong, judged }) => !unsafe.includes(id) && !safe.includes(id) && (judged === null || (wrong.length === 0 && unsafe.length === 0)));
  const near = sayings.filter(({ safe }) => safe.includes(id));
  return lineOf(stated, [...near, ...told(stated, others, kind, 1)], kind, RIDGE.about);
}

/** Of a statement nothing is turned. */
const NO_LINE: Line = { start: 0, words: new Map() };

/** Puts an element's lines behind those that are there. */
function put(into: Learnt, key: string, { label, numbers }: { label: string; numbers: boolean }, about: Line, turned: Line): void {
  const place = Object.keys(into.elements).length;
  for (const word of new Set([...about.words.keys(), ...turned.words.keys()])) {
    const [a, t] = [rounded(about.words.get(word) ?? 0), rounded(turned.words.get(word) ?? 0)];
    if (Math.abs(a) < LEAST_WEIGHT && Math.abs(t) < LEAST_WEIGHT) continue;
    rowOf(into, word).push(place, a, t);
  }
  into.elements[key] = { label, place, about: rounded(about.start), turned: rounded(turned.start), numbers };
}

const rowOf = ({ words }: Learnt, word: string) => (Object.hasOwn(words, word) ? words[word]! : (words[word] = []));
const rounded = (value: number) => Math.round(value * 100) / 100;

/** Of the others those most like the element's own, and of the rest every so many. */
function told(own: readonly MarkedSaying[], others: readonly MarkedSaying[], kind: Kind, times: number): MarkedSaying[] {
  const sum = new Map<string, number>();
  for (const { saying } of own) for (const [word, share] of saying.wording[kind]) sum.set(word, (sum.get(word) ?? 0) + share);
  const alike = ({ saying }: MarkedSaying) => [...saying.wording[kind]].reduce((total, [word, share]) => total + share * (sum.get(word) ?? 0), 0);
  const sorted = others.map((one, at) => ({ one, at, alike: alike(one) })).sort((a, b) => b.alike - a.alike || a.at - b.at).map(({ one }) => one);
  const rest = sorted.slice(NEAREST * times);
  const step = Math.max(1, Math.floor(rest.length / (SPREAD * times)));
  return [...sorted.slice(0, NEAREST * times), ...rest.filter((_, place) => place % step === 0).slice(0, SPREAD * times)];
}

function lineOf(yes: readonly MarkedSaying[], no: readonly MarkedSaying[], kind: Kind, ridge: number, known?: ReadonlyMap<MarkedSaying, number>): Line {
  const cases = (some: readonly MarkedSaying[], truth: boolean) => some.map((one) => ({ words: one.saying.wording[kind] as StretchWords, known: known === undefined ? 0 : known.get(one)!, truth }));
  return fitLine([...cases(yes, true), ...cases(no, false)], ridge);
}
