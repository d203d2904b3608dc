import type { Finding } from "../problem/problem.ts";
import type { RubricPlaces } from "./places.ts";
import { NO_SOURCE, type Element, type Quantity, type Rubric } from "./schema.ts";

type Loaded = Omit<Rubric, "hash">;

/**
 * Finds ids that stand twice and names that lead nowhere: faults that would make a mark wrong without a word.
 * @returns findings, none when all is well.
 */
export function checkReferences(rubric: Loaded, places: RubricPlaces): Finding[] {
  return [...duplicates(rubric, places), ...dangling(rubric, places), ...slots(rubric, places)];
}

function duplicates(rubric: Loaded, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const report = (what: string, id: string, itemId?: string) =>
    findings.push({
      code: "SW-R06",
      severity: "error",
      ...(itemId === undefined ? places.top() : places.item(itemId, ["id"])),
      message: `${what} '${id}' stands twice`,
      mend: "Give one of the two another id.",
    });
  const twice = (ids: string[]) => ids.filter((id, index) => ids.indexOf(id) !== index);
  const items = rubric.sections.flatMap((section) => section.items);
  twice(rubric.sections.map((section) => section.id)).forEach((id) => report("the section", id));
  twice(items.map((item) => item.id)).forEach((id) => report("the item", id, id));
  for (const item of items) twice(item.elements.map((element) => element.id)).forEach((id) => report(`in '${item.id}', the element`, id, item.id));
  twice(rubric.unsafe.map((statement) => statement.id)).forEach((id) => report("the unsafe statement", id));
  twice(rubric.scenario.questions.map((question) => question.id)).forEach((id) => report("the patient's question", id));
  return findings;
}

function dangling(rubric: Loaded, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const items = rubric.sections.flatMap((section) => section.items);
  const itemIds = new Set(items.map((item) => item.id));
  const report = (message: string, mend: string, path: PropertyKey[] | null, itemId?: string) =>
    findings.push({
      code: "SW-R05",
      severity: "error",
      ...(path !== null || itemId === undefined ? places.top(path ?? []) : places.item(itemId, ["id"])),
      message,
      mend,
    });
  rubric.order.forEach((pair, index) => {
    for (const side of ["first", "then"] as const) {
      if (!itemIds.has(pair[side])) report(`the order pair names '${pair[side]}', which is no item`, "Name an item's id.", ["order", index, side]);
    }
  });
  rubric.scenario.questions.forEach((question, index) => {
    for (const target of question.answered_by ?? []) {
      if (!itemIds.has(target)) {
        report(`the question is answered by '${target}', which is no item`, "Name an item's id.", ["scenario", "questions", index, "answered_by"]);
      }
    }
    if (question.answered_by === undefined && question.answer === undefined) {
      report("the question has neither 'answered_by' nor 'answer'", "Say what answers it.", ["scenario", "questions", index]);
    }
  });
  const source = (name: string, itemId?: string, path?: PropertyKey[]) => {
    if (name !== NO_SOURCE && !(name in rubric.sources)) {
      report(`the source '${name}' is not among 'sources'`, `Add it there, or write '${NO_SOURCE}'.`, path ?? null, itemId);
    }
  };
  for (const item of items) {
    if (item.fact) source(item.fact.source, item.id);
    for (const element of item.elements) if (element.fact) source(element.fact.source, item.id);
  }
  rubric.unsafe.forEach((statement, index) => statement.fact && source(statement.fact.source, undefined, ["unsafe", index]));
  const label = (quantity: Quantity | undefined, itemId?: string) => {
    if (quantity && "label" in quantity && rubric.scenario.label[quantity.label]?.quantity === undefined) {
      report(`the label has no quantity '${quantity.label}'`, "Add it under scenario.label.", null, itemId);
    }
  };
  for (const item of items) for (const element of item.elements) label(element.quantity, item.id);
  return findings;
}

/** `{quantity}` and `quantity` belong together. */
function slots(rubric: Loaded, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const uses = (element: Pick<Element, "say">) => element.say.some((phrase) => phrase.includes("{quantity}"));
  for (const item of rubric.sections.flatMap((section) => section.items)) {
    for (const element of item.elements) {
      if (uses(element) === (element.quantity !== undefined)) continue;
      findings.push({
        code: "SW-R07",
        severity: "error",
        ...places.item(item.id, ["id"]),
        message: uses(element)
          ? `'${item.id}' says {quantity} in a phrase but gives no quantity`
          : `'${item.id}' gives a quantity that none of its phrases uses`,
        mend: uses(element) ? "Add 'quantity' to the element." : "Write {quantity} where the number stands in the phrase.",
      });
    }
  }
  return findings;
}
