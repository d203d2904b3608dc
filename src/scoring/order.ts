import type { Context } from "./context.ts";
import type { WordSpan } from "../station/types.ts";
import type { JudgedItem } from "./items.ts";
import type { OrderResult } from "./types.ts";

/** Pairs said the wrong way round, and how much of the whole was said in the rubric's order. */
export function orderOf(context: Context, items: readonly JudgedItem[]): OrderResult {
  const said = new Map(items.flatMap((item) => (stretchOf(item) === null ? [] : [[item.item.id, stretchOf(item)!] as const])));
  const broken = context.rubric.order.flatMap((pair) => {
    const [first, then] = [said.get(pair.first), said.get(pair.then)];
    // Only where all of the later thing came before any of the earlier one: words overlap in real talk.
    return first !== undefined && then !== undefined && then.last < first.first ? [{ ...pair, firstSaid: context.evidence(first.span), thenSaid: context.evidence(then.span) }] : [];
  });
  const places = items.flatMap(({ item }) => (said.has(item.id) ? [said.get(item.id)!.first] : []));
  return { broken, inOrder: places.length < 2 ? null : { longest: longestIncreasing(places), said: places.length } };
}

/** From where to where the elements of an item are said best; null when none is. */
function stretchOf({ elements }: JudgedItem): { first: number; last: number; span: WordSpan } | null {
  const spans = elements.flatMap(({ best }) => (best === null ? [] : [best.span])).sort((a, b) => a.first - b.first);
  return spans.length === 0 ? null : { first: spans[0]!.first, last: spans[spans.length - 1]!.first, span: spans[0]! };
}

/** Length of the longest increasing subsequence (Schensted 1961, Canadian Journal of Mathematics 13), by patience sorting. */
export function longestIncreasing(values: readonly number[]): number {
  const tails: number[] = [];
  for (const value of values) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (tails[middle]! < value) low = middle + 1;
      else high = middle;
    }
    tails[low] = value;
  }
  return tails.length;
}
