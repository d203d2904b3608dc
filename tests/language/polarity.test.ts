import { describe, expect, test } from "vitest";
import { clausesOf } from "../../src/language/clause.ts";
import { polarityOf } from "../../src/language/polarity.ts";
import { tokenise } from "../../src/language/token.ts";

/** Whether the first token with this text is denied. */
function denied(sentence: string, word: string): boolean {
  const tokens = tokenise(sentence.split(" "));
  const place = tokens.findIndex((token) => token.text === word);
  if (place < 0) throw new Error(`'${word}' is not in '${sentence}'`);
  return polarityOf(tokens, clausesOf(tokens))[place]!.negated;
}

// Invented spoken instructions: behaviour, not proof. tests/bench/polarity.ts measures on NegEx annotations.
describe("a spoken instruction is denied", () => {
  test.each([
    ["don't shake it", "shake"],
    ["the red lantern is fine, the lamp isn't", "lamp"],
    ["don't lie down and wait till the morning", "wait"],
    ["don't just sit there and wait to see", "wait"],
    ["don't you dare shake it", "shake"],
    ["don't you go shaking it", "shaking"],
    ["heaven forbid you swallow it", "swallow"],
    ["bin the booklet, nobody reads it", "booklet"],
    ["don't bother rinsing it", "rinsing"],
    ["i wouldn't bother with the lid", "lid"],
    ["no call to shake it first", "shake"],
    ["ignore the counter", "counter"],
    ["wet fingers don't matter", "fingers"],
    ["dont shake it", "shake"],
    ["you never share your pen", "share"],
    ["there's no need to shake it", "shake"],
    ["you don't need to prime it every time", "prime"],
    ["use it without touching the tip", "touching"],
    ["avoid storing it in the bathroom", "bathroom"],
    ["sharing pens is not safe", "sharing"],
    ["sharing pens is a real no", "sharing"],
    ["keeping it in the car is a bad idea", "car"],
    ["do not share or lend it", "lend"],
    ["instead of shaking it just press", "shaking"],
    ["do not take it with grapefruit, milk or juice", "juice"],
    ["do not twist it, bend it or force it", "force"],
    ["if you forget to shake it the dose is wrong", "shake"],
    ["do not worry about wiping the nozzle", "wiping"],
    ["i would not lose sleep over measuring it", "measuring"],
    ["wiping the nozzle makes no odds", "wiping"],
    ["goggles are best left alone", "goggles"],
    ["stay off the goggles", "goggles"],
    ["if it is late, on no account put two in", "two"],
    ["if you forget, under no circumstances put two in", "two"],
    ["steer well clear of the goggles", "goggles"],
    ["say no to the goggles", "goggles"],
    ["give the goggles a wide berth", "goggles"],
    ["goggles nowhere near the heater", "heater"],
    ["goggles by the heater are no good", "goggles"],
    ["never the same day as the goggles", "goggles"],
    ["goggles are ones to avoid", "goggles"],
    ["keep it off the heater", "heater"],
    ["not by the cooker or anything that gets hot", "hot"],
    ["do not let the twins use it in the garden", "garden"],
    ["never put two in at once", "once"],
    ["keep it well out of the damp", "damp"],
    ["keep it off the windowsill", "windowsill"],
    ["the ones you are not wearing go in the tin", "wearing"],
    ["don't think you need to oil it", "oil"],
    ["it's not good for it to get damp", "damp"],
    ["beetroot juice leave that on the shelf", "beetroot"],
    ["under no circumstances do you bend the tube", "bend"],
    ["with vinegar never", "vinegar"],
    ["do not use the lantern spray twice a day", "twice"],
    ["you won't need a lantern test twice a year", "test"],
    ["it isn't every week you dust the lantern", "dust"],
    ["not a damp wipe", "wipe"],
    ["oiling it is not needed", "oiling"],
    ["if you have missed one, on no account light two the next night", "two"],
    ["if you miss one on no account light two", "light"],
    ["turnip juice, i'd rather you didn't.", "turnip"],
    ["turnip juice, give it a miss.", "turnip"],
    ["the oiling is one you can skip", "oiling"],
    ["oiling the hinge is not necessary", "oiling"],
  ])("%s (%s)", (sentence, word) => expect(denied(sentence, word)).toBe(true));
});

