import type { ItemKind } from "../rubric/schema.ts";
import type { Station } from "../station/types.ts";
import { agreedAnswers, agreedTurns, agreedWrong } from "./agreed.ts";
import { agreedRight } from "./agreed-right.ts";
import type { PlacedPassage } from "./answered.ts";
import { patientQuestions } from "./asked.ts";
import { carriedOn } from "./carried-on.ts";
import { claimsOf } from "./claims.ts";
import type { CompiledElement, CompiledRubric } from "./compile.ts";
import { doubtfulMatches } from "./doubtful.ts";
import { candidateEarning, leftBack } from "./earning.ts";
import { afterQuestions, confirmed, sceneOf } from "./elicitation.ts";
import { readSayings } from "./learnt/by-reader.ts";
import { unsafeByReader } from "./learnt/unsafe-by-reader.ts";
import { readerMatch } from "./learnt/reader-match.ts";
import { nearestAttempts } from "./nearest.ts";
import { openReplies } from "./open-replies.ts";
import { matchOf, plainMatch } from "./passage-match.ts";
import { ACCEPTED, WRONG_ACCEPTED } from "./passages.ts";
import { affirmedWrong, patientMatches, withAgreed } from "./patient-matches.ts";
import { readPolarity } from "./polarity-gate.ts";
import { postingsOf, type Postings } from "./postings.ts";
import { putRight } from "./put-right.ts";
import { replyPassages, wrongReplies } from "./replies.ts";
import type { Response } from "./response.ts";
import { saidClauses } from "./said.ts";
import { sameElement } from "./same-element.ts";
import { streamOf, wordsOf, type Stream } from "./stream.ts";
import { teachBackMatches, tellingsBack } from "./teach-back.ts";
import { toldNotNeeded } from "./told-not-needed.ts";
import type { Match, Matches } from "./types.ts";
import { affirmedUnsafe } from "./unsafe.ts";
import { windowsFor, withoutOverlap } from "./windows.ts";
import { wrongByUnsafe } from "./wrong-by-unsafe.ts";

/** So much of a response makes a cue: it is told from other talk, not from other cues. */
const CUE_ACCEPTED = 0.6;

