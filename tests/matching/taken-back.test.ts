import { describe, expect, test } from "vitest";
import { compiledRubric } from "../../src/mark.ts";
import { matchUtterance } from "../../src/matching/utterance.ts";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(
  `
      - { id: pin, label: No pin in the nozzle, say: [never put a pin in the nozzle], incorrect: [use a pin to unblock it] }
`,
  "minimum: 50",
  `
  - { id: share, label: Others may use it, severity: major, say: ["you can share it with your husband|wife", "can your wife|husband use it"], must: [share|use] }
`,
);
const sheet = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, card);
const shared = (...lines: string[]) => sheet(...lines).unsafe.found.map(({ corrected }) => (corrected ? "taken back" : "stands"));

describe("an unsafe statement that is taken back is listed and does not stand", () => {
  test.each([
    "You can share it with your husband, actually no, don't share it.",
    "You can share it with your husband. Hang on, that's not right. It's only for you.",
    "You can share it with your husband. It's only for you, sorry.",
    "You can share it with your husband. Forget that, please never share it.",
    "You can share it with your husband, no you can't, what am I saying.",
    "You can share it with your husband. That's a lie, don't.",
  ])("%s", (says) => expect(shared(`C: ${says}`)).toEqual(["taken back"]));

  test.each([
    ["what only wins time", "You can share it with your husband. Hang on, let me get the leaflet."],
    ["what need not be done", "You can share it with your husband, you don't have to."],
    ["what is no reason against it", "You can share it with your husband, it doesn't matter."],
    ["a denial of something else", "You can share it with your husband. Don't shake it."],
    ["a reason for it", "You can share it with your husband, so he doesn't need his own."],
    ["another thing forgotten", "You can share it with your husband, and forget the date on the box."],
    ["an apology", "You can share it with your husband. Sorry about the noise in here."],
  ])("but not by %s", (_, says) => expect(shared(`C: ${says}`)).toEqual(["stands"]));
});

test("a wrong statement that is taken back is a slip, whatever else is said", () => {
  const { incorrect, items } = sheet("C: You can use a pin to unblock it. Hang on, that's not right.");
  expect(incorrect).toEqual([expect.objectContaining({ item: "pin", corrected: true })]);
  expect(items.find(({ id }) => id === "pin")!.content).toBe("absent");
});

test.each([
  ["two to make up for it no never do that", []],
  ["two to make up for it no drops in the morning then", ["wrong"]],
])("so is one in speech without punctuation: %s", (says, verdicts) => {
  const double = cardWith(`
      - { id: double, label: No double dose, say: [never two at once], incorrect: ["two|double tomorrow|(the next night) to catch|make up"] }
`, "minimum: 50");
  expect(matchUtterance(says, compiledRubric(double)).elements.filter(({ element, takenBack }) => element === "double" && takenBack !== true).map(({ verdict }) => verdict)).toEqual(verdicts);
});

describe("what the patient asks or has understood, and the candidate says yes to", () => {
  const QUESTION = "P: Can I share it with my wife?";
  test.each([
    [QUESTION, "Yes, of course you can."],
    [QUESTION, "Um, well, yes, that's fine."],
    [QUESTION, "Good question. Yeah, sure."],
    [QUESTION, "You can certainly share it."],
    [QUESTION, "That's right."],
    ["P: So I can share it with my wife.", "Yes, exactly."],
    ["P: So I can share it with my wife.", "Yeah."],
  ])("%s %s", (patient, reply) => expect(shared(patient, `C: ${reply}`)).toEqual(["stands"]));

  test.each([
    [QUESTION, "I want to make sure I get this right, so let me look it up."],
    [QUESTION, "Please make sure she gets her own."],
    [QUESTION, "Well you can buy her one of these over the counter."],
    [QUESTION, "Yes, lots of people ask me that. It's only for you."],
    [QUESTION, "Yes, I get asked that a lot. You'd never share it."],
    [QUESTION, "Of course not."],
    [QUESTION, "Definitely not, no."],
    ["P: So I can share it with my wife.", "No, don't."],
    ["P: So I don't share it with my wife.", "Exactly."],
    ["P: So I can share it with my wife.", "Right, now let's talk about storage."],
    ["P: I share it with my wife.", "Yeah, okay. So, now the dose."],
    ["P: So I can share it with my wife.", "Perfect, just one thing, that's not for her."],
  ])("no yes: %s %s", (patient, reply) => expect(shared(patient, `C: ${reply}`)).toEqual([]));
});