describe("a spoken instruction is affirmed", () => {
  test.each([
    ["if it lands on your cheek, never mind, have another go", "lands"],
    ["no need to give the goggles a wide berth", "goggles"],
    ["she can have some out of the bottle", "bottle"],
    ["throw it out of the car window", "window"],
    ["a warm bag out of the microwave", "microwave"],
    ["you don't have to keep away from the heater", "heater"],
    ["don't bother keeping off the heater", "heater"],
    ["it wouldn't hurt to write the date on", "write"],
    ["it's not a bad idea to write the date on", "write"],
    ["there's no reason not to write the date on", "write"],
    ["there's nothing to stop you writing the date on", "writing"],
    ["don't you shake it every time?", "shake"],
    ["don't forget to shake it", "shake"],
    ["the oiling isn't one you can skip", "oiling"],
    ["i don't think it can be left out that oiling", "oiling"],
    ["the oiling is not optional", "oiling"],
    ["don't avoid the hinge", "hinge"],
    ["never mind if the tip touches the wick", "touches"],
    ["it doesn't matter if the tip touches the wick", "touches"],
    ["oil the hinge doesn't matter how it looks", "oil"],
    ["you oil the hinge doesn't matter that you think it's fine", "oil"],
    ["turnip juice, no bother. any other juice, i'd rather you didn't.", "turnip"],
    ["don't put off the shaking", "shaking"],
    ["don't put off ringing us", "ringing"],
    ["not only shake it but prime it", "shake"],
    ["don't worry just breathe out", "breathe"],
    ["don't worry about the noise", "noise"],
    ["turn away from the lamp and empty the tube", "empty"],
    ["never inject without changing the needle", "changing"],
    ["don't use it until you have primed it", "primed"],
    ["no problem, shake it well", "shake"],
    ["keep it for next summer no bother", "summer"],
    ["no bother, shake it well", "shake"],
    ["i can't stress enough to shake it", "shake"],
    ["don't rush but hold your breath", "hold"],
    ["it's your inhaler, isn't it, so shake it", "shake"],
    ["use no more than two puffs", "puffs"],
    ["if you miss a dose take it later", "dose"],
    ["do not hesitate to call us", "call"],
    ["don't be frightened to use the second", "second"],
    ["don't wait, have some juice", "juice"],
    ["if it does not help in three weeks see your doctor", "doctor"],
    ["if it isn't better in a week or so, see your doctor", "doctor"],
    ["no vinegar you take a soft brush and sweep it", "brush"],
    ["don't scrub it put it on the rack", "rack"],
    ["not by the oven keep it on the landing", "landing"],
    ["nothing nasty it wears off by noon", "noon"],
    ["not on the worktop this tin goes upstairs", "upstairs"],
    ["don't hang about nine nine nine", "nine"],
    ["no the linctus is too weak for this", "linctus"],
    ["no put the cork back", "cork"],
    ["slide it gently out of its tube", "tube"],
    ["the ones you are not wearing go in the tin", "tin"],
    ["they say people don't, and have a peep inside", "peep"],
    ["don't dawdle, down goes a spoon of honey before supper or tea", "honey"],
    ["keep it dry you wash it that is a bad idea", "dry"],
    ["it keeps the edge off the ache", "ache"],
    ["don't open them bring the tin back", "bring"],
    ["don't panic and wait till it settles", "wait"],
    ["don't sit up and wait for the ambulance", "wait"],
    ["sit down and wait till it settles", "wait"],
    ["it would be bad for a kitten", "kitten"],
    ["not on the lid does your sister know", "sister"],
    ["blue one not helping call ambulance straight away", "ambulance"],
    ["the old bell not working just ring the new one", "ring"],
  ])("%s (%s)", (sentence, word) => expect(denied(sentence, word)).toBe(false));
});

