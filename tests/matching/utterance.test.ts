import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compileRubric } from "../../src/matching/compile.ts";
import { matchUtterance, UtteranceReader } from "../../src/matching/utterance.ts";
import { utterancesOf } from "../../src/review/utterances.ts";
import { loadRubric } from "../../src/rubric/load.ts";

const load = (name: string) => loadRubric(readFileSync(`rubrics/${name}.yaml`, "utf8"), { file: `${name}.yaml`, readBlock: (include) => readFileSync(`rubrics/${include}`, "utf8") });

/** Every so many responses are compared: the whole matcher takes its time. */
const STEP = 23;

describe.each(["pressurised-inhaler", "nasal-spray"])("%s", (name) => {
  const rubric = load(name);
  // What was learnt from marked sayings finds things in whole stations that no response fits.
  const compiled = { ...compileRubric(rubric), learnt: null };
  const reader = new UtteranceReader(compiled);
  const elements = rubric.sections.flatMap(({ items }) => items.flatMap((item) => item.elements));
  const phrases = [...elements.flatMap(({ say, incorrect = [] }) => [...say, ...incorrect]), ...rubric.unsafe.flatMap(({ say }) => say)];

  const isOwn = ({ item, element, response }: { item: string; element: string; response: string }) =>
    compiled.elements.some((own) => own.item === item && own.element === element && [...own.say, ...own.incorrect].some(({ text }) => text === response));
  // What an unsafe statement contradicts is the sheet's affair: here it is asked what each phrase says itself.
  const ofUnsafe = new Set(compiled.unsafe.flatMap(({ say }) => say.map(({ text }) => text)));

  test("an utterance read through the index does what it does in a station of its own", () => {
    const said = phrases.filter((_, place) => place % STEP === 0).flatMap((phrase) => utterancesOf(phrase, { value: 2, unit: "puff", tolerance: 0, bound: "exact" }));
    expect(said.length).toBeGreaterThan(50);
    let earned = 0;
    for (const text of said) {
      const whole = matchUtterance(text, compiled);
      const part = reader.read(text);
      const sure = (verdict: string) => verdict !== "unclear" && verdict !== "shown";
      const kept = part.kept.filter(({ verdict }) => sure(verdict)).map(({ element, verdict }) => `${element.item}/${element.element} ${verdict}`);
      expect(kept.sort(), text).toEqual(whole.elements.filter((match) => sure(match.verdict) && (isOwn(match) || !ofUnsafe.has(match.response))).map(({ item, element, verdict }) => `${item}/${element} ${verdict}`).sort());
      expect(part.unsafe.map(({ statement }) => statement), text).toEqual(whole.unsafe.map(({ statement }) => statement));
      earned += kept.length;
    }
    expect(earned).toBeGreaterThan(said.length / 2);
  }, 60_000);

  test("nothing said earns nothing", () => {
    expect(reader.read("")).toEqual({ kept: [], tried: [], unsafe: [] });
    expect(matchUtterance("", compiled).elements).toEqual([]);
  });
});
