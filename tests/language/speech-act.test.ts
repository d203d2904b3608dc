import { describe, expect, test } from "vitest";
import { speechActs } from "../../src/language/speech-act.ts";
import { tokenise } from "../../src/language/token.ts";

function actOf(sentence: string, word: string) {
  const tokens = tokenise(sentence.split(" "));
  const place = tokens.findIndex((token) => token.text === word);
  if (place < 0) throw new Error(`'${word}' is not in '${sentence}'`);
  return speechActs(tokens, new Set())[place];
}

// Invented sentences, with and without punctuation.
describe("telling", () => {
  test.each([
    ["Shake the inhaler well.", "shake"],
    ["Shake it well, okay?", "shake"],
    ["It's empty, isn't it, and then you order another, okay?", "order"],
    ["what goes in the back of it is your medicine", "medicine"],
    ["Shake it well, okay?", "okay"],
    ["I'd like to go through it with you now, is that okay?", "through"],
    ["You hold your breath for ten seconds, does that make sense?", "hold"],
    ["can you shake it for me", "shake"],
    ["could you please just hold it for ten seconds", "hold"],
    ["what you need to do is shake it", "shake"],
    ["when you breathe in press the top", "press"],
    ["Should the strip not fill up, bin it and open another.", "open"],
    ["have a look inside the mouthpiece first", "mouthpiece"],
    ["do that twice a day", "twice"],
    ["that is why you rinse your mouth", "rinse"],
    ["does its job within a minute", "minute"],
    ["would you shake it for me", "shake"],
    ["What would bother me is if your ankles swell.", "ankles"],
    ["What is in here opens the nose.", "opens"],
    ["when she is asleep hardly any of it goes in", "hardly"],
    ["where your sock would end, press there", "press"],
    ["keep the leaflet and read what is on the back", "back"],
    ["one ring will do you four weeks or more", "weeks"],
    ["you would have those off at night", "night"],
    ["under no circumstances do you use two", "two"],
    ["it can not leak through the seal can it lay it flat", "flat"],
    ["could you run it under the tap", "tap"],
    ["it is one, no wait, what does it say, two sprays each", "sprays"],
    ["it is three months, is it, no, it is four weeks after opening", "weeks"],
    ["two drops, what am I saying, one drop in each eye", "one"],
    ["do you use any creams okay so this patch is for pain", "pain"],
    ["so what could you notice your skin might itch", "itch"],
  ])("%s (%s)", (sentence, word) => expect(actOf(sentence, word)).toBe("tell"));
});

describe("asking so that yes or no will do", () => {
  test.each([
    ["Do you know how to shake it?", "shake"],
    ["have you used one before", "used"],
    ["do you have any allergies", "allergies"],
    ["You'll dust it every time, won't you, not just when it's new?", "dust"],
    ["Any allergies?", "allergies"],
    ["I'd like to go through it with you now, is that okay?", "okay"],
    ["okay and have you got any questions", "questions"],
    ["Can I check your name?", "name"],
    ["so before we start is it okay if i explain this", "explain"],
    ["hello my name is robin can i check your date of birth please", "birth"],
    ["does that clear your nose", "clear"],
    ["and your birthday please", "birthday"],
    ["hello robin are you allergic to anything", "allergic"],
    ["this is your kit did the nurse go over it", "nurse"],
    ["i just need your postcode", "postcode"],
  ])("%s (%s)", (sentence, word) => expect(actOf(sentence, word)).toBe("ask-closed"));
});

describe("asking openly", () => {
  test.each([
    ["What do you know about this inhaler?", "inhaler"],
    ["how are you going to use it", "use"],
    ["tell me what you already know", "know"],
    ["can you tell me how you would use it", "use"],
    ["what did the doctor say about it", "doctor"],
    ["what about storage", "storage"],
    ["and whereabouts do you live", "live"],
    ["hello there what did they tell you", "tell"],
    ["Which bit of the lantern are you going to dust?", "bit"],
    ["Show me which ones you would take tonight.", "ones"],
  ])("%s (%s)", (sentence, word) => expect(actOf(sentence, word)).toBe("ask-open"));
});

