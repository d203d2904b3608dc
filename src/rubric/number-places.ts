import type { Finding } from "../problem/problem.ts";
import { itemsOf } from "./items.ts";
import { hasPlace } from "./notation.ts";
import { findingIn, type Place, type RubricPlaces } from "./places.ts";
import type { Quantity, Rubric } from "./schema.ts";

type Loaded = Pick<Rubric, "sections" | "unsafe" | "scenario">;

/** `{quantity}` in phrases and a quantity belong together: one without the other compares nothing, without a word. */
export function checkNumberPlaces(rubric: Loaded, places: RubricPlaces): Finding[] {
  const findings: Finding[] = [];
  const report = (place: Place, message: string, mend: string) => findings.push(findingIn(place, { code: "SW-R07", severity: "error", message, mend }));
  const together = (what: string, of: string, phrases: readonly string[], quantity: Quantity | undefined, place: (path: PropertyKey[]) => Place) => {
    const uses = phrases.findIndex((phrase) => hasPlace(phrase, "quantity"));
    if (uses >= 0 && quantity === undefined) report(place(["say", uses]), `${what} says {quantity} in a phrase but gives no quantity`, `Add 'quantity' to ${of}.`);
    if (uses < 0 && quantity !== undefined) report(place(["quantity"]), `${what} gives a quantity that none of its phrases uses`, "Write {quantity} where the number stands in the phrase.");
  };
  const nothing = (phrases: readonly string[] | undefined, what: string, why: string, mend: string, place: (index: number) => Place) => {
    const uses = (phrases ?? []).findIndex((phrase) => hasPlace(phrase, "quantity"));
    if (uses >= 0) report(place(uses), `${what} has {quantity}, ${why}`, mend);
  };
  const words = (owner: { must?: string[] | undefined; not_with?: string[] | undefined }, name: string, place: (path: PropertyKey[]) => Place) => {
    for (const list of ["must", "not_with"] as const) nothing(owner[list], `'${list}' of '${name}'`, "which is no word", "Write the words alone; 'quantity' compares the number.", (index) => place([list, index]));
  };
  for (const item of itemsOf(rubric)) {
    item.elements.forEach((element, index) => {
      const place = (path: PropertyKey[]) => places.element(item.id, index, path);
      const name = element.id === item.id ? `'${item.id}'` : `'${element.id}' of '${item.id}'`;
      together(name, "the element", element.say, element.quantity, place);
      words(element, element.id, place);
      if (element.quantity === undefined) nothing(element.incorrect, `'incorrect' of ${name}`, "but the element gives no quantity", "Add 'quantity' to the element.", (at) => place(["incorrect", at]));
      element.elsewhere?.forEach((other, at) => {
        const inside = (path: PropertyKey[]) => place(["elsewhere", at, ...path]);
        if (other.say === undefined && other.quantity === undefined) report(inside([]), `'elsewhere' of ${name} says nothing that is right elsewhere`, "Give it 'say', a 'quantity' for the element's own phrases, or both.");
        else if (other.quantity !== undefined) together(`'elsewhere' of ${name}`, "it", other.say ?? element.say, other.quantity, inside);
        else together(`'elsewhere' of ${name}`, "it", element.quantity === undefined ? (other.say ?? []) : [], undefined, inside);
      });
    });
    nothing(item.cue?.patient, `the cue of '${item.id}'`, "but no number is compared there", "Write the number in words, or leave it out.", (at) => places.item(item.id, ["cue", "patient", at]));
  }
  rubric.unsafe.forEach((statement, index) => {
    const place = (path: PropertyKey[]) => places.unsafe(index, path);
    together(`the unsafe statement '${statement.id}'`, "the statement", statement.say, statement.quantity, place);
    words(statement, statement.id, place);
  });
  rubric.scenario.questions.forEach((question, index) => {
    for (const list of ["says", "answer", "incorrect"] as const) {
      nothing(question[list], `'${list}' of the patient's question '${question.id}'`, "but no number is compared there", "Write the number in words, or let an item with a quantity answer it.", (at) => places.top(["scenario", "questions", index, list, at]));
    }
  });
  return findings;
}
