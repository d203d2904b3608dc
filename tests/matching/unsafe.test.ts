import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(
  `
      - { id: check, label: Checks the bottle, say: [check the name on the bottle] }
      - { id: head, label: Head back, say: [tilt your head back, tip your head back] }
      - { id: lid, label: Lid down, say: [pull your lower lid down, pull the bottom eyelid down] }
      - { id: drive, label: When to drive, say: [drive when your sight is clear], incorrect: ["drive whenever|(as soon as you like)"] }
`,
  "minimum: 50",
  `
  - { id: tip, label: Tip on the lid, severity: moderate, say: ["use the tip|nozzle to open|pull|hold|lift your lid|eyelid", "it's fine if the tip touches your eye"], must: ["(tip|nozzle|bottle)", "(touches|pull|lift|open|hold)"] }
  - { id: pin, label: A pin, severity: moderate, say: ["if|when it clogs use a pin", use a pin to unblock it] }
  - { id: stop, label: Stops the preventer, severity: major, say: [stop your preventer and use this, "use this instead of your preventer", "when you feel well stop your preventer"] }
  - { id: reuse, label: Keeps the needle, severity: moderate, say: ["keep|save the needle for tomorrow|(the next night)|(another go)"] }
  - { id: more, label: More of it, severity: moderate, say: [if it is not working just use more drops, "two|three in|into each|both eyes"], not_with: ["(not|never|blurred)"] }
  - { id: stuck, label: Waits, severity: major, say: ["(can't swallow)|(can't breathe) just|then drink|wait|(don't worry)"] }
  - { id: second, label: A second one, severity: major, say: ["not|isn't holding|working stick|put another|second one|lens on", "don't ring here we can't help"] }
  - { id: once, label: Primes a new one alone, severity: moderate, say: ["only|just prime it when you open|start a new bottle"] }
  - { id: leave, label: Leaves the preventer, severity: major, say: ["you don't need the preventer any more"] }
`,
);
const sheet = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, card);
const unsafe = (says: string) => sheet(says).unsafe.found.map(({ id }) => id);
const after = (asks: string, says: string) => markTalk([...OPENING, `P: ${asks}`, `C: ${says}`], {}, card).unsafe.found.map(({ id }) => id);

describe("who affirms what the patient denied says no to it", () => {
  test.each(["You do, use it every night.", "Oh you do. Use it every night.", "Yes you do, it is still yours to use.", "Oh yes, you still need it."])("%s", (says) => expect(after("So I don't need the preventer any more?", says)).toEqual([]));
  test.each(["Yes, you don't need it.", "That's right, yes.", "Yes, that's it, you don't."])("a yes to the denial is one: %s", (says) => expect(after("So I don't need the preventer any more?", says)).toEqual(["leave"]));
});

describe("a statement that supposes what somebody cannot do is not stated by who forbids what it tells", () => {
  test.each(["If you can't swallow don't wait, ring us.", "If you can't swallow, don't just sit there and wait, get seen.", "If you can't breathe never wait.", "If you can't swallow you mustn't just wait."])("%s", (says) => expect(unsafe(says)).toEqual([]));
  test.each(["If you can't swallow, just wait.", "If you can't breathe, then wait.", "If you can't swallow, don't ring anybody, just wait."])("%s", (says) => expect(unsafe(says)).toEqual(["stuck"]));
});

describe("the wrong statements of an element may all amount to an unsafe one", () => {
  const first = cardWith(
    `
      - { id: order, label: Pen first, say: [the pen goes in before the syrup, use the pen first], incorrect: [start with the syrup and see, "syrup|medicine comes first", "the pen is the last resort"] }
      - { id: again, label: Again, say: ["use the other one after {quantity}"], quantity: { value: 5, unit: minute }, incorrect: [the other one is only for the doctor] }
`,
    "minimum: 50",
    `
  - { id: syrup-first, label: Syrup first, severity: major, say: [give the syrup instead], wrong_of: [order/order], not_with: ["(rash)"] }
  - { id: never-again, label: Never again, severity: major, say: [never use the other one], wrong_of: [again/again] }
`,
  );
  const found = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, first).unsafe.found;
  test.each([
    ["You start with the syrup and see how she does.", "syrup-first"],
    ["The pen is the very last resort.", "syrup-first"],
    ["The other one is only for the doctor.", "never-again"],
  ])("%s", (says, id) => expect(found(says).map((one) => one.id)).toEqual([id]));
  test.each([
    "The pen goes in before the syrup.",
    "Never start with the syrup to see how she does.",
    "Never use the pen first.",
    "With only a rash you start with the syrup and see.",
    "Use the other one after twenty minutes.",
  ])("not so what is right, its contrary, a wrong number, or what its own not_with rules out: %s", (says) => expect(found(says)).toEqual([]));
  test("told once, in its own words before those", () => expect(new Set(found("Give the syrup instead. Start with the syrup and see.").map((one) => one.id))).toEqual(new Set(["syrup-first"])));
});

