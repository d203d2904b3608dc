import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { mark } from "../../src/mark.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import { readTranscript } from "../../src/transcript/read.ts";

const names = readdirSync("rubrics").filter((file) => file.endsWith(".yaml")).map((file) => file.replace(/\.yaml$/, ""));
const rubricOf = (name: string) => loadRubric(readFileSync(`rubrics/${name}.yaml`, "utf8"), { file: name, readBlock: (include) => readFileSync(join("rubrics", include), "utf8") });

/** Invented: a station in which nothing but this is said. */
function said(rubric: string, text: string, item: string) {
  const talk = `[0:00] Pharmacist: Hello, my name is Jo, I am one of the pharmacists here.\n[0:12] Patient: Hi.\n[0:18] Pharmacist: ${text}\n[0:55] Patient: Okay, bye.\n`;
  return mark(readTranscript(new TextEncoder().encode(talk), { file: "talk.txt" }), rubricOf(rubric)).items.find(({ id }) => id === item)!;
}

/*
 * Sources of the rubrics themselves: NPSA/2006/13 (the number of methotrexate tablets), Drug Safety Update September 2020
 * (signs of infection), NG232 (head injury on an anticoagulant), Drug Safety Update October 2018 (a fentanyl patch on
 * somebody else).
 */
describe("a critical item is not met without what keeps somebody alive", () => {
  test.each<[string, string, string]>([
    ["methotrexate-weekly", "dose", "You should only ever get two point five milligram tablets, so check the box."],
    ["methotrexate-weekly", "avoid-medicines", "Tell every doctor, dentist and pharmacist that you take it."],
    ["methotrexate-weekly", "red-flags", "Ring us with mouth ulcers, unusual bruising or if your skin goes yellow."],
    ["warfarin", "urgent-help", "If you get any other bleeding ring the clinic the same day."],
    ["transdermal-patch", "accidental-contact", "Keep your new patches and the old ones where the grandchildren can't see or reach them."],
  ])("%s, %s: %s", (rubric, id, text) => {
    expect(said(rubric, text, id).met).toBe(false);
  });

  test.each<[string, string, string]>([
    ["methotrexate-weekly", "dose", "You take four tablets together, that makes ten milligrams."],
    ["methotrexate-weekly", "avoid-medicines", "You must not take trimethoprim with it. Tell every doctor, dentist and pharmacist that you take it."],
    ["methotrexate-weekly", "red-flags", "Ring us with a sore throat or a fever, mouth ulcers, or unusual bruising."],
    ["warfarin", "urgent-help", "If you bang your head go to hospital, even if you feel fine. For heavy bleeding that won't stop ring 999."],
    ["transdermal-patch", "accidental-contact", "If a patch sticks to somebody else take it off at once, and then call 999."],
  ])("and is with it: %s, %s: %s", (rubric, id, text) => {
    expect(said(rubric, text, id).met).toBe(true);
  });
});

describe("where some elements of a critical item are enough, it says which must be among them", () => {
  /** Any of the elements does, and why. */
  const ANY: Record<string, string> = {
    "dry-powder-capsule/red-flags": "two of three groups of signs, each of which leads to help",
    "soft-mist-inhaler/red-flags": "two of three groups of signs, each of which leads to help",
    "eye-drops/position": "either gets the drop into the eye",
    "eye-drops/close-and-press": "a closed eye and a pressed corner each keep the drop from the blood",
    "oral-liquid-child/giving": "two of three keep the child from choking",
    "transdermal-patch/one-at-a-time": "both say the same",
    "warfarin/bleeding-signs": "two signs of bleeding of six",
  };

  test.each(names)("%s", (name) => {
    const bare = rubricOf(name)
      .sections.flatMap(({ items }) => items)
      .filter(({ critical, elements, minimum, needs }) => critical && elements.length > (minimum ?? (needs === "all" ? elements.length : needs)) && !elements.some(({ essential }) => essential))
      .map(({ id }) => `${name}/${id}`);
    expect(bare).toEqual(Object.keys(ANY).filter((key) => key.startsWith(`${name}/`)));
  });
});

describe("numbers of the supplied label and of the product go before what is right elsewhere", () => {
  test.each<[string, string, string, string, string, boolean]>([
    ["sublingual-nitrate", "prime", "after-disuse", "If it's been in a drawer for a week give it a squirt first.", "complete", false],
    ["sublingual-nitrate", "prime", "after-disuse", "If it's been in a drawer for two weeks give it a squirt first.", "absent", true],
    ["methotrexate-weekly", "pregnancy", "plan-ahead", "You need to stop it six months before you try for a baby.", "complete", false],
    ["methotrexate-weekly", "pregnancy", "plan-ahead", "You need to stop it one month before you try for a baby.", "absent", true],
    ["methotrexate-weekly", "pregnancy", "plan-ahead", "Speak to your specialist before you plan a pregnancy.", "complete", false],
  ])("%s, %s/%s: %s", (rubric, id, element, text, content, differs) => {
    const item = said(rubric, text, id);
    expect(item.elements.find((candidate) => candidate.id === element)!.content).toBe(content);
    expect(item.remarks.some((remark) => remark.startsWith("differs from this station's guidance"))).toBe(differs);
  });
});
