import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { runsOn } from "../../src/matching/held-passages.ts";
import { postingsOf } from "../../src/matching/postings.ts";
import { streamOf } from "../../src/matching/stream.ts";
import { windowsFor } from "../../src/matching/windows.ts";
import { toldStation } from "../../src/station/told.ts";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: often, label: How often is too often, say: ["if you're using it {quantity}", "if you need it more than {quantity}"], quantity: { value: 3, unit: time-per-day } }
      - { id: brush, label: Brushes the case, say: [use the brush once a week] }
      - { id: renew, label: When to replace it, say: ["replace it every {quantity}"], quantity: { value: [6, 12], unit: month } }
      - { id: dry, label: Never wets it, say: [keep it dry], incorrect: [wash it every evening, soak it on warm days] }
      - { id: smoke, label: Smoky - airs it, say: [air it when it smells smoky], incorrect: [wash it when it smells smoky] }
      - { id: wipe, label: Wipes it, say: [wipe the mouthpiece with a tissue] }
      - { id: lenses, label: Lenses wait, say: [wait before the lenses], incorrect: [put them right back] }
      - { id: grip, label: Two hands on the case, say: [grip the case with two hands], not_with: [one hand], incorrect: [one hand is plenty for the case] }
      - { id: head, label: Head back, say: [tip your head back, head right back] }
      - { id: squirt, label: One squirt, say: [one squirt each morning], incorrect: [half a squirt will do, three squirts each time] }
      - { id: wick, label: A new wick each time, say: [a new wick each time], incorrect: ["swap the wick once a|(on a) month|sunday"] }
      - { id: hold, label: Holds the breath, say: ["hold your breath for {quantity}"], quantity: { value: 10, unit: second } }
`);
const wrong = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).incorrect.map(({ item }) => item);

describe("what was just said is what 'if that happens' is told for", () => {
  test("one statement over two sentences", () => expect(wrong("It may smell a bit smoky. If that happens, wash it.")).toContain("smoke"));
  test("and no statement where the next sentence tells of something else", () => expect(wrong("It may smell a bit smoky. On Sundays wash it.")).not.toContain("smoke"));
});

describe("nothing is held against somebody for words that were meant for something else", () => {
  test("a number said of another thing", () => expect(wrong("So once a week, you use the little brush.")).not.toContain("often"));
  test("a number of quite another size", () => expect(wrong("Replace it every thirty seconds.")).not.toContain("renew"));
  test("a word that only stands for the wrong statement's and is another's own", () => expect(wrong("Every evening wipe the mouthpiece with a tissue.")).not.toContain("dry"));
  test("one word of a statement of several", () => expect(wrong("You can soak in the view on the way.")).not.toContain("dry"));
  test("what others did and what came of it", () => expect(wrong("We had a gentleman who washed it every evening, and it clogged up.")).not.toContain("dry"));
  test("what some people think", () => expect(wrong("Some people think you hold your breath for three seconds, and half of it comes straight back.")).not.toContain("hold"));
  test("what is warned of that is said to be right the other way", () => expect(wrong("Don't leave replacing it every few months to your daughter.")).not.toContain("renew"));
  test("a word that is part of a number of something else", () => expect(wrong("Wait half an hour and then do the second squirt.")).not.toContain("squirt"));
  test("a length of time that has the word of how often", () => expect(wrong("Swap the wick, once it's lit it lasts twelve months.")).not.toContain("wick"));
  test("what is asked and answered with a no", () => expect(wrong("And would you wash it every evening? No, you keep it dry.")).not.toContain("dry"));
  test("what was so long ago", () => expect(wrong("Half a squirt ago, as we say.")).not.toContain("squirt"));
  test("what most people think", () => expect(wrong("Most people think you wash it every evening.")).not.toContain("dry"));
  test("what may be read elsewhere", () => expect(wrong("You may read that you wash it every evening, and that was the old kind.")).not.toContain("dry"));
  test("words round another passage's own", () => expect(wrong("Then put your head right back.")).not.toContain("lenses"));
});

test.each([
  ["Hold your breath for three seconds.", "hold"],
  ["Replace it every three years.", "renew"],
  ["You know, half a squirt will do.", "squirt"],
  ["You wash it every evening.", "dry"],
  ["You swap the wick once a month.", "wick"],
  ["Three squirts each time.", "squirt"],
  ["Most people wash it every evening.", "dry"],
  ["You can put them right back straight away.", "lenses"],
])("what is wrong stays wrong: %s", (says, item) => expect(wrong(says)).toContain(item));

describe("what is wrong is told", () => {
  test("though the wrong statement names what is not to be said with the right one", () => expect(wrong("One hand is plenty for the case.")).toContain("grip"));
  test("behind what is supposed in speech without punctuation", () => expect(wrong("when the drops have gone put them right back the lenses")).toContain("lenses"));
});

describe("in speech without sentence ends a statement does not run over into what else begins", () => {
  const around = "and the little lever at the top is pushed with the thumb for a dose of it in the day or in the night as the case may be";
  const rubric = compileRubric(card);
  const runs = (says: string) => {
    const stream = streamOf(toldStation([{ role: "candidate", says: `${around} ${says} ${around}` }], "talk"), ["candidate"]);
    const incorrect = rubric.elements.find(({ item }) => item === "dry")!.incorrect[0]!;
    return windowsFor(incorrect, postingsOf(stream, rubric), stream, 0.5).map((window) => runsOn(window, stream));
  };
  test("something is told between its words", () => expect(runs("so you wash your hands you plug the lamp in every evening")).toEqual([true]));
  test("nothing is", () => expect(runs("so you wash it with the lamp on every evening")).toEqual([false]));
});

describe("of what only the wrong statement says something must be said", () => {
  const lamp = cardWith(`
      - { id: glow, label: It may glow, say: ["your lamp might glow red", "a red glow is nothing to fear"], incorrect: ["red glow|gleam (never light)|(never trim) it again"] }