test("what may happen is told from what to do", () => {
  const hypothetical = (sentence: string) => {
    const tokens = tokenise(sentence.split(" "));
    return polarityOf(tokens, clausesOf(tokens))[tokens.length - 1]!.hypothetical;
  };
  expect(hypothetical("if you don't shake it")).toBe(true);
  expect(hypothetical("some people don't shake it")).toBe(true);
  expect(hypothetical("loads of people only shake it")).toBe(true);
  expect(hypothetical("loads of people shake it")).toBe(false);
  expect(hypothetical("so don't shake it")).toBe(false);
  expect(hypothetical("because you don't shake it")).toBe(true);
  expect(hypothetical("because it mustn't go in a fire")).toBe(false);
  expect(hypothetical("well if you miss one just do not take two")).toBe(false);
  expect(hypothetical("if you feel a bit dopey at the wheel just wind the window down")).toBe(false);
  expect(hypothetical("if you forget one load it twice the next morning")).toBe(false);
  expect(hypothetical("if you skip a day just have an extra one in the evening")).toBe(false);
  expect(hypothetical("if you miss one do two the next day")).toBe(false);
  expect(hypothetical("if it clicks you've gone too far")).toBe(false);
  expect(hypothetical("if it means you've gone too far")).toBe(true);
  expect(hypothetical("if he can't be woken just let him sleep")).toBe(false);
  expect(hypothetical("if he won't wake up properly just leave him")).toBe(false);
  expect(hypothetical("if it drops below seven that is a fault")).toBe(false);
  expect(hypothetical("if you get a cough that is dry")).toBe(true);
});

test("what is looked for and what somebody cannot do comes to the same, denied or not", () => {
  const eitherWay = (sentence: string, word: string) => {
    const tokens = tokenise(sentence.split(" "));
    return polarityOf(tokens, clausesOf(tokens))[tokens.findIndex(({ text }) => text === word)]!.eitherWay;
  };
  expect(eitherWay("make sure there's no grit in the spout", "grit")).toBe(true);
  expect(eitherWay("have a look in case there is grit", "grit")).toBe(true);
  expect(eitherWay("if you cannot whistle", "whistle")).toBe(true);
  expect(eitherWay("if you find it hard to whistle", "whistle")).toBe(true);
  expect(eitherWay("make sure you rinse the grit off", "grit")).toBe(false);
  expect(eitherWay("do not whistle", "whistle")).toBe(false);
});

