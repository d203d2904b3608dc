import { expect, test } from "vitest";
import { selfAsked } from "../../src/language/self-asked.ts";
import { tokenise } from "../../src/language/token.ts";

// Invented talk: behaviour only.
const asked = (says: string, breaks: readonly number[] = []) => {
  const tokens = tokenise(says.split(" "));
  return selfAsked(tokens, new Set(breaks)).map(({ first, end }) => tokens.slice(first, end).map(({ text }) => text).join(" "));
};

test.each([
  ["Missed one? Take it when you remember.", ["missed one"]],
  ["So, no better after ten minutes? Then ring the doctor.", ["so no better after ten minutes"]],
  ["It's an hour past bedtime and you've only just remembered? No drama, take it then.", ["it is an hour past bedtime and you have only just remembered"]],
  ["You forget one evening? Just leave it out.", ["you forget one evening"]],
  ["Shake it. Still nothing? Just put a new needle on.", ["still nothing"]],
  ["Bad pain in the eye? A couple of tablets and see how it is.", ["bad pain in the eye"]],
  ["Struggling for breath? All the more reason to have her flat.", ["struggling for breath"]],
  ["Not touching it? You can have six.", ["not touching it"]],
  ["Can't breathe? That's what the blue one is for.", ["can not breathe"]],
  ["Fine again? Then cancel them.", ["fine again"]],
  ["Back to normal? Just put it away.", ["back to normal"]],
  ["Your wife's eyes are sore? Pop one of these in for her.", ["your wife eyes are sore"]],
])("a condition that somebody puts to themselves: %s", (says, conditions) => expect(asked(says)).toEqual(conditions));

test.each([
  "Have you missed one? Take it when you remember.",
  "Do you forget them? Just tell me.",
  "Are you missing any? Just tell me.",
  "You shake it first? Then press it.",
  "Any allergies? Just tell me if there are.",
  "And your date of birth? Just to be sure.",
  "All clear so far? Then press it.",
  "See that window? It counts the doses.",
  "Missed one? I'll come to that.",
  "Can't you breathe? That's what the blue one is for.",
  "Doesn't it work? You can show me.",
  "Is that okay again? Just tell me.",
  "Fine? Then cancel them.",
  "Your wife's name? Pop it on there.",
  "Your eyes are okay? Just put it there.",
])("what is asked of the other is none: %s", (says) => expect(asked(says)).toEqual([]));

test("nor what ends the turn", () => expect(asked("Missed one? Take it when you remember.", [2])).toEqual([]));
