import { turnAt } from "../station/turns.ts";
import type { WordSpan } from "../station/types.ts";
import { isAgreed } from "./agreed.ts";
import { assign, withoutOthersWords } from "./assignment.ts";
import type { CompiledRubric } from "./compile.ts";
import { yesWithoutCorrection, type Scene } from "./elicitation.ts";
import { withLikelihood } from "./likelihood.ts";
import { plainMatch } from "./passage-match.ts";
import { isOpen, passagesFor, type Passage } from "./passages.ts";
import type { Postings } from "./postings.ts";
import { sameElement } from "./same-element.ts";
import { wordsOf } from "./stream.ts";
import { topicOf } from "./taken-back.ts";
import type { Match } from "./types.ts";
import { withinReach } from "./within-reach.ts";

/** What the patient says of the elements, rightly or wrongly; what is only asked is left out, unless the candidate says yes to what is wrong in it. */
export function patientMatches(rubric: CompiledRubric, postings: Postings, scene: Scene): Match[] {
  const stream = scene.patient;
  const { elements } = withinReach(rubric, postings);
  const all = withLikelihood(elements.filter(({ kind }) => kind === "tell").flatMap((candidate) => passagesFor(candidate, postings, stream, "patient")), stream, rubric.elements);
  const { kept, lookAlikes } = assign(withoutOthersWords(all.filter(isOpen), all));
  // What one sentence gets wrong may be any of several things: the candidate's correction tells which (scoring/teach-back.ts).
  return [...kept, ...lookAlikes.filter(({ verdict }) => verdict === "wrong")]
    .sort((one, other) => one.first - other.first)
    .flatMap((passage): Match[] => {
      const asked = passage.window.aligned.every(({ hit }) => stream.acts[hit.first] !== "tell");
      const match = plainMatch(passage, wordsOf(stream, passage.first, passage.end), stream);
      if (match.verdict === "wrong" && isConfirmed(scene, passage, match.span, asked)) return [{ ...match, affirmed: true }];
      return asked ? [] : [match];
    });
}

/** With what the patient says wrongly and is told to be right, once for each thing. */
export function withAgreed(patient: readonly Match[], agreed: readonly Match[]): Match[] {
  const known = (match: Match) => patient.some((other) => other.affirmed === true && sameElement(other, match));
  return [...patient, ...agreed.filter((match) => !known(match))];
}

/**
 * What the patient has wrong and the candidate says yes to is told wrongly, unless the candidate tells it rightly
 * somewhere: then it is an error of the patient's that was left (scoring/teach-back.ts).
 */
export function affirmedWrong(scene: Scene, patient: readonly Match[], found: readonly Match[]): Match[] {
  const told = new Set(found.filter(({ verdict }) => verdict === "right").map(({ item, element }) => `${item}/${element}`));
  return patient
    .filter(({ item, element, affirmed, span }) => affirmed === true && !told.has(`${item}/${element}`) && isAgreed(scene, scene.turns[turnAt(scene.turns, span)]!))
    .map((match) => ({ ...match, elicitation: "confirmed", reason: `the patient's words, told to be right${match.reason === undefined ? "" : `: ${match.reason}`}` }));
}

/** Whether the candidate says yes to what the patient gets wrong: "yeah" to what is told may only say that one is listening. */
function isConfirmed(scene: Scene, { window, first, end }: Passage, span: WordSpan, asked: boolean): boolean {
  const { turnOf } = scene.patient;
  if (turnOf[first] !== turnOf[end - 1]) return false;
  const yes = yesWithoutCorrection(scene, span, topicOf(window.response));
  return yes !== null && (asked || yes.sure === true || yes.kind === "confirms");
}
