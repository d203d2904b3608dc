import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// All talks and rubrics are invented.
const CARD = cardWith(
  [
    "      - id: dose",
    "        label: One puff",
    '        say: ["take {quantity} each time", "have {quantity} at once", "you need {quantity}"]',
    "        quantity: { value: 1, unit: puff }",
    "      - id: keep-going",
    "        label: Every day, also when well",
    "        say: [use it every day even when you feel well, keep going with it when you feel better]",
    "        incorrect: [stop it when you feel better|well, leave it off on good days, there's no need to use it on good days]",
    "      - id: own",
    "        label: For one person only",
    "        say: [nobody else may use it, it is only for you]",
    "        incorrect: [your brother|sister|husband|wife can use|have|borrow it]",
    "      - id: mornings",
    "        label: In the morning only",
    "        say: [once a day in the morning]",
    "        incorrect: [have it morning and night]",
    "      - id: alarm",
    "        label: Calls the ambulance",
    "        say: [call an ambulance]",
    "        must: [ambulance]",
    "        incorrect: [lie down until it's over]",
  ].join("\n"),
  "minimum: 50",
  "  - { id: share, label: Others may use it, severity: major, say: [your brother|sister|husband|wife can use|have|borrow it] }",
);
const found = (id: string, ...lines: string[]) => item(markTalk([...OPENING, ...lines], {}, CARD), id);

describe("what the patient has wrong and is told no to is told rightly", () => {
  test.each([
    ["keep-going", "P: Can I stop it when I feel better?", "C: No, please don't."],
    ["keep-going", "P: So I stop it when I feel better?", "C: Well, I wouldn't. It comes back."],
    ["keep-going", "P: I'd stop it when I feel better.", "C: Best not."],
    ["keep-going", "P: I stop it when I feel better, or?", "C: No, please don't."],
    ["keep-going", "P: I'd stop it when I feel better.", "C: Oh, please don't, love."],
    ["keep-going", "P: And I can stop it when I feel better?", "C: Not with this one, I'm afraid."],
    ["own", "P: My sister can have it then?", "C: She can't, sorry."],
    ["alarm", "P: So I lie down until it's over?", "C: No, that's one for the ambulance."],
    ["dose", "P: Do I take three puffs each time?", "C: No, just the one."],
    ["dose", "P: Do I take three puffs each time?", "C: Not three, no. One puff."],
    ["dose", "P: I was going to take three puffs each time.", "C: Just the one, yours."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: You can not. Carry on till it's gone."],
    ["keep-going", "P: I'd stop it when I feel better.", "C: Ah now, you wouldn't."],
    ["own", "P: My sister can have it then?", "C: Indeed she can't, it's yours."],
    ["mornings", "P: So I have it morning and night?", "C: Just mornings, this one."],
  ])("%s is said: %s %s", (id, said, reply) => {
    expect(found(id, said, reply)).toMatchObject({ content: "complete", elicitation: "after-question" });
    expect(found(id, said, reply).elements[0]).not.toHaveProperty("reason");
  });

  test.each([
    ["keep-going", "P: Can I stop it when I feel better?", "C: No."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: No, no problem."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: Not yet, only when the doctor says."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: Not unless it's a good day."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: I don't see why not."],
    ["keep-going", "P: Would it matter if I stop it when I feel better?", "C: No, not with these."],
    ["keep-going", "P: Would I get into trouble if I stop it when I feel better?", "C: No, everybody does."],
    ["keep-going", "P: Is it silly to stop it when I feel better?", "C: No, lots of people do."],
    ["keep-going", "P: Has anyone been poorly who could stop it when they feel better?", "C: No, not that I know."],
    ["keep-going", "P: Anything against it if I stop it when I feel better?", "C: No, go for it."],
    ["keep-going", "P: Do I stop it when I feel better or carry on?", "C: No, good question."],
    ["keep-going", "P: There's no need to use it on good days?", "C: No, there isn't."],
    ["keep-going", "P: I'd stop it when I feel better.", "C: I wouldn't worry about that."],
    ["keep-going", "P: I'd stop it when I feel better.", "C: Now, where did I put that box?"],
    ["alarm", "P: So I lie down until it's over?", "C: No, please don't, that won't help."],
    ["dose", "P: Do I take three puffs each time?", "C: No, I wouldn't."],
    ["dose", "P: Do I take three puffs each time?", "C: No, four puffs."],
    ["dose", "P: I was going to take three puffs each time.", "C: Just two, yours."],
    ["keep-going", "P: Can I stop it when I feel better?", "C: You can't. Not until Friday."],
    ["mornings", "P: So I have it morning and night?", "C: Just wait till I find the box."],
    ["mornings", "P: So I have it morning and night?", "C: Just the morning and the night, yes."],
  ])("%s is not said: %s %s", (id, said, reply) => {
    expect(found(id, said, reply).content).not.toBe("complete");
  });
});

test("what the patient answers is read with the candidate's question", () => {
  expect(found("keep-going", "C: And on good days?", "P: Sure I'd leave it off.", "C: Ah now, you wouldn't.")).toMatchObject({ content: "complete", elicitation: "after-question" });
});
