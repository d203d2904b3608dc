import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: turns, label: Four turns of the crank, quantity: { value: 4, unit: turn }, say: ["turn the crank {quantity}", "a pair of turns to each side of the crank"] }
      - { id: rest, label: Rests it for ten minutes, quantity: { value: 10, unit: minute }, say: ["rest the lantern for {quantity}", "let the lantern rest a good while"] }
      - { id: cold, label: Below 25 degrees, quantity: { value: 25, unit: degree-celsius }, say: ["keep the lantern below {quantity}"] }
`.replace("unit: turn }", "unit: time }"));
const content = (item: string, says: string, turns: string[] = []) => markTalk([...OPENING, `C: ${says}`, ...turns], {}, card).items.find(({ id }) => id === item)?.content;

describe("a number that is denied puts none right", () => {
  test.each(["Rest the lantern for three minutes, not ten.", "Rest the lantern for three minutes instead of ten minutes."])("%s", (says) => expect(content("rest", says)).toBe("incorrect"));
  test.each(["Rest the lantern for ten minutes, not three.", "Rest the lantern for not less than ten minutes."])("%s", (says) => expect(content("rest", says)).toBe("complete"));
});

describe("a number that a response says in words must be said", () => {
  test("missing", () => expect(content("turns", "Turns to each side of the crank.")).toBe("absent"));
  test("said", () => expect(content("turns", "A pair of turns to each side of the crank.")).toBe("complete"));
});

test("a wrong range said again end by end puts no number right", () => {
  const oil = cardWith("      - { id: oil, label: The reading, quantity: { value: [2, 3], unit: number }, say: ['the reading should be between {quantity}'] }");
  const reading = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, oil).items.find(({ id }) => id === "oil")?.content;
  expect(reading("the reading should be between two and a half and three and a half two and a half and three and a half thats it")).toBe("incorrect");
  expect(reading("The reading should be between two and three.")).toBe("complete");
});

describe("degrees without a scale are those of the rubric", () => {
  test("right", () => expect(content("cold", "Keep the lantern below 25 degrees.")).toBe("complete"));
  test("wrong", () => expect(content("cold", "Keep the lantern below forty degrees.")).toBe("incorrect"));
});

describe("a turn that goes on behind the listener's word is one sentence", () => {
  test("a denial keeps what it denies", () => expect(content("rest", "You should never", ["P: Sure.", "C: rest the lantern for ten minutes."])).not.toBe("complete"));
  test("another turn is another", () => expect(content("rest", "You should never polish it.", ["P: Sure.", "C: Rest the lantern for ten minutes."])).toBe("complete"));
});

describe("a step on the way to the most is no wrong number", () => {
  const puffs = cardWith("      - { id: puffs, label: Up to ten puffs, quantity: { value: 10, unit: puff }, say: ['{quantity} of the blue lantern', 'a puff a minute up to {quantity}'] }");
  const reading = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, puffs).items[0]!.content;
  test.each(["One puff every thirty to sixty seconds, up to ten of the blue lantern.", "One puff a minute of the blue lantern, to a maximum of ten."])("right: %s", (says) => expect(reading(says)).toBe("complete"));
  test.each(["Two puffs of the blue lantern.", "One puff of the blue lantern, up to four.", "Up to four puffs of the blue lantern, never ten."])("wrong: %s", (says) => expect(reading(says)).toBe("incorrect"));
});

describe("a wrong number beside a response that names none", () => {
  test.each(["Let the lantern rest a good while, two minutes.", "Let the lantern rest a good while as you count to a hundred."])("is wrong: %s", (says) => expect(content("rest", says)).toBe("incorrect"));
  test.each(["Let the lantern rest a good while.", "Let the lantern rest a good while, ten minutes.", "Let the lantern rest a good while, then polish it for two minutes.", "Let the lantern rest a good while, not two minutes."])("is right: %s", (says) => expect(content("rest", says)).toBe("complete"));
});

describe("a bare number counts what is spoken of", () => {
  const drops = cardWith(`
      - { id: drops, label: One drop in each lamp, quantity: { value: 1, unit: drop }, say: ["put {quantity} in each lamp"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, drops).items[0]!.content;
  test.each(["Put three in each lamp.", "Put three in each lamp, every evening.", "Three in each lamp.", "Put three of them in each lamp.", "Put three of those little ones in each lamp.", "Put one drop in each lamp. Sorry, three.", "Put one drop in each lamp. No, three."])("wrong: %s", (says) => expect(content(says)).toBe("incorrect"));
  test.each(["Put one drop in each lamp.", "Put three drops in each lamp. Sorry, one."])("right: %s", (says) => expect(content(says)).toBe("complete"));
  test("what may happen", () => expect(content("If you've already put three in each lamp, there's no harm done.")).toBe("absent"));
  test.each(["Three in each lamp is too many.", "Three drops in each lamp would be too much."])("a number that is called too many: %s", (says) => expect(content(says)).toBe("absent"));
  test.each(["Put one drop in each lamp, half a drop won't do.", "Half a drop isn't enough, put one drop in each lamp."])("another that is called too few: %s", (says) => expect(content(says)).toBe("complete"));
  test("the right one, called too few", () => expect(content("One drop in each lamp won't be enough, put three drops in each lamp.")).toBe("incorrect"));
  test("another that is called too many", () => expect(content("Put one drop in each lamp, three is too many.")).toBe("complete"));
  test("one that is not", () => expect(content("Put three drops in each lamp, that's not too many.")).toBe("incorrect"));
  test("another thing's", () => expect(content("Put three wicks in each lamp.")).toBe("absent"));
});