describe("a wrong line that amounts to two statements is kept from each by its own not_with", () => {
  const both = cardWith(
    `
      - { id: order, label: Pen first, say: [the pen goes in before the syrup], incorrect: [start with the syrup and see] }
`,
    "minimum: 50",
    `
  - { id: syrup-first, label: Syrup first, severity: major, say: [give the syrup instead], wrong_of: [order/order], not_with: [rash] }
  - { id: syrup-alone, label: Syrup alone, severity: major, say: [the syrup is all you need], wrong_of: [order/order], not_with: [fever] }
`,
  );
  const found = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, both).unsafe.found.map(({ id }) => id);
  test.each([
    ["You start with the syrup and see.", ["syrup-first", "syrup-alone"]],
    ["With only a rash you start with the syrup and see.", ["syrup-alone"]],
    ["With only a fever you start with the syrup and see.", ["syrup-first"]],
  ])("%s", (says, ids) => expect(found(says)).toEqual(ids));
});

describe("words of an unsafe statement that are said rightly are none", () => {
  test.each([
    "Check the name on the bottle, then tilt your head back and pull your lower lid down.",
    "Check the name on the bottle, then lean your head back and pull your lower lid down.",
    "Check the name on the bottle, then tip your head back and pull your lower lid down.",
  ])("%s", (says) => {
    expect(unsafe(says)).toEqual([]);
    expect(sheet(says).items.filter(({ content }) => content === "complete").map(({ id }) => id)).toEqual(expect.arrayContaining(["head", "lid"]));
  });

  test("said as the statement says it, it stands", () => expect(unsafe("Use the tip of the bottle to pull your lid down.")).toEqual(["tip"]));
});

describe("a number that is taken back before all is said", () => {
  test.each(["It's two drops, one drop I mean, in each eye.", "Put two, sorry, one in each eye."])("was never stated: %s", (says) => expect(unsafe(says)).toEqual([]));
  test("what takes its place is stated", () => expect(unsafe("It's one drop, two drops I mean, in each eye.")).toEqual(["more"]));
});

test("what others ask in between parts a statement in speech without punctuation", () => {
  const told = (...turns: string[]) => markTalk([...OPENING, ...turns], {}, card).unsafe.found.map(({ id }) => id);
  expect(told("C: so keep the needle", "P: right okay and what about the drops at night", "C: for tomorrow you have the other box")).toEqual([]);
  expect(told("C: so keep the needle", "P: okay", "C: for tomorrow")).toEqual(["reuse"]);
});

describe("what is supposed", () => {
  test.each([
    "You'd damage it if you use a pin to unblock it.",
    "When you stop your preventer and just use this one, your asthma gets worse.",
    "If you're on holiday and you stop your preventer your asthma can get worse.",
    "If the tip touches your eye, the bottle is contaminated, so bin it.",
  ])("warns: %s", (says) => expect(unsafe(says)).toEqual([]));

  test.each([
    ["If it clogs just use a pin to unblock it.", "pin"],
    ["It's fine if the tip touches your eye.", "tip"],
    ["When you feel well stop your preventer and use this.", "stop"],
  ])("tells behind it, or allows: %s", (says, id) => expect(unsafe(says)).toContain(id));
});

describe("what makes it unsafe must be said, however light the words are", () => {
  test.each([
    ["Keep the needle in for ten seconds.", []],
    ["Keep the needle for another go.", ["reuse"]],
    ["Save the needle for tomorrow.", ["reuse"]],
    ["This one doesn't replace your preventer.", []],
    ["Use this one instead of your preventer.", ["stop"]],
  ])("%s", (says, ids) => expect(unsafe(says)).toEqual(ids));

  test.each([
    ["You may drive as soon as your sight is clear.", []],
    ["You may drive as soon as you like.", ["drive"]],
  ])("and what makes it wrong: %s", (says, items) => expect(sheet(says).incorrect.map(({ item }) => item)).toEqual(items));
});

describe("what may not stand with a statement", () => {
  test("is not what its own words say", () => expect(unsafe("If it's not working just use more drops.")).toEqual(["more"]));
  test("is all else", () => expect(unsafe("If it's not working just use more of the blurred drops.")).toEqual([]));
});

describe("a statement that denies something itself, under \"if\", is still denied by a denial of what it tells", () => {
  test.each([
    ["If it's not holding stick a second one on.", ["second"]],
    ["If it's not holding don't stick a second one on.", []],
    ["If it's not holding never put another one on, ring us.", []],
    ["If it's not holding, it's no good putting a second one on.", []],
    ["Please don't ring here, once you leave we can't help.", ["second"]],
  ])("%s", (says, ids) => expect(unsafe(says)).toEqual(ids));
});

describe("a condition put as a question, and answered in the same breath", () => {
  test.each([
    ["Well again? Stop your preventer and use this.", ["stop"]],
    ["Clogged? Use a pin to unblock it.", ["pin"]],
    ["Clogged? Don't use a pin to unblock it.", []],
  ])("%s", (says, ids) => expect(unsafe(says)).toEqual(ids));
});

