import { speechPhrases } from "../language/speech-phrases.ts";
import type { CompiledElement } from "./compile.ts";
import { remembered } from "./remembered.ts";
import { clausesAround, type Stream } from "./stream.ts";
import type { Window } from "./windows.ts";

/*
 * Some things are done once, to a new device, and some at every use. Who says one for the other says most of the words
 * that the element has: "before each use spray until there's a mist" is no priming of a new one.
 */

const EACH_USE = speechPhrases("each_use");
const FIRST_USE_ONLY = speechPhrases("first_use_only");

const OF_A_NEW_ONE = /\b(new|first (time|use))\b/;
const OF_EACH = /\b(each|every|always)\b/;
const NEW = /^(new|first|unused|fresh)$/;
/** An element is of the one where so many of its responses say so, and none says the other. */
const LEAST = 2;

type Use = "first" | "each" | "either";

const useOf = remembered((element: CompiledElement): Use => {
  const texts = [...new Set(element.say.map(({ text }) => text))];
  const first = texts.filter((text) => OF_A_NEW_ONE.test(text)).length;
  const each = texts.filter((text) => OF_EACH.test(text)).length;
  if (first >= LEAST && each === 0) return "first";
  return each >= LEAST && first === 0 ? "each" : "either";
});

/** Whether what is to be done to a new one is told of every use, or what is to be done at every use of the first alone. */
export function mistakesTheUse(window: Window, stream: Stream, element: CompiledElement): boolean {
  const use = useOf(element);
  if (use === "either") return false;
  const { first, end } = clausesAround(stream, window);
  const hits = (use === "first" ? EACH_USE : FIRST_USE_ONLY).find(stream.tokens, first, end);
  if (hits.every((hit) => isDenied(hit, stream))) return false;
  return use === "each" || !stream.tokens.slice(first, end).some(({ text }) => NEW.test(text));
}

/** "Not just the first time". */
const isDenied = ({ first }: { first: number }, { tokens, polarity }: Stream) => polarity[first]!.negated || tokens[first - 1]?.text === "not";
