import type { Fault } from "../problem/problem.ts";

/*
 * What may be written in a phrase of a rubric besides words: `a|b`, `(a b|c)`, `{quantity}`, `{name}`. A slip in it makes
 * another phrase than was meant, without a word; so slips are refused where they stand.
 */

/** The word of a place, and the punctuation around it that says nothing: "{quantity}," is the place of a number. */
const PLACE = /^[^\p{L}\p{N}{}()|]*\{(quantity|name)\}[^\p{L}\p{N}{}()|]*$/u;
/** A word with a brace in it, alternatives told apart. */
const BRACED = /[^\s()|]*[{}][^\s()|]*/g;

export type PlaceName = "quantity" | "name";

/** Which place a word of a phrase is; null for any other word. @param word in lower case */
export function placeOf(word: string): PlaceName | null {
  return word.includes("{") ? ((PLACE.exec(word)?.[1] as PlaceName | undefined) ?? null) : null;
}

/** Whether a phrase has the place somewhere. */
export function hasPlace(phrase: string, name: PlaceName): boolean {
  return phrase.toLowerCase().includes(`{${name}}`);
}

/** What other notations mean by their signs. Here they are words like any other, so that nothing would be as it was meant. */
const FOREIGN: readonly { sign: RegExp; what: string; mend: string }[] = [
  { sign: /[\p{L}']+(\/[\p{L}']+)+/u, what: "has no alternatives in it", mend: "Write '|' between words of which either will do: 'missed|forgotten'." },
  { sign: /\[[^\]]*\]?|\]/, what: "is no place that may stay empty", mend: "Write two phrases, one with these words and one without. 'a|b' is for either word." },
  { sign: /<[^>]*>/, what: "is no place that can be filled", mend: "Write {quantity} where the number stands, {name} where the speaker gives a name." },
  { sign: /\.\.+|…|_{2,}/, what: "leaves no gap", mend: "Leave it out: other words may stand between the words of a phrase." },
];

/** The slips in a phrase; none when it can be read. */
export function notationFaults(phrase: string): Fault[] {
  if (!/[{}()|[\]<>/_…]|\.\./.test(phrase)) return [];
  const faults: Fault[] = FOREIGN.flatMap(({ sign, what, mend }) => {
    const found = sign.exec(phrase);
    return found === null ? [] : [{ message: `'${found[0]}' ${what}, and is read as words`, mend }];
  });
  for (const [word] of phrase.matchAll(BRACED)) {
    if (placeOf(word.toLowerCase()) === null) faults.push({ message: `'${word}' is no place that can be filled`, mend: "Write {quantity} where the number stands, {name} where the speaker gives a name, each as a word of its own." });
  }
  const groups = groupFault(phrase);
  if (groups !== null) faults.push(groups);
  else if (emptyAlternative(phrase)) faults.push({ message: `an alternative is empty in '${phrase}'`, mend: "Write words on both sides of each '|', without blanks around it: 'a|b' or '(a b|c)'." });
  return faults;
}

function groupFault(phrase: string): Fault | null {
  let open = false;
  for (const character of phrase) {
    if (character === "(") {
      if (open) return { message: `a group stands inside another in '${phrase}'`, mend: "Write one group with all alternatives: '(a b|c b|d e)'." };
      open = true;
    } else if (character === ")") {
      if (!open) return { message: `a ')' closes nothing in '${phrase}'`, mend: "Add the '(' or take the ')' out." };
      open = false;
    }
  }
  return open ? { message: `a '(' is never closed in '${phrase}'`, mend: "Add the ')' behind the last alternative; in a list in brackets, [...], put a phrase that has commas in quotes." } : null;
}

/** Groups are known to be closed and none inside another. */
function emptyAlternative(phrase: string): boolean {
  const inside = [...phrase.matchAll(/\(([^()]*)\)/g)].flatMap(([, group]) => group!.split("|"));
  // Outside, an alternative is a word or a group and touches its '|'.
  const outside = phrase.replace(/\([^()]*\)/g, "group");
  return inside.some((alternative) => alternative.trim() === "") || /(^|[\s|])\||\|(\s|$)/.test(outside);
}
