import { describe, expect, test } from "vitest";
import { loadRubric } from "../../src/rubric/load.ts";
import { markTalk, OPENING } from "../scoring/station-card.ts";

// Invented cards and invented talk: behaviour only.
const cardFor = (age: "adult" | "child") =>
  loadRubric(
    [
      "saidwell: rubric@1", "id: small-card", "title: Invented card", "version: 1", "jurisdiction: [any]", `scenario: { task: Explain it., counselled: patient, conditions: [${age}] }`, "time: { limit: 60, target: 45 }",
      "sections:", "  - id: only", "    title: Only", "    items:",
      `      - { id: puffs, label: Two puffs, say: ["take {quantity} from the lamp"], quantity: { value: 2, unit: puff } }`,
      "      - { id: away, label: Not for children, say: [the lamp is not for children] }",
      "pass: { minimum: 50 }",
    ].join("\n"),
    { file: "small-card.yaml", readBlock: () => { throw new Error("no blocks here"); } },
  );
const content = (says: string, age: "adult" | "child", item = "puffs") => markTalk([...OPENING, `C: ${says}`], {}, cardFor(age)).items.find(({ id }) => id === item)!.content;

describe("a number told of people of another age is none of the patient's", () => {
  test.each(["Children take two puffs from the lamp.", "For a toddler it would be two puffs from the lamp."])("right in an adult's station: %s", (says) => expect(content(says, "adult")).toBe("absent"));
  test("nor a wrong one", () => expect(content("Children take five puffs from the lamp.", "adult")).toBe("absent"));
  test("in a child's station", () => expect(content("For a grown up it would be two puffs from the lamp.", "child")).toBe("absent"));
});

describe("where the patient is told of again, the number is the patient's", () => {
  test.each(["For a child it might be one puff, but you take two puffs from the lamp.", "You take two puffs from the lamp, whatever they do for children."])("right: %s", (says) => expect(content(says, "adult")).toBe("complete"));
  test("wrong", () => expect(content("For a child it might be one, but you take five puffs from the lamp.", "adult")).toBe("incorrect"));
  test("people of the patient's own age", () => expect(content("Adults take two puffs from the lamp.", "adult")).toBe("complete"));
});

test("what is not for others may be what is to be told", () => expect(content("The lamp is not for children.", "adult", "away")).toBe("complete"));
