import { describe, expect, test } from "vitest";
import { hesitationsIn } from "../../src/language/hesitation.ts";
import { tokenise } from "../../src/language/token.ts";

/** What is left when all that says nothing is out. Invented speech. */
function left(says: string, breaks: number[] = []): string {
  const tokens = tokenise(says.split(" "));
  const silent = hesitationsIn(tokens, new Set(), new Set(breaks));
  return tokens.filter((_, place) => !silent.has(place)).map(({ text }) => text).join(" ");
}

describe("what a speaker stumbles over says nothing", () => {
  test.each([
    ["a sound that fills a pause", "use, um, the side", "use the side"],
    ["a word said twice", "the, the side", "the side"],
    ["twice over a filler", "the, er, the side", "the side"],
    ["two words said twice", "it is, it is the side", "it is the side"],
    ["three words said twice", "on the side, on the side of it", "on the side of it"],
    ["a word said three times", "press, press, press the corner", "press the corner"],
  ])("%s: %s", (_, said, meant) => expect(left(said)).toBe(meant));
});

describe("all else stands", () => {
  test.each([
    ["words said again later", "shake it and then shake it"],
    ["what the next sentence begins with", "press the side. The side is"],
  ])("%s: %s", (_, said) => expect(left(said)).toBe(tokenise(said.split(" ")).map(({ text }) => text).join(" ")));

  test("what the next turn begins with", () => expect(left("the side the side", [2])).toBe("the side the side"));
});
