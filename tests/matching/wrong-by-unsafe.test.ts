import { describe, expect, test } from "vitest";
import { CARD, cardWith, item, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(
  `
      - { id: needle, label: A new needle each time, say: [put on a new needle every time, a fresh needle for each dose] }
      - { id: yellow-box, label: Into the yellow box, say: [used needles go in the yellow box] }
      - { id: never-share, label: Nobody else, say: [nobody else uses your pen] }
`,
  "minimum: 50",
  `
  - { id: reuse, label: Uses a needle again, severity: major, say: ["get|have a few goes out of one", "one lasts you the week"], contradicts: [needle/needle, yellow-box/yellow-box] }
  - { id: lend, label: Lends the pen, severity: major, say: ["your wife can have a go with it|yours"] }
`,
);
const contents = (...turns: string[]) => new Map(markTalk([...OPENING, ...turns], {}, card).items.map(({ id, content }) => [id, content]));

describe("who states an unsafe thing states wrongly what it contradicts", () => {
  test("in words that the element's own wrong statements lack, in every element that it names", () => {
    const sheet = markTalk([...OPENING, "C: Most people get a few goes out of one."], {}, card);
    expect(sheet.unsafe.found.map(({ id }) => id)).toEqual(["reuse"]);
    const of = (id: string) => sheet.items.find((item) => item.id === id)!;
    expect([of("needle").content, of("yellow-box").content]).toEqual(["incorrect", "incorrect"]);
    expect(of("needle").elements[0]).toMatchObject({ content: "incorrect", reason: expect.stringContaining("'Uses a needle again'"), evidence: [expect.objectContaining({ quote: expect.stringContaining("few goes") })] });
  });
  test("after it was said rightly as well", () => expect(contents("C: Put on a new needle every time.", "P: Really?", "C: Well, one lasts you the week.").get("needle")).toBe("incorrect"));
  test("and no other element", () => expect(contents("C: Your wife can have a go with yours.").get("never-share")).toBe("absent"));
  test.each(["Never get a few goes out of one.", "Don't get a few goes out of one."])("not who warns of it: %s", (says) => expect(contents(`C: ${says}`).get("needle")).not.toBe("incorrect"));
  test("what is taken back is a slip", () => {
    const sheet = markTalk([...OPENING, "C: You can get a few goes out of one. No, sorry, that's wrong, never do that.", "P: Okay.", "C: Put on a new needle every time."], {}, card);
    expect(sheet.unsafe.found.map(({ corrected }) => corrected)).toEqual([true]);
    expect(sheet.items.find(({ id }) => id === "needle")).toMatchObject({ content: "complete" });
  });
  test("asked for by a scripted question it came after that", () => {
    const counted = { ...CARD, unsafe: [{ id: "float", label: "Floats it", severity: "major" as const, say: ["drop it in a bucket and see"], contradicts: ["counter/counter"] }] };
    const says = markTalk([...OPENING, "P: How will I know when it is empty?", "C: Drop it in a bucket and see."], {}, counted);
    expect(item(says, "counter").elements[0]).toMatchObject({ content: "incorrect", elicitation: "after-question" });
  });
});
