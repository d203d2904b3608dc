import { describe, expect, test } from "vitest";
import { findFillers } from "../../src/language/fillers.ts";
import { tokenise } from "../../src/language/token.ts";

const fillers = (text: string) => findFillers(tokenise(text.split(/\s+/))).map(({ value }) => value);

describe("sounds that fill a pause count wherever they stand", () => {
  test.each<[string, string[]]>([
    ["So um you shake it", ["um"]],
    ["Uh, er, erm, shake it", ["uh", "er", "erm"]],
    ["the, er, inhaler", ["er"]],
    ["um um um", ["um", "um", "um"]],
    ["UM, shake it.", ["um"]],
  ])("%s", (said, expected) => expect(fillers(said)).toEqual(expected));
});

describe("words that may mean something count only where they break the sentence", () => {
  test.each<[string, string[]]>([
    ["you, like, press it", ["like"]],
    ["it's, you know, quite small", ["you know"]],
    ["shake it, you know", ["you know"]],
    ["I mean, shake it first", ["i mean"]],
    ["it's, sort of, blue", ["sort of"]],
    ["Basically, shake it.", ["basically"]],
    ["you press it like like this", ["like"]],
  ])("%s: %j", (said, expected) => expect(fillers(said)).toEqual(expected));

  test.each([
    "hold it like this", "I would like to check your name", "I'd like you to show me", "it looks like a pen", "things like coughs", "Do you know how it works?", "let you know",
    "what kind of inhaler", "this sort of device", "do you know, by chance, your dose?", "is it, something like, blue?", "it actually works", "you literally press once", "as you know it well",
  ])("none in: %s", (said) => expect(fillers(said)).toEqual([]));
});

describe("what looks like a sound and is a word is none", () => {
  test.each(["a 4 mm needle", "a four mm needle", "a 4mm needle", "go straight to the ER if it swells"])("none in: %s", (said) => expect(fillers(said)).toEqual([]));

  test("an mm of agreement is one", () => expect(fillers("mm, yes")).toEqual(["mm"]));
});
