import type { CompiledElement } from "../compile.ts";
import { oddsBy, type Curve } from "../curve.ts";
import type { Judgement } from "../types.ts";
import curves from "./curves.json" with { type: "json" };
import type { ReadByBoth } from "./read-by-both.ts";
import type { ReadSaying } from "./reading.ts";
import { signsOf } from "./saying-signs.ts";

/*
 * What a saying does to an element, by all that both readers know of it at once (saying-signs.ts). Three outcomes (says it
 * rightly, says it wrongly, does not speak of it) of one multinomial logistic curve, fitted by `npm run fit:learnt` on
 * sayings of hands that the lines were learnt without.
 */

/** @param place of the element in the reading. */
export function judgementOf(saying: ReadSaying, element: CompiledElement, place: number, read: ReadByBoth): Judgement {
  let own = read.judged.get(element);
  if (own === undefined) read.judged.set(element, (own = new Map()));
  let judgement = own.get(saying);
  if (judgement === undefined) own.set(saying, (judgement = judgementBy(curves[saying.company], signsOf(saying, element, place, read))));
  return judgement;
}

/** How likely each outcome is by two curves of log-odds against the third. */
export function judgementBy(curve: Readonly<Record<"right" | "wrong", Curve>>, signs: readonly number[]): Judgement {
  const [rightly, wrongly] = [Math.exp(oddsBy(curve.right, signs)), Math.exp(oddsBy(curve.wrong, signs))];
  return { right: rightly / (1 + rightly + wrongly), wrong: wrongly / (1 + rightly + wrongly) };
}