/** Where everything the rubric asks for was said in one station, and how sure that is. Pure. */
export function matchStation(station: Station, rubric: CompiledRubric): Matches {
  const streams = { candidate: streamOf(station, ["candidate"]), patient: streamOf(station, ["patient"]), examiner: streamOf(station, ["examiner"]) };
  const said = postingsOf(streams.candidate, rubric);
  const heard = postingsOf(streams.patient, rubric);

  const { questions, asked, fits } = patientQuestions(rubric, heard, streams.patient);
  const scene = sceneOf(station, streams, questions);
  const { all, byResponses, unsafe: stated, kept, left } = candidateEarning(rubric, said, streams.candidate);
  const placed = ({ passage, stream }: PlacedPassage): Match => matchOf(passage, stream, scene, rubric);
  const plain = kept.map((passage) => placed({ passage, stream: streams.candidate }));
  const replies = replyPassages(scene, rubric, missingFrom(plain, rubric)).map(placed);
  const telling = new Set(rubric.elements.filter(({ kind }) => kind === "tell").map(({ item }) => item));
  const found = afterQuestions(scene, [...plain, ...replies], asked, ({ item }) => telling.has(item));
  // What is said of the element elsewhere speaks for itself.
  const openly = openReplies(scene, rubric);
  found.push(...openly.right.map(placed).filter((match) => !found.some((other) => sameElement(other, match))));
  found.push(...openly.wrong.map(placed).filter((match) => !found.some((other) => sameElement(other, match))));
  const yeses = agreedTurns(scene, rubric);
  const agreed = agreedWrong(scene, rubric, yeses);
  const carried = carriedOn(scene, rubric);
  const patient = withAgreed(patientMatches(rubric, heard, scene), [...agreed.wrong, ...carried.wrong].map((passage) => ({ ...placed(passage), affirmed: true })));
  const asking = new Set(rubric.elements.filter(({ kind }) => kind === "ask").map(({ item }) => item));
  const askings = found.filter(({ item }) => asking.has(item)).map(({ span }) => span);
  found.push(...agreedAnswers(scene, rubric, new Set(missingFrom(found, rubric)), askings).map((passage): Match => ({ ...placed(passage), elicitation: "confirmed" })));
  found.push(...agreedRight(scene, yeses, new Set(missingFrom(found, rubric))).map((passage): Match => ({ ...placed(passage), elicitation: "confirmed" })));
  const missed = new Set(missingFrom(found, rubric));
  found.push(...toldNotNeeded(scene, rubric).filter(({ passage }) => missed.has(passage.element)).map((each): Match => ({ ...placed(each), elicitation: "after-question", reason: NOT_NEEDED })));
  const corrected = putRight(scene, rubric, said).filter(({ passage }) => missed.has(passage.element));
  found.push(...corrected.map(({ passage, stream, proposed, reply }): Match => ({ ...plainMatch(passage, reply, stream), elicitation: "after-question", elicitedBy: proposed })));
  const bySayings = readSayings(rubric, missingFrom(found, rubric, READ_KINDS), found.filter(({ verdict }) => verdict === "right").map(({ span }) => span), byResponses, said, streams.candidate);
  found.push(...bySayings.found.map((each) => readerMatch(each, scene, rubric)));
  const tellings = tellingsBack(scene, found, patient, rubric);
  found.push(...teachBackMatches(tellings, found, rubric));
  const doubtful = doubtfulMatches(all, found, streams.candidate);

  const unsafe = [...stated];
  for (const match of [...affirmedUnsafe(rubric, heard, scene), ...agreed.unsafe, ...carried.unsafe, ...openly.unsafe]) if (!unsafe.some((other) => other.statement === match.statement)) unsafe.push(match);
  unsafe.push(...unsafeByReader(rubric, unsafe, all, said, streams.candidate));
  found.push(...wrongByUnsafe(rubric, unsafe, found, scene));
  const answers = [...answerMatches(rubric, said, streams.candidate), ...wrongReplies(scene, rubric)];
  const nearest = nearestAttempts(rubric, all.map((passage) => leftBack(passage, left)), found, streams.candidate);
  return {
    elements: [...found, ...doubtful, ...confirmed(scene, patient), ...affirmedWrong(scene, patient, found)].sort((a, b) => a.span.first - b.span.first),
    unsafe,
    questions,
    asked,
    fits,
    cues: rubric.cues.flatMap(({ item, says }) => windowsOf(says, heard, streams.patient, CUE_ACCEPTED).map((window) => ({ item, span: wordsOf(streams.patient, window.first, window.end) }))),
    patient,
    tellings,
    nearest,
    judged: bySayings.judged.map(({ element: { item, element }, right, wrong }) => ({ item, element, right, wrong })),
    claims: claimsOf(rubric, streams.candidate, [...found, ...doubtful, ...unsafe, ...answers], nearest),
    said: saidClauses(streams.candidate, rubric),
    heard: saidClauses(streams.patient, rubric),
    answers,
  };
}

const NOT_NEEDED = "the patient asked whether it must be done, and was told no";

const TOLD: readonly ItemKind[] = ["tell"];
/** What the second reader is asked about: whether something is explained back, or asked openly, hangs on more than its words. */
const READ_KINDS: readonly ItemKind[] = ["tell", "ask", "invite-questions"];

/** Elements, of items of some kinds, that no match is of. */
function missingFrom(matches: readonly Match[], rubric: CompiledRubric, kinds: readonly ItemKind[] = TOLD): CompiledElement[] {
  const known = new Set(matches.map(({ item, element }) => `${item}/${element}`));
  return rubric.elements.filter(({ kind, item, element }) => kinds.includes(kind) && !known.has(`${item}/${element}`));
}

function windowsOf(responses: readonly Response[], postings: Postings, stream: Stream, least: number) {
  return withoutOverlap(responses.flatMap((response) => windowsFor(response, postings, stream, least)));
}

function answerMatches(rubric: CompiledRubric, postings: Postings, stream: Stream): Matches["answers"] {
  const passages = (question: string, responses: readonly Response[], verdict: "right" | "wrong", least: number) =>
    windowsOf(responses, postings, stream, least)
      .filter((window) => readPolarity(stream, window, new Set()) === "agrees")
      .map((window) => ({ question, verdict, span: wordsOf(stream, window.first, window.end), score: window.coverage }));
  return rubric.questions.flatMap(({ question, answer, incorrect }) => [...passages(question, answer, "right", ACCEPTED), ...passages(question, incorrect, "wrong", WRONG_ACCEPTED)]);
}
