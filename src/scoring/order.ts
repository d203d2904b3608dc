import type { Context } from "./context.ts";
import type { JudgedItem } from "./items.ts";
import type { OrderResult } from "./types.ts";

/** Pairs said the wrong way round, and how much of the whole was said in the rubric's order. */
export function orderOf(context: Context, items: readonly JudgedItem[]): OrderResult {
  const said = new Map(items.flatMap(({ result }) => (result.firstSaid === null ? [] : [[result.id, result.firstSaid] as const])));
  const broken = context.rubric.order.flatMap((pair) => {
    const [first, then] = [said.get(pair.first), said.get(pair.then)];
    return first !== undefined && then !== undefined && then.first < first.first ? [{ ...pair, firstSaid: first, thenSaid: then }] : [];
  });
  const places = items.flatMap(({ result }) => (result.firstSaid === null ? [] : [result.firstSaid.first]));
  return { broken, inOrder: places.length < 2 ? null : { longest: longestIncreasing(places), said: places.length } };
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
