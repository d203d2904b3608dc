import { describe, expect, test } from "vitest";
import { ProblemError, type Finding } from "../../src/problem/problem.ts";
import type { z } from "zod";
import { findingsOf } from "../../src/rubric/form-faults.ts";
import { loadRubric } from "../../src/rubric/load.ts";
import { readYaml } from "../../src/rubric/positions.ts";
import { responsesSchema } from "../../src/rubric/responses.ts";
import { blockSchema, rubricSchema } from "../../src/rubric/schema.ts";

const RUBRIC = `saidwell: rubric@1
id: card
title: Card
version: 1
jurisdiction: [any]
scenario:
  task: Explain it.
  counselled: patient
  label:
    dose: { text: Two, quantity: { value: 2, unit: tablet } }
  questions:
    - { id: forgot, says: [what if i forget], answered_by: [missed-dose] }
time: { limit: 7 min, target: 6 min }
sources:
  guide: { body: A body, title: A title, year: 2020 }
sections:
  - id: steps
    title: Steps
    items:
      - id: missed-dose
        label: A missed one
        weight: 2
        fact: { source: guide, jurisdiction: [any], review_by: 2030-01-31 }
        say: [leave out the one you missed]
order: []
pass: { minimum: 60 }
`;

function findings(text: string): readonly Finding[] {
  try {
    loadRubric(text, {
      file: "card.yaml",
      readBlock: () => {
        throw new Error("no such file");
      },
    });
  } catch (error) {
    if (error instanceof ProblemError) return error.findings;
    throw error;
  }
  return [];
}

test("the rubric of these tests is sound", () => {
  expect(findings(RUBRIC)).toEqual([]);
});

test("an empty file is told with what belongs in a file of its form", () => {
  const mendOf = (schema: z.ZodType) => findingsOf(schema.safeParse(null).error!, readYaml("", "file.yaml"), schema).map(({ mend }) => mend);
  expect(mendOf(rubricSchema)).toEqual(["'saidwell rubric new' prints a rubric to start from."]);
  expect(mendOf(blockSchema)).toEqual(["Write fields, 'name: value' one a line: saidwell, id, title, items."]);
  expect(mendOf(responsesSchema)).toEqual(["Write fields, 'name: value' one a line: saidwell, id."]);
});

/** Line, message and mend of the only finding, once the one thing is changed. */
function told(before: string, after: string): string {
  expect(RUBRIC).toContain(before);
  const all = findings(RUBRIC.replace(before, after));
  expect(all).toHaveLength(1);
  return `${all[0]!.line}: ${all[0]!.message} | ${all[0]!.mend}`;
}

