import { remembered } from "./remembered.ts";
import type { Response } from "./response.ts";
import type { Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * "Once you're settled it's every couple of days" has most words of "once it settles it's every couple of months", and
 * another period in their place. Numbers that an element waits for are compared as amounts (quantity-gate.ts); this is
 * for those that stand in a response as words.
 */

const PERIOD = /^(day|night|evening|morning|week|fortnight|month|year)s?$/;
const periodsIn = (text: string): string[] => text.split("|").filter((word) => PERIOD.test(word)).map((word) => word.replace(/s$/, ""));
/** Stand before a period that tells how often. */
const RATES = /^(every|each|couple|few|once|twice|several|other)$/;
/** So soon behind such a word its period is named: "every couple of months". */
const WITHIN = 3;

/** Places of terms that tell how often, each with the periods that follow it. */
const ratesOf = remembered(({ terms }: Response) =>
  terms.flatMap(({ text }, place) => {
    const period = terms.findIndex((term, other) => other > place && other <= place + WITHIN && periodsIn(term.text).length > 0);
    return period >= 0 && text.split("|").some((word) => RATES.test(word)) ? [{ place, period, periods: periodsIn(terms[period]!.text) }] : [];
  }),
);

/** Whether what is said names another period than the response where that tells how often. */
export function namesAnotherPeriod({ response, aligned }: Window, { tokens }: Stream): boolean {
  const rates = ratesOf(response);
  // Most responses tell no such thing, and end here.
  if (rates.length === 0) return false;
  return rates.some(({ place, period, periods }) => {
    const said = aligned.find(({ term }) => term === place);
    if (said === undefined || !RATES.test(tokens[said.hit.first]!.text) || aligned.some(({ term }) => term === period)) return false;
    const named = tokens.slice(said.hit.end, said.hit.end + WITHIN).flatMap(({ text }) => periodsIn(text));
    return named.length > 0 && !named.some((one) => periods.includes(one));
  });
}
