import type { RubricChange } from "../../review/changes.ts";
import type { Cause, ItemChange, ItemMark, ResultOf, RubricComparison } from "../../review/compare.ts";
import { number } from "../figures.ts";
import { MARK_WORD } from "../style.ts";

/* The words that every form of a comparison uses. */

export const KEPT = "The version number is the same, though marks can change: raise it.";

/** What stands above a comparison of two rubrics that are no versions of one another; null of two versions. */
export function twoRubrics({ before, after }: Pick<RubricComparison, "before" | "after">): string | null {
  return before.id === after.id ? null : `These are two rubrics, '${before.id}' and '${after.id}', and no two versions of one: only items with the same id are compared.`;
}

export function versionWords({ id, version, hash, file }: RubricComparison["before"]): string {
  return `${file} (${id}, version ${version}, content ${hash.slice(0, 12)})`;
}

/** What is changed, in words: "shake", "hold/long-enough", "unsafe share-bottle", "pass". */
export function partName({ kind, id }: Pick<RubricChange, "kind" | "id">): string {
  if (kind === "item" || kind === "element") {
    const [item, element] = id.split("/");
    return element === item || element === undefined ? item! : id;
  }
  return id === "" ? kind : `${kind} ${id}`;
}

export function markFigures({ earned, weight, critical, met }: ItemMark): string {
  return `${number(earned, 2)}/${number(weight, 2)}${critical ? (met ? " critical, met" : " critical, not met") : ""}`;
}

export function markWords(given: ItemMark | null): string {
  return given === null ? "not in it" : `${MARK_WORD[given.content]} ${markFigures(given)}`;
}

export function elementWords({ elements }: Pick<ItemChange, "elements">): string {
  const word = (content: string | null) => (content === null ? "not in it" : (MARK_WORD[content as keyof typeof MARK_WORD] ?? content));
  return elements.map(({ id, before, after }) => `${id}: ${word(before)} -> ${word(after)}`).join("; ");
}

export function resultWords(before: ResultOf, after: ResultOf): string[] {
  const figure = ({ percent, earned, available }: ResultOf) => `${percent === null ? "no total" : `${number(percent)}%`} (${number(earned, 2)} of ${number(available, 2)})`;
  const outcome = before.outcome === after.outcome ? `${after.outcome}, as before` : `${before.outcome} -> ${after.outcome}`;
  return [figure(before) === figure(after) ? `${figure(after)}, as before` : `${figure(before)} -> ${figure(after)}`, `; ${outcome}`];
}

/** Changes are named by their number in the list above. */
export function causeWords({ how, changes }: Cause): string {
  const names = `${changes.length === 1 ? "change" : "changes"} ${changes.map((place) => place + 1).join(", ")}`;
  switch (how) {
    case "alone":
      return changes.length === 1 ? `because of ${names}` : `because of ${names}, each by itself`;
    case "elsewhere":
      return `because of ${names}, to another part`;
    case "together":
      return `because of ${names} together`;
    case "mixed":
      return `because of ${names}, but not without changes to other parts`;
    case "untried":
      return `probably because of ${names} (too many to try one by one)`;
  }
}
