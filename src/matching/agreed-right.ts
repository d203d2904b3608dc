import { turnAt } from "../station/turns.ts";
import type { WordSpan } from "../station/types.ts";
import { SURELY_SAID, type AgreedTurn } from "./agreed.ts";
import { shareOf, type PlacedPassage } from "./answered.ts";
import type { CompiledElement } from "./compile.ts";
import { asks, tokensIn, yesWithoutCorrection, type Scene } from "./elicitation.ts";
import type { Passage } from "./passages.ts";
import { sentenceFrom, wordsOf, type Stream } from "./stream.ts";
import { topicOf } from "./taken-back.ts";

/*
 * "The spare ones, do I put those in the fridge?" "Yes.": what the patient has right and the candidate says yes to. The
 * words are the patient's, so it earns what is confirmed; a yes to the candidate's own question earns nothing, and what
 * the patient tells back when asked is judged as a telling back.
 */

/** It must fit this well: patients ask and say much else, and there is little around it that could speak against it. */
const CLOSELY = 0.7;

/** @param missing elements that nobody said outright. */
export function agreedRight(scene: Scene, agreed: readonly AgreedTurn[], missing: ReadonlySet<CompiledElement>): PlacedPassage[] {
  return agreed.flatMap(({ turn, stream, earned: { kept, unsafe } }): PlacedPassage[] => {
    const before = scene.turns[turnAt(scene.turns, turn) - 1];
    if (before?.role === "candidate" && asks(scene.candidate, before)) return [];
    const asked = agreedPart(scene, turn);
    if (asked === null) return [];
    // A yes to what is partly wrong tells nothing rightly.
    if (unsafe.length > 0 || kept.some(({ verdict }) => verdict !== "right")) return [];
    const right = kept.filter((passage) => isSurelyRight(passage, stream, asked) && yesWithoutCorrection(scene, turn, topicOf(passage.window.response)) !== null);
    return ofBestItem(right).filter(({ element }) => missing.has(element)).map((passage) => ({ passage, stream }));
  });
}

/** A yes is said to one thing, and its words fit others by chance. */
function ofBestItem(passages: readonly Passage[]): Passage[] {
  const fit = ({ coverage, likelihood = 0 }: Passage) => coverage * likelihood;
  const best = passages.toSorted((one, other) => fit(other) - fit(one))[0];
  return passages.filter(({ element }) => element.item === best?.element.item);
}

function isSurelyRight({ element, window, coverage, likelihood = 0 }: Passage, { tokens }: Stream, asked: WordSpan): boolean {
  return element.kind === "tell" && coverage >= CLOSELY && likelihood >= SURELY_SAID && shareOf(window, (token) => tokens[token]!.word >= asked.first) >= MOST;
}

/** The most of it must stand in what is agreed to. */
const MOST = 0.6;

/** Fewer words ask only whether what was said before them is so: "would that do?", "is that all right?". */
const FEWEST_ASKED = 6;

/** What the yes is to: the sentence that the turn ends in, with the one before it where that says little; null where it asks of what is shown. */
function agreedPart({ patient }: Scene, turn: WordSpan): WordSpan | null {
  const { first, end } = tokensIn(patient, turn);
  if (first === end) return null;
  let from = sentenceFrom(patient, end - 1, first);
  const isShort = end - from < FEWEST_ASKED;
  // "Is that enough blood?"
  if (isShort && POINTS.test(`${patient.tokens[from]!.text} ${patient.tokens[from + 1]?.text ?? ""}`) && from === first) return null;
  if (isShort && from > first) from = sentenceFrom(patient, from - 1, first);
  return wordsOf(patient, from, end);
}

const POINTS = /^(is|was|does) (that|this)$/;