test.each([
  "My last patient used a pin to unblock it, and that was that.",
  "You'd be amazed how many people use a pin to unblock it.",
  "It's tempting to use a pin to unblock it, but it ruins the hole.",
])("what others do, or one might be tempted to, is held against nobody: %s", (says) => expect(unsafe(says)).toEqual([]));

describe("what the sentence of an unsafe statement says of its subject earns nothing", () => {
  const tests = cardWith(
    `
      - { id: tests, label: Blood tests, say: ["go to your blood tests at the clinic", "no tests|(blood tests) no tablets|prescription"] }
      - { id: book, label: The book, say: [write it in your yellow book] }
`,
    "minimum: 50",
    `
  - { id: skip, label: Leaves out tests, severity: major, say: ["give|skip (the blood tests)|(your blood tests) a miss|(whenever you like)"] }
`,
  );
  const complete = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, tests).items.filter(({ id, content }) => /tests|book/.test(id) && content === "complete").map(({ id }) => id);

  test("beside it", () => expect(complete("You can give the blood tests a miss, the clinic has plenty to do.")).toEqual([]));
  test("another thing in the same sentence does", () => expect(complete("You can give the blood tests a miss, and write it in your yellow book.")).toEqual(["book"]));
  test("and said rightly in another sentence too", () => expect(complete("Give the blood tests a miss. Go to your blood tests at the clinic.")).toEqual(["tests"]));

  test("one half of 'no tests, no tablets' refuses nothing", () => {
    expect(complete("You won't need any blood tests with this one.")).toEqual([]);
    expect(complete("No blood tests, no tablets.")).toEqual(["tests"]);
  });
});

describe("what only sounds like it", () => {
  const spares = cardWith(
    `
      - { id: hold, label: Holds it, say: [hold the lever] }
`,
    "minimum: 50",
    `
  - { id: spare, label: Keeps the second one back, severity: major, say: ["second|spare is for another day"] }
  - { id: share, label: Lets children have it, severity: moderate, say: ["let the kids|children have|take a go|puff"] }
`,
  );
  const found = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, spares).unsafe.found.map(({ id }) => id);
  test("a moment is no second one", () => {
    expect(found("Hold the lever there for a second.")).toEqual([]);
    expect(found("The second is for another day.")).toEqual(["spare"]);
  });
  test("how much people of some age have lets nobody do anything", () => {
    expect(found("Children under five have ten puffs.")).toEqual([]);
    expect(found("Let the children have a puff.")).toEqual(["share"]);
    expect(found("Let the children have two puffs.")).toEqual(["share"]);
  });
});

describe("what some of the speaker's patients think is no statement", () => {
  test.each(["A lot of my gents think they can stop their preventer and use this, and they end up in here.", "Some of our patients stop the preventer and use this."])("%s", (says) => expect(unsafe(says)).toEqual([]));
  test("said to the patient, it is", () => expect(unsafe("You can stop your preventer and use this.")).toEqual(["stop"]));
});

describe("a particle that ends an alternative of several words tells what is done", () => {
  const lamp = cardWith("      - { id: glow, label: It glows, say: [the lamp glows] }", "minimum: 50", `
  - { id: smoke, label: Leaves it lit in smoke, severity: major, say: ["smoky|sooty|smouldering (snuff it twice)|(leave it on)|(is normal)"] }
`);
  const found = (says: string) => markTalk([...OPENING, `C: ${says}`], {}, lamp).unsafe.found.map(({ id }) => id);
  test("left out", () => expect(found("If it is smoky, that is against the rules, and I'd leave the wicks alone.")).toEqual([]));
  test("said", () => expect(found("When it's smoky just leave it on.")).toEqual(["smoke"]));
});

describe("what is dispensed with or comes to nothing beside an unsafe statement takes nothing of it back", () => {
  test.each([
    ["use the nozzle to lift your lid no need to be careful about that", "tip"],
    ["I use a pin to unblock it never had any bother", "pin"],
    ["use a pin to unblock it nobody is counting", "pin"],
  ])("%s", (says, id) => expect(unsafe(says)).toEqual([id]));

  test.each(["there's no need to use the nozzle to lift your lid", "using a pin to unblock it never did anyone any good", "no need for a pin to unblock it"])("%s", (says) => expect(unsafe(says)).toEqual([]));
});

describe("a condition that denies is no denial of what is told behind it", () => {
  test.each([
    ["if the second go hasnt worked keep the needle for tomorrow", "reuse"],
    ["if they dont believe it just use the nozzle to lift your lid", "tip"],
  ])("%s", (says, id) => expect(unsafe(says)).toEqual([id]));

  test.each(["if it hasn't worked don't use a pin to unblock it"])("%s", (says) => expect(unsafe(says)).toEqual([]));
});

describe("of two words that restrict one must be said", () => {
  test.each(["only prime it when you open a new bottle", "you just prime it when you start a new bottle"])("%s", (says) => expect(unsafe(says)).toEqual(["once"]));

  test.each(["when you open a new bottle, prime it", "prime it when you start a new bottle, and every morning"])("%s", (says) => expect(unsafe(says)).toEqual([]));
});
