import { describe, expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// All talks and rubrics are invented.
const CARD = cardWith(
  [
    "      - id: dose",
    "        label: Two puffs",
    '        say: ["take {quantity} each time", "have {quantity} at once", "you need {quantity}"]',
    "        quantity: { value: 2, unit: puff }",
    "      - id: hold",
    "        label: Hold the breath for ten seconds",
    '        say: ["hold your breath for {quantity}", "keep your breath in for {quantity}"]',
    "        must: [hold|keep]",
    "        quantity: { value: 10, unit: second, tolerance: 1 }",
    "      - id: keep-going",
    "        label: Every day, also when well",
    "        say: [use it every day even when you feel well, keep going with it when you feel better]",
    "        incorrect: [stop it when you feel better|well, leave it off on good days]",
    "      - id: own",
    "        label: For one person only",
    "        say: [nobody else may use it, it is only for you]",
    "        incorrect: [your brother|sister|husband|wife can use|have|borrow it]",
    "      - id: used-before",
    "        label: Asks whether they have used one before",
    "        kind: ask",
    "        say: [have you used one before, have you had one of these]",
  ].join("\n"),
  "minimum: 50",
  "  - { id: share, label: Others may use it, severity: major, say: [your brother|sister|husband|wife can use|have|borrow it] }",
);
const marked = (...lines: string[]) => markTalk([...OPENING, ...lines], {}, CARD);
const content = (id: string, ...lines: string[]) => item(marked(...lines), id).content;

describe("what the patient has wrong and is told to be right is told wrongly", () => {
  test.each([
    ["P: Can I stop it when I feel better?", "C: Yes, of course."],
    ["P: So I stop it when I feel better?", "C: Exactly."],
    ["P: I'd stop it when I feel better.", "C: Good idea."],
    ["P: I'd stop it when I feel better.", "C: Yes, do that."],
    ["P: Could I stop it when I feel better, is that okay?", "C: It is, yes."],
    ["P: And I stop it when I feel better, yes?", "C: Stopping it's fine, yes."],
    ["P: I can stop it when I feel better?", "C: Yes, don't waste it."],
    ["P: I'd stop it when I feel better, would that be okay?", "C: That would be okay, aye."],
    ["P: Can I stop it when I feel better?", "C: Stopping's no problem, yeah."],
    ["P: Can I stop it when I feel better?", "C: Aye, no bother."],
    ["P: Can I stop it when I feel better?", "C: You could, as long as it's summer."],
    ["P: Can I stop it when I feel better?", "C: Go for it."],
    ["P: Can I stop it when I feel better?", "C: Oh, by all means."],
    ["P: Can I not just stop it when I feel better?", "C: Yeah, that's fine."],
    ["P: Couldn't I stop it when I feel better?", "C: Yes, of course."],
    ["P: I could stop it when I feel better, couldn't I?", "C: You could of course."],
    ["P: I'd stop it when I feel better. Is that all right?", "C: I'd do just that."],
    ["P: I'd stop it when I feel better, is that all right?", "C: It's grand, that."],
  ])("%s %s", (said, reply) => {
    const sheet = marked(said, reply);
    expect(item(sheet, "keep-going")).toMatchObject({ content: "incorrect", earned: 0 });
    expect(sheet.incorrect).toEqual([expect.objectContaining({ item: "keep-going", corrected: false })]);
  });

  test.each([
    ["P: Can I stop it when I feel better?", "C: No, please don't."],
    ["P: Can I stop it when I feel better?", "C: No bother asking, but you can't."],
    ["P: Can I stop it when I feel better?", "C: Yes, but not without asking the doctor."],
    ["P: Can I stop it when I feel better?", "C: That's the one everybody asks me."],
    ["P: I'd stop it when I feel better.", "C: Yeah."],
    ["P: I'd stop it when I feel better.", "C: Right, where did I put that box?"],
    ["P: What if I stop it when I feel better?", "C: It will come back, it does with everybody."],
    ["P: Do I stop it when I feel better or carry on?", "C: Yes, good question."],
    ["P: My neighbour stopped it when well.", "C: Perfect timing, here it comes."],
    ["P: Can I not stop it when I feel better?", "C: No, keep going with it."],
    ["P: So I don't stop it when I feel better?", "C: Yes, that's it."],
    ["P: Should I not stop it when I feel better?", "C: Yes, that's right."],
    ["P: Can I stop it when I feel better?", "C: That works out worse in the end."],
    ["P: I stop it when I feel better.", "C: You do, do you?"],
    ["P: I'd stop it when I feel better.", "C: You would? Tell me more."],
  ])("but not %s %s", (said, reply) => {
    expect(content("keep-going", said, reply)).not.toBe("incorrect");
  });

  test("what the candidate tells rightly somewhere stays right: the error is listed as left", () => {
    const sheet = marked("C: Use it every day even when you feel well.", "P: So I stop it when I feel better?", "C: Exactly.");
    expect(item(sheet, "keep-going").content).toBe("complete");
    expect(sheet.teachBack.errors).toHaveLength(1);
  });

  test("the patient speaks of what is theirs as the candidate would of the patient's", () => {
    expect(content("own", "P: She could borrow mine, my sister can have it, can't she?", "C: She could, yes.")).toBe("incorrect");
  });

  test("an unsafe statement stands at the candidate's yes", () => {
    const sheet = marked("P: My brother's out of his, so my brother can borrow it?", "C: He can, yes.");
    expect(sheet.unsafe.found).toEqual([expect.objectContaining({ id: "share", corrected: false, evidence: expect.objectContaining({ role: "candidate" }) })]);
  });
});

describe("an answer says what the candidate asked for, once it is confirmed", () => {
  test.each([
    ["hold", "complete", "C: How long will you hold your breath?", "P: Ten seconds.", "C: Spot on."],
    ["hold", "incorrect", "C: How long will you hold your breath?", "P: Two seconds.", "C: Spot on."],
    ["dose", "complete", "C: How many puffs do you need each time?", "P: Two.", "C: That's the one."],
    ["hold", "complete", "C: How long will you hold your breath?", "P: Ten seconds.", "C: Yes, seconds, so not minutes."],
    ["dose", "incorrect", "C: How many puffs do you need each time?", "P: Four.", "C: That's right."],
    ["keep-going", "incorrect", "C: And on good days?", "P: Sure I'd leave it off.", "C: You would of course."],
    ["hold", "absent", "C: How long will you hold your breath?", "P: Ten seconds.", "C: Now, the box."],
    ["hold", "absent", "C: How long will you hold your breath?", "P: Two seconds.", "C: Not quite."],
    ["hold", "absent", "C: Do you hold your breath for ten seconds?", "P: Mm, yes.", "C: Exactly."],
    ["dose", "absent", "C: Have you used one before, and how many puffs do you need each time?", "P: Four.", "C: Yes, I see."],
  ])("%s is %s: %s %s %s", (id, expected, ...lines) => {
    expect(content(id, ...lines)).toBe(expected);
  });
});

describe("a yes in a case is a yes to who is in it", () => {
  const found = (reply: string) => marked("P: Can my brother have it?", `C: ${reply}`).unsafe.found.map(({ id }) => id);
  test.each(["If he's really struggling, then yes.", "Er, if he feels fine, yes, that's no problem."])("%s", (reply) => expect(found(reply)).toEqual(["share"]));
  test.each(["If the clinic says so, yes.", "If the surgery is happy, yes.", "If it's the same kind as his, yes.", "If it's within the week, yes.", "If he's not well, no."])("but: %s", (reply) => expect(found(reply)).toEqual([]));
});
