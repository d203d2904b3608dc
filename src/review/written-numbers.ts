import { wordWeight } from "../language/lexicon.ts";
import { compareQuantity } from "../language/quantity-compare.ts";
import { findQuantities, type ExpectedQuantity, type QuantityMention } from "../language/quantity.ts";
import { tokenise, type Token } from "../language/token.ts";
import { hasPlace } from "../rubric/notation.ts";
import type { Rubric } from "../rubric/schema.ts";
import { expectedQuantity } from "./expected-quantity.ts";
import type { Readings } from "./readings.ts";
import type { SaidElement } from "./utterances.ts";

/**
 * Responses that write the element's number out ("take one tablet every morning") where others have `{quantity}`. They are
 * words like any other to the matcher: "take four tablets every morning" fits them nearly as well, and nothing compares it.
 */
export function writtenNumbers(elements: readonly SaidElement[], rubric: Rubric): Readings["written"] {
  let response = -1;
  return elements.flatMap(({ element, said }) => {
    const expected = expectedQuantity(element.quantity, rubric);
    return element.say.flatMap((phrase, place) => {
      response += 1;
      if (expected === null || hasPlace(phrase, "quantity")) return [];
      const number = numberIn(said[place]?.[0] ?? "", expected);
      return number === null ? [] : [{ response, number }];
    });
  });
}

/** "Every day" says that something is a habit, and is said whatever the number is. */
const HABIT = /^(every|each) \w+$/;

/** The right number of a sentence that says more than it. */
function numberIn(said: string, expected: ExpectedQuantity): string | null {
  const tokens = tokenise(said.split(" "));
  const mention = findQuantities(tokens).find((candidate) => isWrittenOut(candidate, expected));
  return mention === undefined || !saysMore(tokens, mention) ? null : mention.text;
}

function isWrittenOut(mention: QuantityMention, expected: ExpectedQuantity): boolean {
  // "Twice" may stand for two sprays, and contradicts no other number of them.
  const stands = mention.unit === "time" && expected.unit !== "time";
  return !stands && mention.firm && !mention.vague && !HABIT.test(mention.text) && compareQuantity(mention, expected) === "right";
}

/** A response that is the number alone is found by its very words, so no other number fits it. */
function saysMore(tokens: readonly Token[], { first, end }: QuantityMention): boolean {
  return tokens.some((token, place) => (place < first || place >= end) && wordWeight(token.stem) > 0);
}
