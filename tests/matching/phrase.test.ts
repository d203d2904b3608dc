import { describe, expect, test } from "vitest";
import { readPhrase } from "../../src/matching/phrase.ts";

const shown = (phrase: string) => readPhrase(phrase).map((variant) => variant.map((slot) => (slot === "quantity" ? "#" : slot === "name" ? "@" : slot.words.join("/"))).join(" "));

describe("the notation of acceptable responses", () => {
  test.each([
    ["shake it well", ["shake it well"]],
    ["shake the inhaler|puffer well", ["shake the inhaler/puffer well"]],
    ["(i'm|i am) the pharmacist", ["i'm the pharmacist", "i am the pharmacist"]],
    ["(a trainee|student) pharmacist", ["student pharmacist", "a trainee pharmacist"]],
    ["hold for {quantity}", ["hold for #"]],
    ["i'm {name}", ["i'm @"]],
    ["swallow {quantity}, then drink water", ["swallow # then drink water"]],
    ["Gulp (all {Quantity}!|it) now", ["gulp it now", "gulp all # now"]],
    ["hold for {quantity}|(as long as you can)", ["hold for #", "hold for as long as you can"]],
  ])("%s", (phrase, variants) => expect(shown(phrase)).toEqual(variants));
});
