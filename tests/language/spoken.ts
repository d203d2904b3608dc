import { clausesOf } from "../../src/language/clause.ts";
import { polarityOf, type Polarity } from "../../src/language/polarity.ts";
import { tokenise } from "../../src/language/token.ts";

/** The polarity of the first token of a sentence with this text. */
export function polarityOfWord(sentence: string, word: string): Polarity {
  const tokens = tokenise(sentence.split(" "));
  const place = tokens.findIndex(({ text }) => text === word);
  if (place < 0) throw new Error(`'${word}' is not in '${sentence}'`);
  return polarityOf(tokens, clausesOf(tokens))[place]!;
}

/** Whether that token is denied. */
export function isDenied(sentence: string, word: string): boolean {
  return polarityOfWord(sentence, word).negated;
}
