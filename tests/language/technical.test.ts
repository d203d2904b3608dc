import { describe, expect, test } from "vitest";
import { stem } from "../../src/language/stem.ts";
import { unexplained } from "../../src/language/technical.ts";
import { tokenise } from "../../src/language/token.ts";

const NOBODY = () => false;
const words = (text: string, heard: Parameters<typeof unexplained>[1] = NOBODY) => unexplained(tokenise(text.split(/\s+/)), heard).map(({ word }) => word);

describe("technical words nobody explained are listed once, with plain words", () => {
  test("the first place of each, in any of its forms and spellings", () => {
    const said = "Watch for hypoglycaemia when you skip a meal. Hypoglycemia is dangerous at the wheel.";
    expect(unexplained(tokenise(said.split(" ")), NOBODY)).toEqual([{ place: 2, word: "hypoglycaemia", plain: "low blood sugar" }]);
  });

  test.each<[string, string[]]>([
    ["It is a bronchodilator for your chest", ["bronchodilator"]],
    ["Inject it subcutaneously into the abdomen", ["subcutaneously"]],
    ["These are the adverse effects", ["adverse"]],
    ["It is contraindicated with that", ["contraindicated"]],
  ])("%s", (said, expected) => expect(words(said)).toEqual(expected));
});

describe("a word explained at once is not listed", () => {
  test.each([
    "hypoglycaemia, or low blood sugar, can happen",
    "low blood sugar, that's hypoglycaemia, can happen",
    "You could get hypoglycaemia. That means your sugars drop too far.",
    "prophylaxis, in other words you take it every day even when well",
    "inject it subcutaneously, that is just beneath your skin",
    "those fatty lumps are called lipohypertrophy",
    "this is what we call a bolus",
    "it's a bronchodilator which means it relaxes your chest",
  ])("%s", (said) => expect(words(said)).toEqual([]));

  test("an explanation much later comes too late", () => {
    const said = `Watch for hypoglycaemia. ${"And keep the pen with you in your bag at all times please. ".repeat(3)} It means low blood sugar.`;
    expect(words(said)).toEqual(["hypoglycaemia"]);
  });

  test("a word that the patient used first is known to them", () => {
    expect(words("so your rhinitis will settle", (_, stemmed) => stemmed === stem("rhinitis"))).toEqual([]);
  });
});

test("an expiration date is known to everybody", () => expect(words("check the expiration date")).toEqual([]));

test("explained anywhere in the same sentence is explained", () => {
  const said = "It's a bronchodilator, it relaxes the smooth muscle round the tubes in your chest so it";
  expect(words(`${said} opens up your airways quickly.`)).toEqual([]);
  expect(words(`${said} works quickly. Keep it with you wherever you go, please. It opens the airways.`)).toEqual(["bronchodilator"]);
});

test("the small airways have a plain name", () => {
  expect(words("It goes down into your bronchioles.")).toEqual(["bronchioles"]);
});