describe("a slip of the pen is told once, with what was meant", () => {
  test.each([
    ["a field", "weight: 2", "wieght: 2", "22: item 'missed-dose': there is no field 'wieght' here | Did you mean 'weight'?"],
    ["a needed field, which is not missing besides", "task: Explain", "taks: Explain", "7: scenario: there is no field 'taks' here | Did you mean 'task'?"],
    ["the first line", "saidwell:", "saidwel:", "1: the file: there is no field 'saidwel' here | Did you mean 'saidwell'?"],
    ["the items of a section, which is no include for that", "    items:", "    item:", "19: section 'steps': there is no field 'item' here | Did you mean 'items'?"],
    ["a unit by another name", "unit: tablet", "unit: tablets", "10: scenario.label.dose.quantity.unit: 'tablets' is none of the values that may stand here | Did you mean 'tablet'?"],
    ["a unit in words", "unit: tablet", "unit: times a day", "10: scenario.label.dose.quantity.unit: 'times a day' is none of the values that may stand here | Did you mean 'time-per-day'?"],
    ["a unit by its symbol", "unit: tablet", "unit: mL", "10: scenario.label.dose.quantity.unit: 'mL' is none of the values that may stand here | Did you mean 'millilitre'?"],
    ["a source", "source: guide", "source: giude", "23: the source 'giude' is not among 'sources' | Did you mean 'guide'? Add it there, or write 'common practice, no source'."],
    ["an item that a question names", "[missed-dose] }", "[mised-dose] }", "12: the question is answered by 'mised-dose', which is no item | Did you mean 'missed-dose'?"],
    ["an item of the order", "order: []", "order: [{ first: misseddose, then: missed-dose, severity: minor, reason: so }]", "25: the order pair names 'misseddose', which is no item | Did you mean 'missed-dose'?"],
    ["a country", "jurisdiction: [any]\nscenario", "jurisdiction: [UK]\nscenario", "5: jurisdiction, entry 1: 'UK' is no ISO 3166 code of a country | Write 'GB'."],
    ["a country by name", "jurisdiction: [any]\nscenario", "jurisdiction: [Australia]\nscenario", "5: jurisdiction, entry 1: 'Australia' is no ISO 3166 code of a country | Write 'AU'."],
    ["an id", "id: card", "id: Card One", "2: id: write ids in lower case, words joined by hyphens | Write 'card-one'."],
    ["a name of the label", "dose: { text", "Dose: { text", "10: scenario.label.Dose: 'Dose' cannot be a name here: names are lower case, words joined by hyphens | Write 'dose'."],
  ])("%s", (_what, before, after, expected) => {
    expect(told(before, after)).toBe(expected);
  });

  test("where nothing is near, what may stand there is listed", () => {
    expect(told("answered_by: [missed-dose] }", "answered_by: [storage] }")).toMatch(/The items are: missed-dose\.$/);
    expect(told("weight: 2", "colour: red")).toMatch(/Take it out, or write one of: weight, critical, kind,/);
    expect(told("weight: 2", "kind: question")).toMatch(/Choose one of: tell, ask, ask-openly, teach-back, invite-questions, summary\.$/);
  });

  test("a field that stands in the wrong place is told where it belongs", () => {
    expect(told("weight: 2", "severity: major")).toMatch(/'severity' belongs to a pair of 'order' or an unsafe statement: move it there/);
    expect(told("    items:", "    include: shipped:opening\n    items:")).toBe("19: section 'steps': there is no field 'include' here | 'include' belongs to an entry of its own under 'sections': move it there, or take it out.");
  });
});

describe("a value of the wrong kind is told with the way to write it", () => {
  test.each([
    ["a text for a list", "say: [leave out the one you missed]", "say: leave it out", "24: item 'missed-dose', say: a list was expected, not the text 'leave it out' | Write a list: [leave it out], or one entry a line with '- ' in front."],
    ["a text for fields", "order: []", "order: [this before that]", "25: order, entry 1: fields ('name: value') were expected, not the text 'this before that' | Write fields, 'name: value' one a line: first, then, severity, reason."],
    ["a year in quotes", "year: 2020", 'year: "2020"', "15: sources.guide.year: a number was expected, not the text '2020' | Write 2020 without quotes."],
    ["yes for true", "weight: 2", "critical: yes", "22: item 'missed-dose', critical: true or false was expected, not the text 'yes' | Write true."],
    ["a number written out", "value: 2", "value: two", "10: scenario.label.dose.quantity.value: neither a number nor a range | Write a number such as 2 or a range such as [4, 6]."],
    ["a range of three", "value: 2", "value: [1, 2, 3]", "10: scenario.label.dose.quantity.value: neither a number nor a range | Write a number such as 2 or a range such as [4, 6]."],
    ["a number below zero", "value: 2", "value: -2", "10: scenario.label.dose.quantity.value: numbers below zero are not read in speech | Write a number of 0 or more; what lies below zero say in words ('below freezing'), without a quantity."],
    ["a word where all or a number may stand", "weight: 2", "needs: some", "22: item 'missed-dose', needs: 'some' cannot stand here | Write 'all' or a number such as 2."],
    ["a number for a quantity", "quantity: { value: 2, unit: tablet }", "quantity: 2", "10: scenario.label.dose.quantity: '2' cannot stand here | Write fields, 'name: value': value and unit, or label."],
    ["a list for entries by name", "sources:\n  guide: { body", "sources:\n  - { body", "14: sources: fields ('name: value') were expected, not a list | Write 'name: value' here, one a line, each with a name of your own and body, title, year."],
    ["a text with a comma in braces", "source: guide", "source: common practice, no source", '23: item \'missed-dose\', fact: there is no field \'no source\' here | Put a text that has a comma in it in quotes, as "..., no source": in braces a comma ends it.'],
    ["a condition", "weight: 2", "when: [First supply]", "22: item 'missed-dose', when, entry 1: write the condition as the scenario has it, with 'not' before one that must not hold | Write 'first-supply'."],
    ["a day that no month has", "2030-01-31", "2030-02-31", "23: item 'missed-dose', fact.review_by: there is no such day as 2030-02-31 | Write a day that the calendar has."],
    ["an older or newer form", "rubric@1", "rubric@2", "1: saidwell: 'rubric@2' is none of the values that may stand here | Write 'rubric@1'."],
    ["a number for an id", "id: card", "id: 12", "2: id: write ids in lower case, words joined by hyphens | Write it like 'missed-dose'."],
  ])("%s", (_what, before, after, expected) => {
    expect(told(before, after)).toBe(expected);
  });
});

