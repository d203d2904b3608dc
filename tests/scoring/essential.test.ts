import { expect, test } from "vitest";
import { cardWith, item, markTalk, OPENING } from "./station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - id: when-it-sounds
        label: What to do when it sounds
        weight: 4
        critical: true
        needs: 2
        minimum: 1
        elements:
          - { id: ring, label: Rings the fire brigade, essential: true, say: [ring the fire brigade] }
          - { id: windows, label: Shuts the windows, say: [shut all the windows] }
          - { id: stairs, label: Takes the stairs, say: [take the stairs down] }
`, "minimum: 50, critical: all");
const marked = (says: string) => item(markTalk([...OPENING, `C: ${says}`], {}, card), "when-it-sounds");

test("without its essential element an item is neither complete nor met, whatever else is said", () => {
  const { content, met, earned, remarks } = marked("Shut all the windows. Then take the stairs down.");
  expect({ content, met, earned, remarks }).toEqual({ content: "partial", met: false, earned: 2, remarks: ["not without: Rings the fire brigade"] });
});

test("with it, as many as are needed make it complete", () => {
  const { content, met, earned, remarks } = marked("Shut all the windows. Then ring the fire brigade.");
  expect({ content, met, earned, remarks }).toEqual({ content: "complete", met: true, earned: 4, remarks: [] });
});

test("with it alone the item is met by its minimum", () => {
  const { content, met } = marked("Ring the fire brigade.");
  expect({ content, met }).toEqual({ content: "partial", met: true });
});
