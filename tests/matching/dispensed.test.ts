import { describe, expect, test } from "vitest";
import { cardWith, markTalk, OPENING } from "../scoring/station-card.ts";

// An invented card and invented talk: behaviour only.
const card = cardWith(`
      - { id: rinse, label: Rinses the mouth, say: [rinse your mouth with water, "rinse your mouth out after it"] }
      - { id: dentist, label: Tells the dentist, say: [tell your dentist about the tablets] }
      - { id: shake, label: Shakes the bottle, say: [give the bottle a shake every time] }
      - { id: note, label: Notes it, say: [it is all written down in here] }
      - { id: knead, label: Kneads the dough, say: [knead the dough until it is silky] }
      - { id: bake, label: Bakes it, say: [bake the loaf in the hot oven] }
`);
/** In a whole station: much is said around it. */
const AROUND = "You knead the dough until it is silky, and you put a clean cloth over the bowl, and you wait about an hour by the kitchen clock, and you bake the loaf in the hot oven, and then it stands on the rack by the window.";
const content = (says: string, item: string) => markTalk([...OPENING, `C: ${AROUND}`, "P: Right.", `C: ${says}`, "P: Right.", `C: ${AROUND}`], { limit: 600 }, card).items.find(({ id }) => id === item)!.content;

describe("what is said to be needless, in so many words and of nothing else, is stated wrongly also in a whole station", () => {
  test.each([
    ["There's no need to rinse your mouth.", "rinse"],
    ["You don't have to rinse your mouth with water.", "rinse"],
    ["I wouldn't bother rinsing your mouth out.", "rinse"],
    ["You needn't tell your dentist about the tablets.", "dentist"],
  ])("%s", (says, item) => expect(content(says, item)).toBe("incorrect"));

  test.each([
    ["There's no need to rinse your mouth twice.", "rinse"],
    ["You don't have to rinse your mouth if you've no water.", "rinse"],
    ["You don't have to rinse your mouth before it.", "rinse"],
    ["Don't forget to rinse your mouth with water.", "rinse"],
    ["You needn't keep the pen you're using in here.", "note"],
    ["You needn't be shy to tell your dentist about the tablets.", "dentist"],
    ["You don't have to tell your dentist your whole life story.", "dentist"],
    ["You needn't take the loaf's tin off, in the hot oven it bakes.", "bake"],
  ])("only how, when or in which case it need not be is not: %s", (says, item) => expect(content(says, item)).not.toBe("incorrect"));
});
