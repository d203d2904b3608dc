import { describe, expect, test } from "vitest";
import { plainQuestion } from "../../src/scoring/questions.ts";
import { replyTo } from "../../src/scoring/replies.ts";
import type { MarkSheet } from "../../src/scoring/types.ts";
import { toldStation } from "../../src/station/told.ts";
import { CARD, item, markTalk, OPENING } from "./station-card.ts";

// All talks are invented. The card scripts two questions: when it is empty (answered by the counter), and swimming.
const asked = (sheet: MarkSheet) => sheet.questions.filter((question) => question.asked !== null);
const scripted = (sheet: MarkSheet, id: string) => sheet.questions.find((question) => question.id === id)!;

describe("what counts as a question of the patient", () => {
  test("a spoken question stands on the sheet once, in the patient's whole words", () => {
    const sheet = markTalk([...OPENING, "P: Right. How will I know when it is empty, though? I mean, when it runs out?", "C: Look at the counter on the back."]);
    expect(asked(sheet)).toHaveLength(1);
    expect(scripted(sheet, "empty").asked!.quote).toBe("How will I know when it is empty, though? I mean, when it runs out?");
  });

  test("two questions of the script in one turn are two", () => {
    const sheet = markTalk([...OPENING, "P: How will I know when it is empty? And can I go swimming with it?", "C: The counter shows how many puffs are left. And yes you can swim."]);
    expect(asked(sheet).map(({ id }) => id)).toEqual(["empty", "swim"]);
  });

  test("a statement on the same matter is no question", () => {
    const sheet = markTalk([...OPENING, "C: What do you do for sport?", "P: I go swimming.", "C: Lovely."]);
    expect(scripted(sheet, "swim").answer).toBe("not-asked");
    expect(asked(sheet)).toEqual([]);
  });

  test("a guess at the candidate's own question, confirmed, is an answer", () => {
    const sheet = markTalk([...OPENING, "C: What do you think you need before each puff?", "P: Um, is it a good breath out?", "C: That's it exactly."]);
    expect(asked(sheet)).toEqual([]);
  });

  test("a tag behind a statement asks nothing", () => {
    expect(asked(markTalk([...OPENING, "P: Saves a lot of time, doesn't it.", "C: It does."]))).toEqual([]);
  });

  test("the quote ends where somebody else speaks", () => {
    const sheet = markTalk([...OPENING, "P: Can I go swimming?", "C: Yes.", "P: With it, I mean.", "C: Yes you can swim."]);
    expect(scripted(sheet, "swim").asked!.quote).toBe("Can I go swimming?");
  });

  test("a scripted question asked in other words is known by its answer right behind it", () => {
    const sheet = markTalk([...OPENING, "P: And what tells me to fetch a new one?", "C: The counter shows how many puffs are left."]);
    expect(scripted(sheet, "empty")).toMatchObject({ answer: "answered", scripted: true });
    expect(asked(sheet)).toHaveLength(1);
  });
});

describe("what is none of the script's questions", () => {
  test("one without a word of it, whose answer is told only after the candidate went on to something else", () => {
    const sheet = markTalk([...OPENING, "P: Does my hamster matter?", "C: Ha, no, your hamster has nothing to do with this. So the counter shows how many puffs are left."]);
    expect(scripted(sheet, "empty").answer).toBe("not-asked");
    expect(sheet.questions.filter(({ scripted: own }) => !own).map(({ label }) => label)).toEqual(["Does my hamster matter?"]);
  });

  test("a reply that wins time first still answers", () => {
    const sheet = markTalk([...OPENING, "P: And what tells me to fetch a new one?", "C: Good question. So the counter shows how many puffs are left."]);
    expect(scripted(sheet, "empty").answer).toBe("answered");
  });

  test("small words in common are no question of the script", () => {
    const sheet = markTalk([...OPENING, "C: What do you do for sport?", "P: I go with it.", "C: Yes you can swim."]);
    expect(scripted(sheet, "swim").answer).toBe("not-asked");
  });
});

