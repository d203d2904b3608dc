import { statementKey } from "../../../src/rubric/learnt.ts";
import type { StretchWords } from "../../../src/matching/learnt/stretch-words.ts";
import type { Learnt, Rubric } from "../../../src/rubric/schema.ts";
import { fitKernel } from "../kernel-logistic.ts";
import type { MarkedSaying } from "./marked-sayings.ts";

/** Penalties, chosen on sayings of hands y and z by lines learnt without them. */
const RIDGE = { about: 0.5, turned: 0.3 } as const;
/** Sayings of others that are most like an element's, and as many spread over the rest: what it is told from. */
const NEAREST = 100;
const SPREAD = 100;
/** Fewer right or wrong ones teach nothing. */
const FEWEST = 4;
/** Weights nearer to nought are left out. */
const LEAST_WEIGHT = 0.12;

/** Learns the elements of one rubric from the sayings about it. */
export function learnt(rubric: Rubric, sayings: readonly MarkedSaying[]): Learnt {
  const own = sayings.filter((one) => one.rubric === rubric.id);
  const result: Learnt = { elements: {}, words: {} };
  const grams = { numbers: gramOf(own.map(({ saying }) => saying.wording.numbers)), numberless: gramOf(own.map(({ saying }) => saying.wording.numberless)) };
  for (const item of rubric.sections.flatMap(({ items }) => items)) {
    for (const element of item.elements) {
      const key = `${item.id}/${element.id}`;
      const numbers = element.quantity === undefined;
      const kind = numbers ? "numbers" : "numberless";
      const gram = grams[kind];
      const wording = (at: number) => own[at]!.saying.wording[kind];
      // Which elements an unsafe saying of the drills states wrongly nobody has marked.
      const places = own.flatMap(({ unsafe, judged }, at) => (unsafe.length > 0 && judged !== null ? [] : [at]));
      const right = places.filter((at) => own[at]!.right.includes(key));
      const wrong = places.filter((at) => own[at]!.wrong.includes(key) && !own[at]!.right.includes(key));
      if (right.length < FEWEST || wrong.length < FEWEST) continue;
      const spoken = [...right, ...wrong];
      const others = places.filter((at) => !own[at]!.right.includes(key) && !own[at]!.wrong.includes(key) && !(own[at]!.judged?.includes(key) === true));
      // What was judged and does not say it is the hardest to tell it from.
      const near = places.filter((at) => own[at]!.judged?.includes(key) === true && own[at]!.right.length === 0 && own[at]!.wrong.length === 0);
      const against = [...near, ...told(spoken, others, gram)];
      const about = lineOf(spoken, against, gram, RIDGE.about, wording);
      const turned = lineOf(wrong, right, gram, RIDGE.turned, wording);
      put(result, key, { label: element.label, numbers }, about, turned);
    }
  }
  for (const { id, label, quantity } of rubric.unsafe) {
    const numbers = quantity === undefined;
    const kind = numbers ? "numbers" : "numberless";
    const stated = own.flatMap(({ unsafe }, at) => (unsafe.includes(id) ? [at] : []));
    // What is stated wrongly may be unsafe too, unless somebody marked it for that.
    const others = own.flatMap(({ unsafe, wrong, judged }, at) => (unsafe.includes(id) || (judged !== null && wrong.length > 0) || (judged !== null && unsafe.length > 0) ? [] : [at]));
    if (stated.length < FEWEST) continue;
    const line = lineOf(stated, told(stated, others, grams[kind]), grams[kind], RIDGE.about, (at) => own[at]!.saying.wording[kind]);
    // As the shipped lines were written: here a weight is left out before it is rounded.
    const words = new Map([...line.words].filter(([, weight]) => Math.abs(weight) >= LEAST_WEIGHT));
    put(result, statementKey(id), { label, numbers }, { ...line, words }, NO_LINE);
  }
  return result;
}

/** A straight line over words. */
interface Line {
  start: number;
  words: Map<string, number>;
}

/** Of a statement nothing is turned. */
const NO_LINE: Line = { start: 0, words: new Map() };

/** Puts an element's lines behind those that are there. */
function put(into: Learnt, key: string, { label, numbers }: { label: string; numbers: boolean }, about: Line, turned: Line): void {
  const place = Object.keys(into.elements).length;
  for (const word of new Set([...about.words.keys(), ...turned.words.keys()])) {
    const [a, t] = [rounded(about.words.get(word) ?? 0), rounded(turned.words.get(word) ?? 0)];
    if (Math.abs(a) < LEAST_WEIGHT && Math.abs(t) < LEAST_WEIGHT) continue;
    (Object.hasOwn(into.words, word) ? into.words[word]! : (into.words[word] = [])).push(place, a, t);
  }
  into.elements[key] = { label, place, about: rounded(about.start), turned: rounded(turned.start), numbers };
}

const rounded = (value: number) => Math.round(value * 100) / 100;

/** Of the others those most like the element's own, and of the rest every so many. */
function told(own: readonly number[], others: readonly number[], gram: readonly Float64Array[]): number[] {
  const alike = (at: number) => own.reduce((sum, one) => sum + gram[at]![one]!, 0);
  const sorted = others.map((at) => ({ at, alike: alike(at) })).sort((a, b) => b.alike - a.alike || a.at - b.at).map(({ at }) => at);
  const rest = sorted.slice(NEAREST);
  const step = Math.max(1, Math.floor(rest.length / SPREAD));
  return [...sorted.slice(0, NEAREST), ...rest.filter((_, place) => place % step === 0).slice(0, SPREAD)];
}

function lineOf(yes: readonly number[], no: readonly number[], gram: readonly Float64Array[], ridge: number, wording: (at: number) => StretchWords): Line {
  const all = [...yes, ...no];
  const times = fitKernel(all.map((at) => Float64Array.from(all, (other) => gram[at]![other]!)), all.map((_, place) => place < yes.length), ridge);
  const words = new Map<string, number>();
  let start = 0;
  all.forEach((at, place) => {
    start += times[place]!;
    for (const [word, share] of wording(at)) words.set(word, (words.get(word) ?? 0) + share * times[place]!);
  });
  return { start, words };
}

/** Inner products, with 1 for the intercept. */
function gramOf(wordings: readonly StretchWords[]): Float64Array[] {
  const postings = new Map<string, [number, number][]>();
  wordings.forEach((words, at) => {
    for (const [word, share] of words) {
      const known = postings.get(word);
      if (known === undefined) postings.set(word, [[at, share]]);
      else known.push([at, share]);
    }
  });
  return wordings.map((words) => {
    const row = new Float64Array(wordings.length).fill(1);
    for (const [word, share] of words) for (const [at, other] of postings.get(word)!) row[at]! += share * other;
    return row;
  });
}
