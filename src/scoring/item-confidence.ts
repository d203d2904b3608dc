import type { Judgement } from "../matching/types.ts";
import type { JudgedElement } from "./elements.ts";
import type { Content } from "./types.ts";

/*
 * How sure an item's mark is, from how sure each of its elements is: the chance that a careful reader, who may take any
 * element otherwise, gives the item the same mark. Elements are taken as independent.
 */

/** What a reader may take an element for, each with its chance; together 1. */
export interface ElementChances {
  complete: number;
  incorrect: number;
  absent: number;
  essential: boolean;
}

/**
 * What the mark leaves open goes to the other two outcomes by how likely both readers hold them.
 * @param judged how likely the likeliest saying says it rightly, and wrongly; undefined where the second reader knows nothing of it.
 */
export function chancesOf({ content, confidence }: Pick<JudgedElement, "content" | "confidence">, judged: Judgement | undefined, essential: boolean): ElementChances {
  const likely = { complete: judged?.right ?? 1, incorrect: judged?.wrong ?? 1, absent: judged === undefined ? 1 : Math.max(0, 1 - judged.right - judged.wrong) };
  if (content === "cannot-tell") return { complete: 0.5, incorrect: 0, absent: 0.5, essential };
  const others = OUTCOMES.filter((outcome) => outcome !== content);
  const open = others.reduce((sum, outcome) => sum + likely[outcome], 0);
  const share = (outcome: Outcome) => (outcome === content ? confidence : (1 - confidence) * (open === 0 ? 1 / others.length : likely[outcome] / open));
  return { complete: share("complete"), incorrect: share("incorrect"), absent: share("absent"), essential };
}

const OUTCOMES = ["complete", "incorrect", "absent"] as const;
type Outcome = (typeof OUTCOMES)[number];

/** @param needs elements that make the item complete, the essential ones among them. */
export function chanceOfContent(content: Content, elements: readonly ElementChances[], needs: number): number {
  const nothingWrong = elements.reduce((all, { incorrect }) => all * (1 - incorrect), 1);
  if (content === "incorrect") return 1 - nothingWrong;
  const whole = chanceOfWhole(elements, needs);
  if (content === "complete") return whole;
  const nothing = elements.reduce((all, { absent }) => all * absent, 1);
  return content === "absent" ? nothing : nothingWrong - whole - nothing;
}

/** That nothing is wrong, all essential ones are complete, and so many are. */
function chanceOfWhole(elements: readonly ElementChances[], needs: number): number {
  /** By how many are complete. */
  let chances = [1];
  for (const { complete, absent, essential } of elements) {
    const next = new Array<number>(chances.length + 1).fill(0);
    chances.forEach((chance, count) => {
      next[count + 1]! += chance * complete;
      if (!essential) next[count]! += chance * absent;
    });
    chances = next;
  }
  return chances.slice(needs).reduce((sum, chance) => sum + chance, 0);
}
