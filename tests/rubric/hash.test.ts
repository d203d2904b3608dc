import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import { readTranscript } from "../../src/transcript/read.ts";
import { BLOCK, SOUND } from "../review/card.ts";

const WITH_BLOCK = SOUND.replace("sections:\n", "sections:\n  - include: opening.yaml\n");
const load = (text: string, block = BLOCK, file = "card.yaml") => loadRubric(text, { file, readBlock: () => block });
const locked = load(WITH_BLOCK);

describe("the content hash that every sheet is locked to", () => {
  test.each([
    ["a response in the rubric", WITH_BLOCK.replace("shake the inhaler well", "shake the inhaler hard"), BLOCK],
    ["a weight in the rubric", WITH_BLOCK.replace("critical: true", "critical: true\n        weight: 2"), BLOCK],
    ["the pass rule", WITH_BLOCK.replace("minimum: 60", "minimum: 61"), BLOCK],
    ["a response in an included block", WITH_BLOCK, BLOCK.replace("good morning and welcome", "good evening and welcome")],
    ["a weight in an included block", WITH_BLOCK, BLOCK.replace("label: Greets\n", "label: Greets\n    weight: 2\n")],
    ["an unsafe statement in an included block", WITH_BLOCK, `${BLOCK}unsafe: [{ id: rude, label: Rude, severity: minor, say: [go away now] }]\n`],
    ["an override of the block", WITH_BLOCK.replace("opening.yaml\n", "opening.yaml\n    override: { greet: { weight: 2 } }\n"), BLOCK],
  ])("changes with %s", (_what, text, block) => {
    expect([text, block]).not.toEqual([WITH_BLOCK, BLOCK]);
    expect(load(text, block).hash).not.toBe(locked.hash);
  });

  test("stays the same under another file name, with comments and other quotes", () => {
    expect(load(`# a comment\n${WITH_BLOCK.replace("title: Card", 'title: "Card"')}`, `# another\n${BLOCK}`, "elsewhere.yaml").hash).toBe(locked.hash);
  });

  test("is SHA-256, by Node's own, and stands in the sheet", () => {
    const { hash, ...content } = locked;
    expect(hash).toBe(createHash("sha256").update(JSON.stringify({ ...content, file: undefined })).digest("hex"));
    const talk = readTranscript("Candidate: Hello and welcome to the pharmacy. Shake the inhaler well.\nPatient: Thank you.\nCandidate: Goodbye.\n", { file: "talk.txt" });
    expect(mark(talk, locked).rubric).toMatchObject({ id: "card", version: 1, hash });
  });
});
