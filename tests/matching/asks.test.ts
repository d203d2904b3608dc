import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: knows, label: Asks what is known, kind: ask, say: [what do you understand about the lantern, do you understand how the lantern works] }
      - { id: back, label: Has it told back, kind: teach-back, say: [show me how you would use the lantern, talk it through, show how you would use the lantern, you take the lantern and i will watch] }
`);
const content = (item: string, says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === item)?.content;

describe("what was known before is asked", () => {
  test("in so many words", () => expect(content("knows", "What do you understand about the lantern?")).toBe("complete"));
  test("not by asking whether all is understood", () => expect(content("knows", "Do you understand all that about the lantern?")).not.toBe("complete"));
});

describe("a teach-back is asked for", () => {
  test.each(["Show me how you would use the lantern.", "I'll get you to show me how you would use the lantern.", "You take the lantern now, and I will just watch."])("%s", (says) => expect(content("back", says)).toBe("complete"));
  test.each(["Show your family how you would use the lantern.", "Let's talk it through.", "I expect you'll talk it through with your wife.", "I'll take the lantern and you just watch."])("not by: %s", (says) => expect(content("back", says)).not.toBe("complete"));
});

describe("what is refused is not asked, wherever that is said", () => {
  const asking = cardWith(`
      - { id: who, label: Asks whose lantern it is, kind: ask, say: [your name and your postcode please, tell me your name and your postcode] }
`);
  const asked = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, asking).items.find(({ id }) => id === "who")?.content;
  test.each(["your name is enough for me i don't need your postcode", "Never mind your name and your postcode.", "lots of parents tell me your name and your postcode"])("not by: %s", (says) => expect(asked(says)).not.toBe("complete"));
  test("your name and your postcode please", () => expect(asked("Your name and your postcode please?")).toBe("complete"));
});

describe("asking for it to be shown teaches nothing", () => {
  const teaching = cardWith(`
      - { id: dust, label: The lantern is dusted, say: [dust the lantern with a feather] }
`);
  const taught = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, teaching).items.find(({ id }) => id === "dust")?.content;
  test.each(["Show me how you dust the lantern with a feather.", "Would you know to dust the lantern with a feather?", "does dusting the lantern with a feather tire you"])("%s", (says) => expect(taught(says)).not.toBe("complete"));
  test.each(["I'll show you how you dust the lantern with a feather.", "Would you dust the lantern with a feather for me?"])("but: %s", (says) => expect(taught(says)).toBe("complete"));
});

describe("one question asks one thing", () => {
  const asking = cardWith(`
      - { id: rash, label: Asks about a rash, kind: ask, say: ["do you have any rashes or lumps from wicks|candles"] }
`);
  const asked = (...says: string[]) => markTalk([...OPENING, ...says], {}, asking).items.find(({ id }) => id === "rash")?.content;
  test("what is asked next and has more words of it hides none", () => expect(asked("C: Have you rashes or lumps?", "P: No.", "C: And which candles do you have?")).toBe("complete"));
  test("two questions do not make up one", () => expect(asked("C: Do you have any lumps?", "P: No.", "C: And which candles?")).not.toBe("complete"));
});

describe("a name is asked for by saying it as a question", () => {
  const card = cardWith(`
      - { id: who, label: Asks for the name, kind: ask, say: ["(is it|are you|you must be) {name}"], must: ["(is it {name}|are you {name}|must be {name})"] }
`);
  const named = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "who")?.content;
  test.each(["Is it Lena Marsh?", "Are you Lena?", "You must be Lena, is it Lena Marsh?"])("%s", (says) => expect(named(says)).toBe("complete"));
  test.each(["Is it Monday?", "Is it sore?", "Are you keeping well?", "Is it all right if I sit?"])("not by: %s", (says) => expect(named(says)).not.toBe("complete"));
});

describe("a name is asked for by a tag behind it", () => {
  const card = cardWith(`
      - { id: who, label: Asks for the name, kind: ask, say: ["{name} (is it|isn't it|aren't you)"], must: ["({name} is it|{name} isn't it|{name} aren't you)"] }
`);
  const named = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "who")?.content;
  test.each(["Hiya, Lena, is it? Come in.", "You're Lena, aren't you?", "And it's little Lena, isn't it?"])("%s", (says) => expect(named(says)).toBe("complete"));
  test.each(["Sore, is it?", "Monday, is it?", "You're well, aren't you?", "you're tired aren't you"])("not by: %s", (says) => expect(named(says)).not.toBe("complete"));
  const uncased = (says: string) => markTalk(["P: hello there", `C: ${says}`, "P: thats me"], {}, card).items.find(({ id }) => id === "who")?.content;
  test("without capitals a greeting before it makes it a name", () => expect(uncased("hi lena is it come away in and sit down")).toBe("complete"));
  test("and nothing else does", () => expect(uncased("so sore is it where you sit")).not.toBe("complete"));
});

describe("a whole name is asked for by putting it forward", () => {
  const card = cardWith(
    '      - { id: who, label: Asks for the name, kind: ask, say: ["{name} (yeah|is that right)"], must: ["({name} yeah|{name} is that right)"] }',
    "minimum: 50",
  );
  const named = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card).items.find(({ id }) => id === "who")?.content;
  test.each(["I'm Robin. Lena Marsh, yeah?", "You're Lena Marsh, is that right?", "You're Lena, yeah?"])("%s", (says) => expect(named(says)).toBe("complete"));
  test.each(["Lena, yeah?", "I'm Robin Marsh, yeah.", "I'm Robin. Lantern oil, yeah?", "Lena Marsh, yeah, come in."])("not by: %s", (says) => expect(named(says)).not.toBe("complete"));
});

describe("a name is given by a name and a calling alone", () => {
  const card = cardWith(`
      - { id: who, label: Gives own name, say: ["i'm {name}", "{name} duty|(one of the)|the pharmacist|pharmacists"], must: ["(i'm|{name} pharmacist|{name} the pharmacist|{name} one of the pharmacists)"] }
`);
  const named = (says: string) => markTalk(["C: Right.", "P: Hello there.", `C: ${says}`], {}, card).items.find(({ id }) => id === "who")?.content;
  test.each(["Afternoon. Sadie, pharmacist. Name, please?", "Hello, Ravi, the pharmacist.", "Good morning. Priya, one of the pharmacists."])("%s", (says) => expect(named(says)).toBe("complete"));
  test("without capitals, though it looks like an inflection of a small word", () => expect(named("come on in im ines one of the pharmacists here")).toBe("complete"));
  test.each(["Lena, the pharmacist will see you in a minute.", "Doctor, pharmacist, nurse, they can all look at it.", "Lena, pharmacists see this a lot.", "Ask the pharmacist."])("not by: %s", (says) => expect(named(says)).not.toBe("complete"));
});

describe("who has half of a name asks for the rest", () => {
  const asking = cardWith(`
      - { id: who, label: Asks the name, kind: ask, say: ["{name} what"], must: ["({name} what)"] }
`);
  const asked = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, asking).items.find(({ id }) => id === "who")?.content;
  test("You're Lee, aren't you? Lee what?", () => expect(asked("You're Lee, aren't you? Lee what?")).toBe("complete"));
  test.each(["You're Lee, aren't you?", "Lee what matters is the wick."])("not by: %s", (says) => expect(asked(says)).not.toBe("complete"));
});