`);
  const held = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, lamp).incorrect.map(({ item }) => item);
  test.each(["You might see a red glow.", "There's a red glow to it, and it's over quickly."])("not by: %s", (says) => expect(held(says)).toEqual([]));
  test("though a word of it is left out", () => expect(held("With a red glow you never light it.")).toEqual(["glow"]));
});

describe("turns without a verb go with the turns beside them", () => {
  const spread = cardWith(`
      - { id: bin, label: Thrown away after four weeks, quantity: { value: 4, unit: week }, say: ["once it is open bin the lantern oil after {quantity}"] }
      - { id: oil, label: Oil on the wick, say: [pour oil on the wick or the grate], incorrect: [pour water straight on the wick] }
`);
  const content = (item: string, ...says: string[]) => markTalk([...OPENING, ...says], {}, spread).items.find(({ id }) => id === item)?.content;
  test("a wrong number", () => expect(content("bin", "C: Once it is open, the lantern oil.", "P: Right.", "C: Four months.", "P: Okay.", "C: And then you bin it.")).toBe("incorrect"));
  test("the right one", () => expect(content("bin", "C: Once it is open, the lantern oil.", "P: Right.", "C: Four weeks.", "P: Okay.", "C: And then you bin it.")).toBe("complete"));
  test("a wrong statement", () => expect(content("oil", "C: Water.", "P: Okay.", "C: Straight on the wick you pour that.")).toBe("incorrect"));
  test("not over what the patient asks", () => expect(content("oil", "C: Water.", "P: Is that in the big blue jug over there?", "C: Straight on the wick you pour the oil.")).not.toBe("incorrect"));
  test("what is denied in one of them rules the other out no more", () => expect(content("oil", "C: Oil on the wick.", "P: Okay.", "C: But no water, or on the grate you pour it.")).toBe("complete"));
});

describe("what says far more than a short passage of another item was meant by itself", () => {
  const lamp = cardWith(`
      - { id: count, label: Counts to sixty, say: ["count to {quantity}"], quantity: { value: 60, unit: second } }
      - { id: shutter, label: Shutter after a quarter of an hour, say: ["{quantity} before the shutter goes back on the lantern", "leave the lantern {quantity} before the shutter goes on"], quantity: { value: 15, unit: minute } }
`);
  const wrongOf = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, lamp).incorrect.map(({ item }) => item);
  test("wrong", () => expect(wrongOf("Sixty seconds before the shutter goes back on the lantern.")).toContain("shutter"));
  test("nothing of it", () => expect(wrongOf("Count to sixty.")).toEqual([]));
});

describe("what is said to kill is warned of, however it is put", () => {
  const oil = cardWith(`
      - { id: feed, label: Oil once a week, say: [once a week oil the lantern], incorrect: [oil the lantern every day] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, oil).items.find(({ id }) => id === "feed")?.content;
  test.each(["Who goes to oil the lantern every day, it can kill them.", "Oil the lantern every day and you would die of the fumes."])("%s", (says) => expect(content(says)).not.toBe("incorrect"));
  test.each(["Oil the lantern every day.", "Oil the lantern every day, it won't kill you."])("but: %s", (says) => expect(content(says)).toBe("incorrect"));
});

describe("what is told of a state says nothing of what is not yet so", () => {
  const oil = cardWith(`
      - { id: order, label: Orders oil in good time, say: [order oil in good time], incorrect: ["order more oil when the lantern is empty", "buy the closed lantern another wick when it is burnt"] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, oil).items.find(({ id }) => id === "order")?.content;
  test.each(["Order more oil when the lantern is nearly empty.", "Order more oil for the lantern before it's empty.", "Buy the closed lantern another wick when it's close to burnt."])("%s", (says) => expect(content(says)).not.toBe("incorrect"));
  test("but: when it is", () => expect(content("Order more oil when the lantern is empty.")).toBe("incorrect"));
});

describe("what must not be is allowed by nobody", () => {
  const wet = cardWith(`
      - { id: dry, label: Keeps it dry, say: [don't get the lantern wet] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, wet).items.find(({ id }) => id === "dry")?.content;
  test.each(["Wet the lantern must not get.", "The lantern with wet hands you should not touch."])("%s", (says) => expect(content(says)).not.toBe("incorrect"));
  test("but what may be is", () => expect(content("You can get the lantern wet.")).toBe("incorrect"));
});

describe("one word that only stands for the statement's is held against nobody", () => {
  const rub = cardWith(`
      - { id: rub, label: Rubs it once, say: [rub the lantern once], incorrect: [keep wiping] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, rub).items.find(({ id }) => id === "rub")?.content;
  test("a word near to it", () => expect(content("Clean cloth on it.")).not.toBe("incorrect"));
  test("its own", () => expect(content("You keep wiping it.")).toBe("incorrect"));
});

describe("words most of which only stand for the statement's are held against nobody", () => {
  const bins = cardWith(`
      - { id: bin, label: Hands it back, say: [bring the old lantern back to us], incorrect: [throw|chuck|toss the used|old|finished lantern|gadget|one in|with household|general|ordinary|kitchen|normal stuff|waste|rubbish] }
`);
  const content = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, bins).items.find(({ id }) => id === "bin")?.content;
  test("its own", () => expect(content("You chuck the old one in the kitchen waste.")).toBe("incorrect"));
  test("words of something else", () => expect(content("start that one okay nearly there now just the boring house keeping bits")).not.toBe("incorrect"));
});
