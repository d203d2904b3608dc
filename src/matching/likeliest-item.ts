import type { Passage } from "./passages.ts";

/** A yes or no is said to one thing, and its words fit others by chance: of passages those of the item that is likeliest. */
export function ofLikeliestItem(passages: readonly Passage[]): Passage[] {
  const most = Math.max(...passages.map(({ likelihood = 1 }) => likelihood));
  const items = new Set(passages.filter(({ likelihood = 1 }) => likelihood === most).map(({ element }) => element.item));
  return passages.filter(({ element }) => items.has(element.item));
}

/** The same of wrong ones: what the rubric lists as wrong, which alone has a likelihood, goes before what is only the opposite of something right. */
export function ofLikeliestWrong(passages: readonly Passage[]): Passage[] {
  const listed = passages.filter(({ likelihood }) => likelihood !== undefined);
  return ofLikeliestItem(listed.length > 0 ? listed : passages);
}
