import { expect, test } from "vitest";
import { stationIn } from "./reading.ts";

/* Invented talk: behaviour only. */
const STEPS = [
  "Candidate: Hello, my name is Iris and I'm the pharmacist. I'd like to talk about your cream today.",
  "Patient: Yes, that's fine, I have never used it before.",
  "Candidate: One fingertip of it covers both hands. Rub it in thinly in the evening, and wash your hands afterwards.",
  "Patient: And if it stings?",
  "Candidate: A little is nothing to worry about. If it lasts longer than an hour, wash it off and ring us.",
  "Patient: Good.",
  "Candidate: Keep it below twenty five degrees, and throw it away three months after you opened it.",
];
const AGAIN = "Candidate: Sorry, let me start over from the beginning.";
const restarts = (at: number) => stationIn([...STEPS.slice(0, at), AGAIN, ...STEPS.slice(at)].join("\n")).restarts.length;

test("'let me start over from the beginning' without a new greeting is believed early in the talk, and taken for one explanation's later", () => {
  expect(restarts(2)).toBe(1);
  expect(restarts(6)).toBe(0);
});

test("'scrap that' takes one sentence back: the station starts anew only where a new greeting follows", () => {
  const slip = "Candidate: You rub it in once a week, sorry, no, scrap that, once a day in the evening.";
  expect(stationIn([...STEPS.slice(0, 2), slip, ...STEPS.slice(2)].join("\n")).restarts.length).toBe(0);
  expect(stationIn([STEPS[0], STEPS[1], "Candidate: No, scrap that. Hello, my name is Iris, I'm the pharmacist.", ...STEPS.slice(2)].join("\n")).restarts.length).toBe(1);
});