describe("what other notations mean by their signs is refused, since here it would be words", () => {
  test.each([
    ["leave out the missed/forgotten one", /'missed\/forgotten' has no alternatives/, /missed\|forgotten/],
    ["leave out [the missed] one", /'\[the missed\]' is no place that may stay empty/, /two phrases/],
    ["leave out the ... one", /'\.\.\.' leaves no gap/, /Leave it out/],
    ["leave out the <dose> one", /'<dose>' is no place that can be filled/, /\{quantity\}/],
  ])("%s", (phrase, message, mend) => {
    const [finding] = findings(RUBRIC.replace("[leave out the one you missed]", `["${phrase}"]`));
    expect(finding).toMatchObject({ code: "SW-R03", line: 24, message: expect.stringMatching(message), mend: expect.stringMatching(mend) });
  });

  test("a number over another and words without signs are words", () => {
    expect(findings(RUBRIC.replace("[leave out the one you missed]", "[leave out 1/2 a one, leave out the one. you missed]"))).toEqual([]);
  });
});

describe("what is no YAML is told in plain words, at the line to mend", () => {
  test.each([
    ["a blank too many", "        weight: 2", "         weight: 2", "22: not well-formed YAML: this line is indented further than what it belongs to | Let it begin at the same column as its neighbours."],
    ["a colon in a text", "label: A missed one", "label: Missed: one", "21: not well-formed YAML: the text 'Missed: one' has ': ' in it, which makes fields of it | Put the whole text in quotes."],
    ["a dash without its blank", "      - id: missed", "      -id: missed", "20: not well-formed YAML: a '-' touches the word behind it | Write a blank behind the '-'."],
    ["a bracket that stays open", "jurisdiction: [any]\nscenario", "jurisdiction: [any\nscenario", "5: not well-formed YAML: a bracket that opens here, or before, is not closed | Add the ']' or '}' at the end of what it holds."],
    ["an apostrophe in single quotes", "[leave out the one you missed]", "['don't take two']", "24: not well-formed YAML: a text in single quotes ends at its apostrophe | Put it in double quotes, or write the apostrophe twice."],
    ["a text that begins with '!', whose first word would be lost", "say: [leave out the one you missed]", "say:\n          - !leave out the one you missed", "25: not well-formed YAML: a text that begins with '!' means something else here | Put the text in quotes."],
    ["a blank from a word processor", "        weight: 2", "\u00a0       weight: 2", "22: not well-formed YAML: a blank of another kind (one at which no line breaks) stands before the text | Write plain blanks in its place."],
    ["a list that begins as fields", "    items:\n", "    items:\n      first:\n        label: First\n", "22: not well-formed YAML: an entry that begins with '- ' stands among fields, 'name: value' | Let all that belongs together begin alike: a list with '- ' before each entry, as in '- id: ...'."],
    ["a name that stands twice", "title: Card", "title: Card\ntitle: Again", "4: not well-formed YAML: this name stands twice among the fields of one thing | Take one of the two out."],
  ])("%s", (_what, before, after, expected) => {
    expect(told(before, after)).toBe(expected);
  });
});