describe("how it was answered", () => {
  test("an answer ends where the patient takes it as given, and not at a mere 'okay'", () => {
    const reply = (taken: string) => {
      const station = toldStation([{ role: "patient", says: "How will I know?" }, { role: "candidate", says: "Look at the back." }, { role: "patient", says: taken }, { role: "candidate", says: "Shake it." }], "talk");
      const { first, end } = replyTo(station, { first: 0, end: 4 })!;
      return station.transcript.words.slice(first, end).map(({ text }) => text).join(" ");
    };
    expect(reply("Right, got it.")).toBe("Look at the back.");
    expect(reply("Okay.")).toBe("Look at the back. Okay. Shake it.");
  });

  test("'what if' asks, also behind a question of the candidate's own", () => {
    const sheet = markTalk([...OPENING, "C: Shake it well. Does that make sense?", "P: Yes. What if it is empty?", "C: The counter on the back tells you."]);
    expect(asked(sheet).map(({ asked: words }) => words!.quote)).toContain("What if it is empty?");
  });

  const answer = (reply: string, question = "P: Can I go swimming with it?") => scripted(markTalk([...OPENING, question, reply]), "swim");

  test("a plain no or yes is an answer, and the next thing said is what is quoted", () => {
    const { answer: how, evidence } = answer("C: No, I would not. It hates the damp. And it likes a dry shelf.");
    expect(how).toBe("answered");
    expect(evidence!.quote).toBe("No, I would not. It hates the damp.");
  });

  test("put off: it will be checked", () => {
    expect(answer("C: I'd have to ask about that, I'll find out and ring you.").answer).toBe("deferred");
  });

  test("put off behind a word that wins time, and behind the patient's own", () => {
    expect(scripted(markTalk([...OPENING, "P: Can I go swimming with it?", "C: Um, good question.", "P: I love the sea, me.", "C: Let me check and come back to you."]), "swim").answer).toBe("deferred");
  });

  test.each([
    ["P: How long do I hold it for?", "C: Ten seconds. Is that the phone? I'll just ask a colleague to get it.", "answered"],
    ["P: Is it safe with my heart tablets?", "C: Yes, that's completely fine. If you get any chest pain, ask your doctor about it.", "answered"],
    ["P: Is it safe with my heart tablets?", "C: Yes, let me check that for you.", "deferred"],
    ["P: Does it taste funny?", "C: Shake it before each puff.", "ignored"],
    ["P: Does it taste funny?", "C: So first you give it a good shake.", "ignored"],
    ["P: Is there anything I do to it first?", "C: Give it a good shake.", "answered"],
  ])("%s %s: %s", (question, reply, how) => expect(asked(markTalk([...OPENING, question, reply])).map(({ answer }) => answer)).toEqual([how]));

  test("the next step is no answer to the script's question", () => {
    expect(answer("C: So first you give it a good shake and shake it before each puff.").answer).toBe("ignored");
  });

  test("passed over for another topic", () => {
    expect(answer("C: Yeah, so, going back to the case, wash it once a week.").answer).toBe("ignored");
  });

  test("passed over with a question back", () => {
    expect(answer("C: Ooh, good for you. Which pool?").answer).toBe("ignored");
  });

  test("answered wrongly", () => {
    expect(answer("C: You must never swim.").answer).toBe("incorrect");
  });

  test("an unsafe statement is no good answer, to whatever question", () => {
    const sheet = markTalk([...OPENING, "P: Could my sister have a go of it?", "C: Sure, other people can use your inhaler."]);
    expect(asked(sheet)).toEqual([expect.objectContaining({ scripted: false, answer: "incorrect" })]);
  });
});

describe("came after the patient's question", () => {
  test("what a reply says at once, though it shares no word with the question", () => {
    const sheet = markTalk([...OPENING, "P: Is there anything I do to it first?", "C: Give it a good shake."]);
    expect(item(sheet, "shake")).toMatchObject({ content: "complete", elicitation: "after-question" });
  });

  test("but not what a new sentence adds", () => {
    const sheet = markTalk([...OPENING, "P: Is it the blue one?", "C: It is. And give it a good shake."]);
    expect(item(sheet, "shake")).toMatchObject({ content: "complete", elicitation: "offered" });
  });

  test("nor what a reply says to a statement", () => {
    const sheet = markTalk([...OPENING, "P: I see, thank you.", "C: Give it a good shake."]);
    expect(item(sheet, "shake").elicitation).toBe("offered");
  });
});

describe("shown, not said", () => {
  test.each([
    ["another sentence shows something", "C: Screw the lid on like so. And you keep your breath in."],
    ["it points back", "C: You keep your breath in and stay like that."],
    ["it compares", "C: You keep your breath in, like a diver."],
  ])("%s: nothing is shown", (_, said) => {
    expect(item(markTalk([...OPENING, said]), "hold").content).not.toBe("cannot-tell");
  });

  test("in its own sentence it is", () => {
    expect(item(markTalk([...OPENING, "C: And you keep your breath in, like this, you see."]), "hold").content).toBe("cannot-tell");
  });
});

describe("the scripted question in ordinary words", () => {
  test.each([
    [["how will i know when it's empty|finished|(run out)", "does it tell me when it's empty"], "Does it tell me when it's empty?"],
    [["what if i forget (it|one)"], "What if I forget it?"],
    [["do i stop|(still need) it now"], "Do I stop it now?"],
  ])("%j", (says, spoken) => expect(plainQuestion(says)).toBe(spoken));
});

describe("a no to what is to be done is a wrong answer to a scripted question", () => {
  const card = { ...CARD, scenario: { ...CARD.scenario, questions: [{ id: "shaking", says: ["do i have to shake the inhaler", "do i only shake the inhaler"], answered_by: ["shake"] }] } };
  const answer = (asks: string, reply: string) => markTalk([...OPENING, `P: ${asks}`, `C: ${reply}`], {}, card).questions.find(({ id }) => id === "shaking")!.answer;

  test.each(["No, only when it's new.", "Not really, no.", "No, you don't."])("%s", (reply) => expect(answer("Do I have to shake the inhaler?", reply)).toBe("incorrect"));
  test.each(["Yes, every time.", "Yes, you do.", "No, I mean yes, every time."])("but not: %s", (reply) => expect(answer("Do I have to shake the inhaler?", reply)).toBe("answered"));
  test("nor a no to 'only'", () => expect(answer("Do I only shake the inhaler?", "No, press it too.")).toBe("answered"));
});
