import { describe, expect, test } from "vitest";
import { CARD, markTalk, OPENING } from "./station-card.ts";

/** Invented talk of nothing in particular, so that a repeat does not follow at once. */
const BETWEEN = "C: It fits in any handbag and it is made of blue plastic that does not crack.";
const repeats = (...lines: string[]) => markTalk([...OPENING, ...lines]).repeats;

describe("a needless repeat is the same content said again by the candidate, whatever the rubric has to say of it", () => {
  test("a sentence said again in nearly the same words", () => {
    const [repeat, ...others] = repeats("C: You drop the tablet into a tall glass of lukewarm water.", BETWEEN, "C: So the tablet, you drop that into your tall glass of water, lukewarm.");
    expect(others).toEqual([]);
    expect(repeat).toMatchObject({ label: expect.stringContaining("So the tablet"), firstSaid: { line: 3 }, again: { line: 5, role: "candidate" } });
  });

  test("steps gone through once more in short", () => {
    expect(repeats("C: First you unscrew the blue collar, then you slide the cartridge down into the barrel, and then you twist the ring until it clicks.", BETWEEN, "C: So unscrew the collar, slide the cartridge in the barrel, twist the ring until it clicks.")).toHaveLength(1);
  });

  test("said twice at once", () => {
    expect(repeats("C: Rub the lotion into both elbows after a shower. Both elbows, the lotion, after the shower, rub it in.")).toHaveLength(1);
  });
});

describe("no needless repeat", () => {
  const TOLD = "C: You drop the tablet into a tall glass of lukewarm water.";

  test("words that merely come up again in another statement", () => {
    expect(repeats(TOLD, BETWEEN, "C: Rinse the glass afterwards. A tablet that looks grey goes back to the shop.")).toEqual([]);
  });

  test("the same words with another number", () => {
    expect(repeats("C: Dial two units on the pen and press for the test.", BETWEEN, "C: Dial twelve units on the pen and press for the dose.")).toEqual([]);
  });

  test("the same words with a denial", () => {
    expect(repeats("C: Keep the spare bottles on the lowest shelf of the kitchen cupboard.", BETWEEN, "C: Do not keep the spare bottles on the lowest shelf of the kitchen cupboard.")).toEqual([]);
  });

  test("an answer to a question about it", () => {
    expect(repeats(TOLD, BETWEEN, "P: What sort of glass did that tablet go in?", "C: You drop the tablet into a tall glass of lukewarm water.")).toEqual([]);
  });

  test("an answer that asks for no subject: why is that", () => {
    expect(repeats(TOLD, BETWEEN, "P: Why is that?", "C: Because the tablet drops into a tall glass of lukewarm water.")).toEqual([]);
  });

  test("the patient's own words confirmed", () => {
    expect(repeats(TOLD, BETWEEN, "P: So a tall glass of lukewarm water, and I drop the tablet in.", "C: You drop the tablet in a tall glass of lukewarm water, yes.")).toEqual([]);
  });

  test("a reply that drifts from the question back to what was told is one", () => {
    expect(repeats(TOLD, BETWEEN, "P: And can my neighbour come along to the clinic?", "C: She can, of course, there are plenty of chairs. So the tablet, you drop that into a tall glass of lukewarm water.")).toHaveLength(1);
  });

  test("what is put right after a teach-back", () => {
    const sheet = markTalk([...OPENING, "C: Hold your breath for ten seconds and keep both shoulders down and relaxed.", BETWEEN, "C: Can you show me how you will use it?", "P: I breathe in and I hold it for four seconds.", "C: Nearly. Hold your breath for ten seconds and keep both shoulders down and relaxed."]);
    expect(sheet.repeats).toEqual([]);
  });

  test("two things of the rubric that share their words", () => {
    const rubric = structuredClone(CARD);
    const [counter] = rubric.sections[1]!.items.filter(({ id }) => id === "counter");
    const item = (id: string, say: string) => ({ ...counter!, id, label: id, elements: [{ ...counter!.elements[0]!, id, label: id, say: [say], must: [] }] });
    rubric.sections[1]!.items.push(item("attack", "if it gets bad take a puff every thirty seconds up to ten puffs"), item("second-puff", "if you need a second puff wait thirty seconds"));
    const sheet = (last: string) => markTalk([...OPENING, "C: If it gets really bad, sit up, take one puff and then wait for thirty seconds up to ten puffs.", BETWEEN, `C: ${last}`], {}, rubric);
    const one = sheet("If you need a second puff wait thirty seconds.");
    expect(one.items.filter(({ id }) => id === "attack" || id === "second-puff").map(({ content }) => content)).toEqual(["complete", "complete"]);
    expect(one.repeats).toEqual([]);
    expect(sheet("If it gets bad, take one puff and then wait thirty seconds, up to ten puffs.").repeats).toHaveLength(1);
  });

  test("a question asked again", () => {
    expect(repeats("C: Have you got any plasters in the kitchen drawer?", BETWEEN, "C: Have you got any plasters in the kitchen drawer?")).toEqual([]);
  });
});
