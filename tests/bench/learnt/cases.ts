import { compiledRubric } from "../../../src/mark.ts";
import { candidateEarning } from "../../../src/matching/earning.ts";
import { LEAST_ABOUT } from "../../../src/matching/learnt/by-reader.ts";
import { readByBoth, type ReadByBoth } from "../../../src/matching/learnt/read-by-both.ts";
import { signsOf } from "../../../src/matching/learnt/saying-signs.ts";
import type { Company, ReadSaying } from "../../../src/matching/learnt/reading.ts";
import { holdsHalf, inCommon } from "../../../src/matching/learnt/sayings.ts";
import { postingsOf } from "../../../src/matching/postings.ts";
import { streamOf, wordsOf } from "../../../src/matching/stream.ts";
import type { UnsafeMatch } from "../../../src/matching/types.ts";
import { oppositesOf, statedSigns, unsafeSigns } from "../../../src/matching/learnt/unsafe-by-reader.ts";
import { isStatementKey, statementKey } from "../../../src/rubric/learnt-keys.ts";
import type { Learnt } from "../../../src/rubric/schema.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";
import { rubricNamed, type Passage as LabelledPassage } from "../match/passages.ts";
import type { Talk } from "../match/talk.ts";

export type Truth = "right" | "wrong" | "absent";

/** What the curves are fitted on: the signs that the program sees, and what people say. */
export interface Case {
  /** `said`: a saying and an element. `unsafe`: a saying and an unsafe statement; `wrong` if it states that. `stated`: a statement found in the rubric's words. */
  kind: "said" | "unsafe" | "stated";
  signs: number[];
  company: Company;
  truth: Truth;
}

/** So much of a sentence and of a saying must be common before the one speaks for the other. */
const COMMON = 0.6;

/** The case of one labelled passage: of the saying that says most of its element. */
export function casesOfPassage({ rubric, item, element, turns, label }: LabelledPassage, learnt: Learnt): Case[] {
  if (label === "unclear") return [];
  const seen = look(rubric, turns, learnt);
  const key = `${item}/${element}`;
  const place = seen.reading.placeOf(key);
  if (place === undefined) return [];
  const strength = ({ readings }: ReadSaying) => readings[place]!.about + Math.abs(readings[place]!.turned);
  const saying = [...seen.reading.sayings].sort((a, b) => strength(b) - strength(a))[0];
  return saying === undefined ? [] : [caseAt(saying, key, place, label, seen)];
}

/** Cases of one saying of the drills and all unsafe statements. @param unsafe the one that it states, if any. */
export function casesOfUnsafe(rubric: string, says: string, unsafe: string | null, learnt: Learnt): Case[] {
  const seen = look(rubric, [{ role: "candidate", says }], learnt);
  // What states one may state another one too.
  return unsafeCases(seen, (statement) => (statement === unsafe ? "wrong" : unsafe === null ? "right" : null));
}

/** Of each statement the saying that states it most. */
function unsafeCases({ rubric, stream, told, reading }: Seen, truthOf: (statement: string) => Truth | null): Case[] {
  const stated = told.flatMap((match): Case[] => {
    const truth = truthOf(match.statement);
    const signs = truth === null ? null : statedSigns(match, rubric, stream);
    return signs === null ? [] : [{ kind: "stated", ...signs, truth: truth! }];
  });
  return [...stated, ...rubric.unsafe.flatMap((statement): Case[] => {
    const place = reading.placeOf(statementKey(statement.statement));
    const truth = truthOf(statement.statement);
    if (place === undefined || truth === null) return [];
    const most = [...reading.sayings].sort((a, b) => b.readings[place]!.about - a.readings[place]!.about)[0];
    return most === undefined ? [] : [{ kind: "unsafe", signs: unsafeSigns(most, place, oppositesOf(statement, reading)), company: most.company, truth }];
  })];
}

/** Cases of a whole annotated station: of every saying and every element that it is somewhat about, or that a response fits there. */
export function casesOfTalk({ rubric, turns, sentences }: Talk, learnt: Learnt): Case[] {
  const seen = look(rubric, turns, learnt);
  const unsafe = unsafeCases(seen, (statement) => (sentences.some((one) => one.unsafe.includes(statement)) ? "wrong" : "right"));
  return [...unsafe, ...seen.reading.sayings.flatMap((saying) => {
    const words = wordsOf(seen.stream, saying.first, saying.end);
    const inside = sentences.filter((one) => inCommon(one, words) >= COMMON * Math.min(one.end - one.first, words.end - words.first));
    return seen.keys.flatMap((key) => {
      const place = seen.reading.placeOf(key)!;
      const [right, wrong] = [inside.some(({ says }) => says.includes(key)), inside.some((one) => one.wrong.includes(key))];
      if (right && wrong) return [];
      const fits = (seen.passagesOf.get(elementOf(key, seen)) ?? []).some((passage) => holdsHalf(saying, passage) && (passage.likelihood ?? 0) >= UNLIKELY);
      if (saying.readings[place]!.about < LEAST_ABOUT && !fits) return [];
      return [caseAt(saying, key, place, wrong ? "wrong" : right ? "right" : "absent", seen)];
    });
  })];
}

/** What is less likely the program would not look at twice. */
const UNLIKELY = 0.05;

interface Seen extends ReadByBoth {
  /** Unsafe statements found in the rubric's words. */
  told: readonly UnsafeMatch[];
  /** Elements that something was learnt about. */
  keys: string[];
}

/** The responses judge as if nothing had been learnt. */
function look(name: string, turns: readonly ToldTurn[], learnt: Learnt): Seen {
  const bare = { ...compiledRubric(rubricNamed(name)), learnt: null };
  const stream = streamOf(toldStation([...turns], name), ["candidate"]);
  const { byResponses, unsafe: told } = candidateEarning(bare, postingsOf(stream, bare), stream);
  return { ...readByBoth({ rubric: { ...bare, learnt }, stream, passages: byResponses })!, told, keys: Object.keys(learnt.elements).filter((key) => !isStatementKey(key)) };
}

function caseAt(saying: ReadSaying, key: string, place: number, truth: Truth, seen: Seen): Case {
  return { kind: "said", company: saying.company, truth, signs: signsOf(saying, elementOf(key, seen), place, seen) };
}

const elementOf = (key: string, { rubric }: Seen) => rubric.elements.find(({ item, element }) => `${item}/${element}` === key)!;