test("a bare number that is right of another element is not held against this one", () => {
  const both = cardWith(`
      - { id: drops, label: One drop in each lamp, quantity: { value: 1, unit: drop }, say: ["put {quantity} in each lamp"] }
      - { id: trial, label: Three drops in the pan, quantity: { value: 3, unit: drop }, say: ["put {quantity} in the pan"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, both).items.find(({ id }) => id === "drops")!.content;
  expect(content("Put three in each lamp.")).toBe("absent");
  expect(content("Put four in each lamp.")).toBe("incorrect");
});

describe("a number that is right here is none of elsewhere, though it would do there too", () => {
  const steep = cardWith(`
      - { id: steep, label: Within ten minutes, quantity: { value: 10, unit: minute }, must: ["(again)"], say: ["if it goes out within {quantity} light the lantern again"], elsewhere: [{ jurisdiction: [XX], quantity: { value: [5, 10], unit: minute }, note: five minutes in an invented country }] }
`);
  const differs = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, steep).items.find(({ id }) => id === "steep");
  test("right", () => expect(differs("If it goes out within ten minutes light the lantern again.")?.content).toBe("complete"));
  test("right elsewhere alone", () => expect(differs("If it goes out within five minutes light the lantern again.")?.remarks).toEqual(["differs from this station's guidance: five minutes in an invented country"]));
});

describe("the right number for another period", () => {
  const oil = cardWith(`
      - { id: oil, label: Fourteen spoons a week, quantity: { value: 14, unit: millilitre }, say: ["keep it under {quantity}", "burn {quantity} a week"] }
      - { id: wick, label: Ten millimetres, quantity: { value: 10, unit: millimetre }, say: ["trim {quantity} off the wick"] }
`);
  const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, oil).items.find(({ id }) => id === item)!.content;
  test.each(["Burn fourteen millilitres a day.", "Burn fourteen millilitres every evening."])("is wrong: %s", (says) => expect(content("oil", says)).toBe("incorrect"));
  test.each(["Burn fourteen millilitres a week.", "Burn fourteen millilitres, spread over the week.", "Burn fourteen millilitres four times a day.", "Keep it under fourteen millilitres, never two in a day."])("is right: %s", (says) => expect(content("oil", says)).toBe("complete"));
  test("where the rubric names none, any will do", () => expect(content("wick", "Trim ten millimetres a week off the wick.")).toBe("complete"));
});

describe("a number of another sentence puts none right where the sentence of the words has a wrong one", () => {
  const trim = cardWith(`
      - { id: trim, label: Under ten minutes after dusk, quantity: { value: 10, unit: minute, bound: at-most }, say: ["a while after dusk trim the lantern under {quantity}"] }
`);
  const told = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, trim).items.find(({ id }) => id === "trim")?.content;
  test("wrong", () => expect(told("You trim it four minutes. A while after dusk the lantern under thirty minutes.")).not.toBe("complete"));
  test("right", () => expect(told("You trim it four hours. A while after dusk the lantern under ten minutes.")).toBe("complete"));
});

describe("a denial that makes a bound of a number denies nothing", () => {
  const card = cardWith(`
      - { id: mix, label: Four to seven at dusk, quantity: { value: [4, 7], unit: millimole-per-litre }, say: ["at dusk the lantern oil should be {quantity}"] }
`);
  const said = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "mix")?.content;
  test.each(["At dusk the lantern oil should be nothing under four.", "At dusk the lantern oil should be not over seven."])("%s", (says) => expect(said(says)).toBe("complete"));
  test.each(["At dusk the lantern oil should be nothing over fourteen.", "At dusk the lantern oil should be nothing under two."])("but not: %s", (says) => expect(said(says)).not.toBe("complete"));
});

describe("what is taken of several strengths is added up", () => {
  const oil = cardWith(`
      - { id: oil, label: Four milligrams of oil, quantity: { value: 4, unit: milligram }, say: ["the oil comes to {quantity}", "{quantity} of oil in the lamp"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, oil).items[0]!.content;
  test.each(["That's three milligrams of oil in the lamp and one in the can, so four in all.", "Three milligrams of oil in the lamp and one in the can, and that comes to four.", "Three milligrams of oil in the lamp and one milligram more makes four."])("right: %s", (says) => expect(content(says)).toBe("complete"));
  test.each(["Three milligrams of oil in the lamp and two in the can, so five in all.", "Three milligrams of oil in the lamp.", "Three milligrams of oil in the lamp on weekdays and so to four at weekends.", "Three milligrams of oil in the lamp or four, I don't mind."])("wrong: %s", (says) => expect(content(says)).toBe("incorrect"));
});

describe("the right number for another period", () => {
  const caps = cardWith(`
      - { id: caps, label: Five caps a week, quantity: { value: 5, unit: capsule }, say: ["five|{quantity} of the little caps a week", "swallow the little caps", "{quantity} caps every week"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, caps).items[0]!.content;
  test.each(["Swallow the little caps, five capsules every week.", "Swallow the little caps, five capsules."])("right: %s", (says) => expect(content(says)).toBe("complete"));
  test("wrong", () => expect(content("Swallow the little caps, five capsules, every day but Monday.")).toBe("incorrect"));
});

describe("a second that lasts is a length of time", () => {
  test("wrong", () => expect(content("rest", "Rest the lantern for a second, no more.")).toBe("incorrect"));
  test("a second one", () => expect(content("rest", "Rest the lantern, then you can have a second.")).not.toBe("incorrect"));
});

describe("a wrong number right behind the sentence that it belongs to", () => {
  test.each([
    ["Now you rest the lantern on the sill.", ["P: How long for?", "C: Oh, just a minute or two, then go on."]],
    ["You rest the lantern on the sill. Two minutes, that's all.", []],
  ])("%s", (says, turns) => expect(content("rest", says, turns)).toBe("incorrect"));
  test.each([
    ["You rest the lantern on the sill. Two minutes later the ferry comes.", []],
    ["You rest the lantern on the sill. The ferry comes in two minutes.", []],
  ])("of something else: %s", (says, turns) => expect(content("rest", says, turns)).not.toBe("incorrect"));
});
