import type { CompiledRubric } from "../matching/compile.ts";
import { matchStation } from "../matching/match.ts";
import { VERSION } from "../mark.ts";
import type { PatientQuestion, Rubric } from "../rubric/schema.ts";
import { scoreStation } from "../scoring/sheet.ts";
import { toldStation } from "../station/told.ts";
import type { Readings } from "./readings.ts";
import type { Reason } from "./reasons.ts";
import { utterancesOf } from "./utterances.ts";

type Silent = Readings["questions"][number];

/**
 * Says the patient's questions, and the script's own answers and wrong replies to each, to the matcher: what is not heard
 * as what it is there for would be told to nobody.
 */
export function readQuestions(rubric: Rubric, compiled: CompiledRubric): Readings["questions"] {
  return rubric.scenario.questions.flatMap((question, number): Silent[] => {
    const silent = (list: Silent["list"], why: (said: string) => Reason | null): Silent[] => (question[list] ?? []).flatMap((phrase, place) => firstSilent(phrase, why).map((found) => ({ question: number, list, phrase: place, ...found })));
    const says = silent("says", (said) => whyNotAsked(said, question, compiled));
    // Asked in words that are heard, as far as there are any: else no reply to it would be.
    const heard = question.says.findIndex((_, place) => !says.some(({ phrase }) => phrase === place));
    const [asked] = utterancesOf(question.says[Math.max(0, heard)]!, null);
    const reply = (said: string) => replyReading(asked!, said, question, rubric, compiled);
    return [...says, ...silent("answer", (said) => whyNoAnswer(reply(said))), ...silent("incorrect", (said) => whyNotWrong(reply(said)))];
  });
}

/** The first variant of a phrase that does not do what it is there for, and why; none when all do. */
function firstSilent(phrase: string, why: (said: string) => Reason | null): (Reason & { said: string })[] {
  for (const said of utterancesOf(phrase, null)) {
    const reason = why(said);
    if (reason !== null) return [{ said, ...reason }];
  }
  return [];
}

/** @param said the question as the patient asks it, and nothing else. */
function whyNotAsked(said: string, { id }: PatientQuestion, compiled: CompiledRubric): Reason | null {
  const { questions, fits } = matchStation(toldStation([{ role: "patient", says: `${said}?` }], "<question>"), compiled);
  if (questions.some(({ question }) => question === id)) return null;
  const other = [...questions, ...fits].find(({ question }) => question !== id);
  return other === undefined
    ? { why: "its words are too common or too few to be found", mend: "Add a word that tells what is asked about." }
    : { why: `it is heard as '${other.question}'`, mend: "Tell the two questions apart by their words, or make one of the two." };
}

/** What becomes of something that the candidate replies to a question. */
interface ReplyReading {
  /** Of the question on the sheet. */
  outcome: string;
  /** Whether the words of an answer of its own were found. */
  answers: boolean;
  /** The unsafe statement that it is taken for. */
  unsafe: string | null;
}

function replyReading(asked: string, said: string, { id }: PatientQuestion, rubric: Rubric, compiled: CompiledRubric): ReplyReading {
  const station = toldStation([{ role: "patient", says: `${asked}?` }, { role: "candidate", says: said }], "<reply>");
  const matches = matchStation(station, compiled);
  const sheet = scoreStation(station, rubric, matches, { version: VERSION });
  return {
    outcome: sheet.questions.find((question) => question.id === id)?.answer ?? "not-asked",
    answers: matches.answers.some(({ question, verdict }) => question === id && verdict === "right"),
    unsafe: matches.unsafe.find(({ verdict }) => verdict === "unsafe")?.statement ?? null,
  };
}

function whyNoAnswer({ outcome, answers, unsafe }: ReplyReading): Reason | null {
  if (unsafe !== null) return { why: `it is taken for the unsafe statement '${unsafe}'`, mend: "Change the answer, or give the unsafe statement a must-word or not_with that keeps it out." };
  if (outcome === "incorrect") return { why: "it is taken for a wrong reply", mend: "Look at 'incorrect' of the question and of the items that answer it: the two must not say the same." };
  return answers ? null : { why: "its words are too common or too few, or are taken for a denial or a supposition", mend: "Write it plainly, with a word that tells what is answered." };
}

function whyNotWrong({ outcome, answers }: ReplyReading): Reason | null {
  if (outcome === "incorrect") return null;
  if (answers) return { why: "it answers the question: an answer has the same words", mend: "Put what is wrong in words that no answer has." };
  return { why: "its words are too common or too few, or are taken for a denial or a supposition", mend: "Put it in other words that tell what is wrong, or leave it out." };
}