describe("a request tells, whatever it is put as; whether somebody does it anyway is asked", () => {
  test.each([
    ["Can I ask you to keep this card in your purse?", "card", "tell"],
    ["Can I ask where you keep this card?", "card", "ask-closed"],
    ["Do me a favour, write the date on it?", "date", "tell"],
    ["Would you take your lenses out first?", "lenses", "tell"],
    ["Would you normally take your lenses out first?", "lenses", "ask-closed"],
    ["When you brush your teeth, are your gums bleeding at all?", "teeth", "ask-closed"],
    ["When you brush your teeth, rinse with water.", "teeth", "tell"],
    ["Take two drops at night, and is your sight any better?", "drops", "tell"],
    ["Take two drops at night, and is your sight any better?", "sight", "ask-closed"],
  ])("%s (%s: %s)", (sentence, word, act) => expect(actOf(sentence, word)).toBe(act));
});

describe("what the speaker asks and answers in the same breath is told", () => {
  test.each([
    ["Did you know you can't take ibuprofen with it? You can't, I'm afraid.", "ibuprofen"],
    ["Has anyone said it can darken your eyes? Well, it can, over the months.", "darken"],
  ])("%s", (sentence, word) => expect(actOf(sentence, word)).toBe("tell"));
  test.each([
    ["Did you know you can't take ibuprofen with it?", "ibuprofen"],
    ["Has anyone said it can darken your eyes? What did they tell you?", "darken"],
    ["Has anyone said it can darken your eyes? I can tell you later.", "darken"],
  ])("but not %s", (sentence, word) => expect(actOf(sentence, word)).toBe("ask-closed"));
});

describe("who points at a thing, or puts a question to themselves and goes on, tells", () => {
  test.each([
    ["See this yellow tub? Straight in there.", "tub"],
    ["You see how I count to ten before I let go? You do that.", "count"],
    ["And feel where your eye meets the nose?", "nose"],
    ["Which hand for the left side? Your right one.", "hand"],
    ["Which hand for your left nostril? Your right one.", "hand"],
    ["And why do I look down the spout? Because things get in there.", "spout"],
  ])("%s", (sentence, word) => expect(actOf(sentence, word)).toBe("tell"));
  test.each([
    ["Which hand do you write with? Show me.", "hand"],
    ["What medicines are you on? I will write them down.", "medicines"],
    ["Which eye? Is it the left one?", "eye"],
    ["Which eye?", "eye"],
    ["What else? Take your time.", "else"],
    ["What about allergies? That's important to know.", "allergies"],
    ["Which other medicines? It's just so I know they mix.", "medicines"],
    ["Do you see the nurse for your blood tests?", "nurse"],
    ["Can you see the numbers in the window?", "numbers"],
  ])("but not: %s", (sentence, word) => expect(actOf(sentence, word)).not.toBe("tell"));
});

describe("where a question begins and ends without its form", () => {
  test.each([
    ["Anything from the chemist, the health shop?", "chemist", "ask-closed"],
    ["Press it, and then?", "press", "tell"],
    ["are you robin i'm shay the pharmacist", "robin", "ask-closed"],
    ["are you robin i'm shay the pharmacist", "pharmacist", "tell"],
    ["whats really important dont miss the tests", "tests", "tell"],
    ["whats important to you", "important", "ask-open"],
    ["and is it one tablet no so its the little yellow ones and you have four of them", "four", "tell"],
    ["and is it one tablet no so its the little yellow ones and you have four of them", "tablet", "ask-closed"],
    ["have you got any allergies no okay", "allergies", "ask-closed"],
  ])("%s (%s: %s)", (sentence, word, act) => expect(actOf(sentence, word)).toBe(act));
});
