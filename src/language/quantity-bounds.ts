import type { QuantityMention } from "./quantity-mention.ts";
import type { Token } from "./token.ts";

/** Between the least and the most: "no lower than two, and it should be no higher than three". */
const JOINS = /^(and|but|or|nor|also|then|it|is|should|be|definitely|certainly|never|no|not)$/;
const JOINS_LIMIT = 4;

/** "No lower than two and no higher than three" is a range told by its ends: one mention of it in place of two. */
export function joinBounds(mentions: readonly QuantityMention[], tokens: readonly Token[]): QuantityMention[] {
  const joined: QuantityMention[] = [];
  for (const mention of mentions) {
    const before = joined.at(-1);
    const range = before === undefined ? null : rangeOfBounds(before, mention, tokens);
    if (range === null) joined.push(mention);
    else joined[joined.length - 1] = range;
  }
  return joined;
}

function rangeOfBounds(one: QuantityMention, other: QuantityMention, tokens: readonly Token[]): QuantityMention | null {
  const [least, most] = one.bound === "at-least" ? [one, other] : [other, one];
  if (least.bound !== "at-least" || most.bound !== "at-most" || least.high > most.low || one.aim || other.aim) return null;
  if (one.kind !== "amount" || other.kind !== "amount" || (one.unit !== other.unit && one.unit !== null && other.unit !== null)) return null;
  const between = tokens.slice(one.end, other.first);
  if (between.length > JOINS_LIMIT || between.some(({ text, after }) => !JOINS.test(text) || /[.?!]/.test(after)) || /[.?!]/.test(tokens[one.end - 1]!.after)) return null;
  return {
    ...most, low: least.low, high: most.high, unit: one.unit ?? other.unit, bound: "exact", firm: one.firm || other.firm,
    first: one.first, end: other.end, text: tokens.slice(one.first, other.end).map(({ text }) => text).join(" "),
  };
}
