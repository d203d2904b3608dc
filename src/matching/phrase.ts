import { placeOf } from "../rubric/notation.ts";
import type { Phrase } from "../rubric/schema.ts";

/** One word of the acceptable-response notation: the alternatives at its place, or the place of a quantity or a name. */
export type Slot = { words: string[]; /** The place of the phrase where it stands among alternatives: what the author chose between. */ choice?: number } | "quantity" | "name";

/** The key of anybody's name, as a stem is that of a word. */
export const NAME = "#name";

/** More would come of a slip in the notation, not of a real need. */
const MOST_VARIANTS = 32;

/**
 * Reads the acceptable-response notation (`a|b`, `(a b|c)`, `{quantity}`) into its variants. Alternatives of one
 * word stay together in one slot; alternatives of several words make variants of their own.
 * @param most variants that are kept.
 */
export function readPhrase(phrase: Phrase, most = MOST_VARIANTS): Slot[][] {
  let variants: Slot[][] = [[]];
  for (const [at, part] of parts(phrase).entries()) {
    const choice = part.length > 1 ? { choice: at } : {};
    const options: Slot[][] = [];
    const singles: string[] = [];
    for (const alternative of part) {
      const place = placeOf(alternative);
      if (place !== null) options.push([place]);
      else if (/\s/.test(alternative)) options.push(alternative.split(/\s+/).map((word): Slot => placeOf(word) ?? { words: [word], ...choice }));
      else if (alternative !== "") singles.push(alternative);
      else options.push([]);
    }
    if (singles.length > 0) options.unshift([{ words: singles }]);
    variants = variants.flatMap((variant) => options.map((option) => [...variant, ...option])).slice(0, most);
  }
  return variants.filter((variant) => variant.length > 0);
}

/** The places of a phrase, each with its alternatives as written. */
function parts(phrase: string): string[][] {
  const found: string[][] = [];
  for (const match of phrase.toLowerCase().matchAll(/((?:\([^()]*\)|[^\s()|]+)(?:\|(?:\([^()]*\)|[^\s()|]+))*)/g)) {
    const alternatives = match[0].match(/\([^()]*\)|[^|()]+/g) ?? [];
    found.push(alternatives.flatMap((alternative) => (alternative.startsWith("(") ? alternative.slice(1, -1).split("|") : [alternative])).map((text) => text.trim()));
  }
  return found;
}
