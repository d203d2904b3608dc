import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import { readTranscript } from "../../src/transcript/read.ts";

const rubricOf = (name: string) => loadRubric(readFileSync(`rubrics/${name}.yaml`, "utf8"), { file: name, readBlock: (include) => readFileSync(join("rubrics", include), "utf8") });

/** Invented: unsafe statements of a station in which nothing but this is said. */
function unsafeIn(rubric: string, text: string): string[] {
  const talk = `[0:00] Pharmacist: Hello, my name is Jo, I am one of the pharmacists here.\n[0:12] Patient: Hi.\n[0:18] Pharmacist: ${text}\n[0:55] Patient: Okay, bye.\n`;
  return mark(readTranscript(new TextEncoder().encode(talk), { file: "talk.txt" }), rubricOf(rubric)).unsafe.found.map(({ id }) => id);
}

describe("a wrong statement is an unsafe one only where it amounts to that", () => {
  test.each([
    ["adrenaline-auto-injector", "Once you've given the adrenaline the reaction can't come back."],
    ["adrenaline-auto-injector", "It's dangerous if she wasn't reacting."],
    ["adrenaline-auto-injector", "Only look at the date when you actually use it."],
    ["dry-powder-multidose", "Give it a good shake first."],
    ["glucose-meter", "Four and a half, that's nearly five, off you go."],
    ["methotrexate-weekly", "An extra day here and there won't hurt."],
    ["methotrexate-weekly", "Keep off paracetamol with this."],
    ["naloxone-nasal-spray", "Shake it well first."],
    ["naloxone-nasal-spray", "Too much could harm her."],
    ["oral-liquid-child", "A runny nose and sneezing is an allergy sign."],
    ["oral-liquid-child", "Just do it roughly by eye."],
    ["oral-liquid-child", "Squirt it on the tongue."],
    ["sublingual-nitrate", "You hold it upright, just like your inhaler."],
    ["transdermal-patch", "Stop the morphine tablets a week before you start the patch."],
    ["transdermal-patch", "A small nick is harmless."],
  ])("%s: not %s", (rubric, text) => expect(unsafeIn(rubric, text)).toEqual([]));

  test.each([
    ["methotrexate-weekly", "Taking it daily is fine.", "daily-methotrexate"],
    ["naloxone-nasal-spray", "Give it a quick test squirt.", "test-spray"],
    ["sublingual-nitrate", "You suck it in, same as a puffer.", "inhale-it"],
    ["transdermal-patch", "Keep taking your slow release morphine as well.", "keep-tablets"],
  ])("%s: %s", (rubric, text, id) => expect(unsafeIn(rubric, text)).toContain(id));
});
