// Towards whom the course of a talk leans: above nought the candidate, below the patient. Invented talk.
import { describe, expect, test } from "vitest";
import { clausesOf, isPunctuated } from "../../src/station/clauses.ts";
import { courseOf } from "../../src/station/course.ts";
import { findCues, soundCues } from "../../src/station/cues.ts";
import { tokenise } from "../../src/station/token.ts";
import { bare } from "./reading.ts";
import { transcriptOf } from "./transcript-of.ts";

/** The lean of every word of the talk, by place. */
function leans(talk: string): { words: string[]; pull: Float64Array } {
  const transcript = transcriptOf(talk);
  const tokens = tokenise(transcript);
  const pull = courseOf(tokens, soundCues(findCues(tokens), clausesOf(transcript, tokens), tokens), isPunctuated(tokens));
  return { words: tokens.map(({ norm }) => norm), pull };
}

/** The leans of the words of one stretch. */
function leanOf(talk: string, stretch: string): number[] {
  const { words, pull } = leans(talk);
  const wanted = bare(stretch).split(" ");
  const at = words.findIndex((_, first) => wanted.every((word, place) => words[first + place] === word));
  return [...pull.slice(at, at + wanted.length)];
}

describe("who asks about what is being taught is the one counselled", () => {
  const talk = (question: string): string => `You leave it on for three days. ${question} Then fold it in half and put it in the bin.`;
  test.each(["What if it falls off?", "What happens if he gets two?", "Do I have to shave it?", "How do I know it's empty?", "Can I still swim?", "Is that normal?", "Which side?", "Why not?", "How come?", "So I just press it?"])("%s", (question) => {
    for (const form of [talk(question), bare(talk(question))]) expect(leanOf(form, question.split(" ").slice(0, 2).join(" ")).every((lean) => lean < 0)).toBe(true);
  });

  test.each(["Have you used one before?", "Can I take your name?", "What have they told you about it?", "Who do I have in front of me?", "When do you get up?", "Any other tablets?"])("but not who asks about the listener: %s", (question) => {
    for (const form of [talk(question), bare(talk(question))]) expect(leanOf(form, question).every((lean) => lean >= 0)).toBe(true);
  });
});

test("what is said back is not longer than people say back: after it the candidate goes on", () => {
  const said = "Right, so I wash and dry the arm, peel the back off, put it on flat with my palm over it, press and count to thirty, then I change it on Thursday.";
  const taught = "And when you take one off you fold it with the sticky sides together, and you put it where no child can reach, because there is still enough left in it to do a child serious harm, and you bring it here or put it in the bin.";
  const talk = `Could you talk me through it as if it was Monday? ${said} ${taught}`;
  expect(leanOf(talk, "palm over it, press").every((lean) => lean < 0)).toBe(true);
  expect(leanOf(talk, "to do a child serious harm").every((lean) => lean === 0)).toBe(true);
});
