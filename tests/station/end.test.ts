import { describe, expect, test } from "vitest";
import { inside, stationIn } from "./reading.ts";

/* Invented talk: behaviour only. */
const TALK = [
  "Candidate: Hello, my name is Iris and I'm the pharmacist. I'd like to talk about your cream today.",
  "Patient: Yes, that's fine, I have never used it before.",
  "Candidate: One fingertip of it covers both hands. Rub it in thinly in the evening, and wash your hands afterwards.",
  "Patient: And if it stings?",
  "Candidate: A little is nothing to worry about. If it lasts longer than an hour, wash it off and ring us.",
];
const STOP = "Announcer: Please stop now. That is the end of the station.";
const HEADING = "\n# Feedback\n";
const LATER = ["Candidate: I was nervous about the washing of hands.", "Patient: You did not look it, and I knew what to do."];

test("of two things that end a station the earlier one does", () => {
  const stopped = stationIn([...TALK, STOP, ...LATER, HEADING, ...LATER].join("\n"));
  expect(stopped.end.reason).toContain("at the announcement");
  expect(inside(stopped)).toMatch(/ring us\.$/);
  const headed = stationIn([...TALK, HEADING, ...LATER, STOP].join("\n"));
  expect(headed.end.reason).toContain("before the heading 'Feedback'");
  expect(inside(headed)).toMatch(/ring us\.$/);
});

describe("in speech without full stops", () => {
  const rough = (stop: string) => `[0:00] ${[...TALK, ...TALK, ...TALK].join(" ").replace(/\w+: /g, "").replace(/[.,?]/g, "").toLowerCase()} ${stop}`;
  test.each(["ok stop there thats six fifty", "alright lets leave it there"])("'%s' late in the talk stops the clock", (stop) => {
    const { end } = stationIn(rough(`${stop} was the hour right i forgot`));
    expect(end.reason).toContain("at the announcement");
  });
  test.each([
    "keep it on the shelf leave it there with the lid on it and come back in a week",
    "wipe the mouthpiece put the cap on and leave it there until tomorrow then do the same again",
    "push it down until it clicks and stop there dont force it",
  ])("what is said of a thing does not: %s", (says) => expect(stationIn(rough(says)).end.reason).not.toContain("at the announcement"));
});