// Invented: a denial reaches over what parts it from what it denies.
describe("a denial is carried", () => {
  test.each([
    ["this is not a toy for the cat", "toy"],
    ["it is not your spare lantern", "lantern"],
    ["polishing it is not a good idea", "polishing"],
    ["never do the following: feed it toast, or sing to it", "toast"],
    ["never do the following: feed it toast, or sing to it", "sing"],
    ["please don't, whatever anyone tells you, feed it toast", "feed"],
    ["you should not, even if you are bored, feed it toast", "feed"],
    ["don't tip it over and then polish it", "polish"],
    ["you may be tempted to feed it toast, but please don't do that", "toast"],
    ["the shop may say feed it toast, ignore that", "toast"],
    ["the worst thing you can do is feed it toast", "feed"],
    ["it's a myth that you can feed it toast", "feed"],
    ["under no circumstances feed it toast", "feed"],
    ["so it has a little hook hold the lantern over the hook and gently lower the ring on to the hook don't let the glass touch the wall", "touch"],
  ])("%s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(true));

  test.each([
    ["never do the following: feed it toast. Then polish it", "polish"],
    ["so nothing leaks out and then what you do is polish it", "polish"],
    ["people don't, and have a look inside", "look"],
    ["don't feed it, and then polish it", "polish"],
    ["feed it toast, please", "toast"],
  ])("no further: %s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(false));
});

describe("what is told behind a supposition is no supposition", () => {
  const supposed = (sentence: string, word: string) => {
    const tokens = tokenise(sentence.split(" "));
    return polarityOf(tokens, clausesOf(tokens))[tokens.findIndex(({ text }) => text === word)]!.hypothetical;
  };
  test.each([
    ["if you miss one just have two the next day", "miss", "two"],
    ["if you missed yesterday just have twice as many today", "missed", "twice"],
    ["if that happens take an extra one", "happens", "extra"],
    ["if you forget it simply make up for it tomorrow", "forget", "tomorrow"],
    ["if you haven't used it for a week, prime it again", "week", "prime"],
    ["and suppose you forget, double up the next day", "forget", "double"],
  ])("%s", (sentence, before, behind) => {
    expect(supposed(sentence, before)).toBe(true);
    expect(supposed(sentence, behind)).toBe(false);
  });

  test.each(["it doesn't matter if the tip touches the wick", "it's no problem if the tip touches the wick", "never mind if the tip touches the wick"])("what is allowed is told: %s", (sentence) => expect(supposed(sentence, "touches")).toBe(false));
  test.each(["it matters if the tip touches the wick", "don't worry if the tip touches the wick"])("but not so: %s", (sentence) => expect(supposed(sentence, "touches")).toBe(true));
  test("a list of what is supposed goes on", () => expect(supposed("if it's cloudy, lumpy or discoloured, throw it away", "lumpy")).toBe(true));
  test("an adverb within it opens nothing", () => expect(supposed("if you just take two you will be fine", "two")).toBe(true));
});

describe("a list without 'or' is denied as a whole", () => {
  test.each([
    ["no ibuprofen, aspirin, naproxen.", "naproxen"],
    ["please don't take ibuprofen, aspirin, naproxen.", "naproxen"],
    ["you must never take ibuprofen, aspirin, naproxen.", "aspirin"],
    ["don't take aspirin, ibuprofen, anything like that.", "ibuprofen"],
  ])("%s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(true));

  test.each([
    ["no aspirin, paracetamol is fine.", "paracetamol"],
    ["don't wait, have some juice, then biscuits.", "juice"],
    ["no appetite, itching, dark urine.", "urine"],
    ["call us if you can't breathe, sweating, shaking.", "shaking"],
    ["no rush, shake it, press it.", "press"],
  ])("but %s: not %s", (sentence, word) => expect(denied(sentence, word)).toBe(false));
});

describe("what need not be known or asked first is not what is to be done", () => {
  test.each([
    ["you don't need to know what she has taken to call nine one one.", "call"],
    ["you don't have to be sure to ring an ambulance.", "ring"],
    ["you don't need to ask anybody to ring us.", "ring"],
    ["you don't have to wait for anybody to ring an ambulance.", "ring"],
  ])("%s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(false));

  test.each([
    ["you don't need to know how to inject it.", "inject"],
    ["you don't need to know what she wants to drink.", "drink"],
    ["you don't need to call nine one one.", "call"],
  ])("but %s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(true));
});

describe("what need not be told is denied, though 'call' opens a clause elsewhere", () => {
  test.each([
    ["there's no call to tell the dentist.", "tell"],
    ["if you're poorly, no call to tell the clinic.", "tell"],
    ["if you're poorly, no cause to tell the clinic.", "tell"],
    ["if you're poorly and not eating, no need to tell the clinic.", "tell"],
  ])("%s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(true));

  test.each([
    ["you're not eating so tell the clinic.", "tell"],
    ["if she's not waking call an ambulance.", "ambulance"],
  ])("but %s: not %s", (sentence, word) => expect(denied(sentence, word)).toBe(false));
});

test("how many somebody has is part of what they are told not to do", () => {
  expect(denied("don't go fiddling with how many you have off your own bat.", "bat")).toBe(true);
  expect(denied("don't rush it you have a minute.", "minute")).toBe(false);
});

describe("what is bad in a case only names the case, and denies nothing of what is done then", () => {
  test.each([
    ["wear both if it is bad", "wear"],
    ["wear both if the pain is bad", "both"],
    ["take it when the nights are dangerous", "take"],
    ["wear both if that is bad", "both"],
    ["wear both when this is bad", "wear"],
    ["if your neighbour's lantern is bad she could try yours", "lantern"],
    ["if your neighbour's lantern is bad give him yours", "give"],
  ])("%s: not %s", (sentence, word) => expect(denied(sentence, word)).toBe(false));

  test.each([
    ["wearing both is bad", "wearing"],
    ["never wear both if it is bad", "wear"],
  ])("but %s: %s", (sentence, word) => expect(denied(sentence, word)).toBe(true));
});
