// Marks are common practice in transcription, no source; the sentences are invented.
import { expect, test } from "vitest";
import { readWords } from "../../src/transcript/words.ts";

const kinds = (text: string) => readWords(text, 1).map(({ text: word, kind, doubtful }) => `${word}${kind === "word" ? "" : ` <${kind}>`}${doubtful === true ? " ?" : ""}`);

test.each<[string, string[]]>([
  ["Don't use a pre-filled pen, twice-daily.", ["Don't", "use", "a", "pre-filled", "pen,", "twice-daily."]],
  ["well - okay … then", ["well", "-", "okay", "…", "then"]],
  ["[laughs] yes [door closes].", ["[laughs] <sound>", "yes", "[door closes]. <sound>"]],
  ["yes[laughs]no", ["yes", "[laughs] <sound>", "no"]],
  ["\"[coughs]\" sorry", ["\"[coughs]\" <sound>", "sorry"]],
  ["take [inaudible 0:32] daily", ["take", "[inaudible 0:32] <unintelligible>", "daily"]],
  ["take [??] or [?] daily", ["take", "[??] <unintelligible>", "or", "[?] <unintelligible>", "daily"]],
  ["the [metformin?] tablet", ["the", "metformin? ?", "tablet"]],
  ["(laughs) (short pause) (unclear) (clears throat)", ["(laughs) <sound>", "(short pause) <sound>", "(unclear) <unintelligible>", "(clears throat) <sound>"]],
  ["prime it (four sprays) first", ["prime", "it", "(four", "sprays)", "first"]],
  ["breathe out (not into the device) and hold", ["breathe", "out", "(not", "into", "the", "device)", "and", "hold"]],
  ["press (and then inhale slowly)", ["press", "(and", "then", "inhale", "slowly)"]],
  ["*coughs* it is *very* important", ["*coughs* <sound>", "it", "is", "*very*", "important"]],
  ["take [the] cap off, [2] puffs", ["take", "[the]", "cap", "off,", "[2]", "puffs"]],
  ["my name is [NAME] and [PERSON 1]", ["my", "name", "is", "[NAME]", "and", "[PERSON 1]"]],
  ["<UNSURE>two puffs</UNSURE>, yes", ["two ?", "puffs, ?", "yes"]],
  ["((two puffs)) (? a day ?) (())", ["two ?", "puffs ?", "a ?", "day ?", "(()) <unintelligible>"]],
  ["<UNIN/> and <INAUDIBLE_SPEECH/>, <laugh> <NOISE/>", ["<UNIN/> <unintelligible>", "and", "<INAUDIBLE_SPEECH/>, <unintelligible>", "<laugh> <sound>", "<NOISE/> <sound>"]],
  ["<i>two</i> <b>puffs</b><br>now", ["two", "puffs", "now"]],
  ["less than 5 < 6 and 7 > 6", ["less", "than", "5", "<", "6", "and", "7", ">", "6"]],
  ["♪ la la ♪", ["♪ <sound>", "la", "la", "♪ <sound>"]],
  ["an [open bracket and (another", ["an", "[open", "bracket", "and", "(another"]],
])("%j", (text, expected) => {
  expect(kinds(text)).toEqual(expected);
});

test("a mark that runs over a line end is one word with a single blank", () => {
  expect(readWords("yes [door\n   closes] no", 4)).toMatchObject([{ text: "yes", line: 4 }, { text: "[door closes]", line: 4 }, { text: "no", line: 5 }]);
});
