import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: smoke, label: Smoking - trims the wick, say: [if the lamp smokes trim the wick, trim the wick when the lamp smokes] }
      - { id: early, label: Gone out before dusk - wipes it, say: [if it goes out before dusk wipe it] }
      - { id: missed, label: A missed evening is left out, say: [skip the evening you missed, leave that evening out] }
      - { id: late, label: Gone out after dusk - lifts it, say: [if it goes out after dusk lift it] }
      - { id: night, label: Before midnight - wipes it, say: ["wipe it if it's before midnight", "you've got until midnight to wipe it"] }
      - { id: spare, label: Spare lamps in the cellar, say: [the spare ones go in the cellar, the spare lamps live in the cellar] }
      - { id: drip, label: Dripped - another try, say: [if it drips down the shelf do it again, if it spills try again] }
      - { id: back, label: Hands wait, say: ["put your hands back after {quantity}"], quantity: { value: 15, unit: minute } }
      - { id: dark, label: Dark or cold - lights it, say: [light it if you are cold] }
      - { id: bang, label: A bang must alarm, red_flag: true, say: [if it bangs run for the keeper, run for the keeper even if it looks fine] }
`);
const content = (says: string, item: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)!.content;

describe("a condition without its rule tells nothing", () => {
  test("something else is told for it", () => expect(content("If the lamp smokes give the museum a shout.", "smoke")).toBe("absent"));
  test.each(["If the lamp smokes trim the wick.", "If the lamp smokes, just trim it.", "Trim the wick if it smokes."])("the rule is told: %s", (says) => expect(content(says, "smoke")).toBe("complete"));
});

describe("a rule of small words", () => {
  test.each(["If it drips down the shelf, don't have another go, wait for tomorrow.", "If it drips down the shelf you don't try again."])("is not told where it is denied: %s", (says) => expect(content(says, "drip")).not.toBe("complete"));
  test.each(["If it drips down the shelf, do it again.", "If it drips down the shelf, don't panic, do it again.", "If it drips down the shelf, don't sit on it, do it again."])("is told: %s", (says) => expect(content(says, "drip")).toBe("complete"));
});

describe("what stands behind an exception is told for it alone", () => {
  test("unless", () => expect(content("Put your hands back, unless it stings, then give it fifteen minutes.", "back")).not.toBe("complete"));
  test.each(["Put your hands back after fifteen minutes, unless it stings.", "Give it fifteen minutes, unless I say otherwise, then put your hands back after that."])("%s", (says) => expect(content(says, "back")).toMatch(/complete|absent/));
  test("and so is no rule", () => expect(content("Leave it, unless you want it lit, if you are cold.", "dark")).not.toBe("complete"));
});

describe("what is told is told for its own condition", () => {
  const swapped = "If it goes out before dusk lift it, and if it goes out after dusk wipe it.";
  test.each(["early", "late"])("swapped: %s", (item) => expect(content(swapped, item)).not.toBe("complete"));
  const right = "If it goes out before dusk wipe it, and if it goes out after dusk lift it.";
  test.each(["early", "late"])("as it should be: %s", (item) => expect(content(right, item)).toBe("complete"));
});

describe("a time told without an 'if' is that of the rule behind it", () => {
  test.each(["Before midnight leave it out, and if it's the next day already then wipe it."])("swapped: %s", (says) => expect(content(says, "night")).not.toBe("complete"));
  test.each(["Before midnight wipe it, and if it's the next day already leave it out.", "If it's the next day leave it out, and before midnight wipe it."])("as it should be: %s", (says) => expect(content(says, "night")).toBe("complete"));
});

describe("what is told of only the other one", () => {
  test.each(["The spare ones sit on the shelf, only the one you're using goes in the cellar.", "The spare ones sit on the shelf, it's only the one you're using that goes in the cellar."])("is not told of these: %s", (says) => expect(content(says, "spare")).not.toBe("complete"));
  test.each(["The spare ones go in the cellar, only the one you're using sits on the shelf.", "The spare ones go in the cellar, it's only the one you're using that sits on the shelf."])("takes nothing from what is told of these: %s", (says) => expect(content(says, "spare")).toBe("complete"));
});

describe("what must alarm in any case", () => {
  test("is not told for one case alone", () => expect(content("If it bangs, run for the keeper, but only when it starts to burn.", "bang")).not.toBe("complete"));
  test.each(["If it bangs, run for the keeper, even when it looks fine.", "If it bangs, run for the keeper, but only when you've shut the door open the hatch."])("%s", (says) => expect(content(says, "bang")).toBe("complete"));
});

describe("another word for the rule, said as what may happen, is no rule", () => {
  test.each(["If you've forgotten one, write it in the book."])("%s", (says) => expect(content(says, "missed")).toBe("absent"));
  test.each(["If you forgot an evening skip the one you missed.", "Skip the evening you missed."])("the rule is told: %s", (says) => expect(content(says, "missed")).toBe("complete"));
});
