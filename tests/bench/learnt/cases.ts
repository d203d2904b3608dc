import { compiledRubric } from "../../../src/mark.ts";
import { besideOf, turnedBy } from "../../../src/matching/beside.ts";
import type { CompiledRubric } from "../../../src/matching/compile.ts";
import { candidateEarning } from "../../../src/matching/earning.ts";
import { aloneSigns, isAsked, LEAST_ABOUT } from "../../../src/matching/learnt/by-reader.ts";
import { asksOnly, learntReading, type Company, type ReadSaying } from "../../../src/matching/learnt/reading.ts";
import { holdsHalf, inCommon } from "../../../src/matching/learnt/sayings.ts";
import { numberSigns } from "../../../src/matching/learnt/number-by-reader.ts";
import { heldSigns, turnedSigns, type Weighed } from "../../../src/matching/learnt/second-reading.ts";
import { counts } from "../../../src/matching/likelihood.ts";
import { matchStation } from "../../../src/matching/match.ts";
import type { Passage } from "../../../src/matching/passages.ts";
import { postingsOf } from "../../../src/matching/postings.ts";
import { wrongNumberIn } from "../../../src/matching/quantity-gate.ts";
import { streamOf, wordsOf, type Stream } from "../../../src/matching/stream.ts";
import type { UnsafeMatch } from "../../../src/matching/types.ts";
import { oppositesOf, statedSigns, unsafeSigns } from "../../../src/matching/learnt/unsafe-by-reader.ts";
import { isStatementKey, statementKey } from "../../../src/rubric/learnt.ts";
import type { Learnt } from "../../../src/rubric/schema.ts";
import { toldStation, type ToldTurn } from "../../../src/station/told.ts";
import { rubricNamed, type Passage as LabelledPassage } from "../match/passages.ts";
import type { Talk } from "../match/talk.ts";

export type Truth = "right" | "wrong" | "absent";

/** What the curves are fitted on: the signs that the program sees, and what people say. */
export interface Case {
  /** `turned`: a passage that fits. `held`: one that is held against the speaker. `alone`: a saying that no passage stands in. `number`: a saying that tells a number which is not the element's. `unsafe`: a saying and an unsafe statement; `wrong` if it states that. `stated`: a statement found in the rubric's words. */
  kind: "turned" | "held" | "alone" | "number" | "unsafe" | "stated";
  signs: number[];
  company: Company;
  truth: Truth;
  /** The signs of the passage that fits: only if it is dropped, the saying stands alone. */
  unlessFits?: Weighed;
}

/** So much of a sentence and of a saying must be common before the one speaks for the other. */
const COMMON = 0.6;

/** Cases of one labelled passage: of the saying that says most of its element. */
export function casesOfPassage({ rubric, item, element, turns, label }: LabelledPassage, learnt: Learnt): Case[] {
  if (label === "unclear") return [];
  const seen = look(rubric, turns, learnt);
  const key = `${item}/${element}`;
  const place = seen.reading.placeOf(key);
  if (place === undefined) return [];
  const strength = ({ readings }: ReadSaying) => readings[place]!.about + Math.abs(readings[place]!.turned);
  const saying = [...seen.reading.sayings].sort((a, b) => strength(b) - strength(a))[0];
  return saying === undefined ? [] : casesAt(saying, key, place, label, seen);
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

/** Cases of a whole annotated station: of every saying and every element. */
export function casesOfTalk({ rubric, turns, sentences, elements }: Talk, learnt: Learnt): Case[] {
  const seen = look(rubric, turns, learnt);
  const found = new Set(seen.matched);
  const unsafe = unsafeCases(seen, (statement) => (sentences.some((one) => one.unsafe.includes(statement)) ? "wrong" : "right"));
  return [...unsafe, ...seen.reading.sayings.flatMap((saying) => {
    const words = wordsOf(seen.stream, saying.first, saying.end);
    const inside = sentences.filter((one) => inCommon(one, words) >= COMMON * Math.min(one.end - one.first, words.end - words.first));
    return seen.keys.flatMap((key) => {
      const place = seen.reading.placeOf(key)!;
      const [right, wrong] = [inside.some(({ says }) => says.includes(key)), inside.some((one) => one.wrong.includes(key))];
      if (right && wrong) return [];
      const truth: Truth = wrong ? "wrong" : right ? "right" : "absent";
      if (truth === "absent" && saying.readings[place]!.about < LEAST_ABOUT) return [];
      return casesAt(saying, key, place, truth, seen).filter(({ kind, unlessFits }) => {
        // What is found anyway is not looked for; what is said elsewhere takes no harm from a passage too many.
        if (kind === "alone") return unlessFits !== undefined || !found.has(key);
        return kind === "held" || kind === "number" || truth !== "absent" || elements.get(key)?.said !== true;
      });
    });
  })];
}

interface Seen {
  rubric: CompiledRubric;
  stream: Stream;
  passages: readonly Passage[];
  /** Unsafe statements found in the rubric's words. */
  told: readonly UnsafeMatch[];
  reading: NonNullable<ReturnType<typeof learntReading>>;
  /** Elements that something was learnt about. */
  keys: string[];
  /** Elements that the responses alone find. */
  matched: string[];
}

/** The responses judge as if nothing had been learnt. */
function look(name: string, turns: readonly ToldTurn[], learnt: Learnt): Seen {
  const bare = { ...compiledRubric(rubricNamed(name)), learnt: null };
  const station = toldStation([...turns], name);
  const stream = streamOf(station, ["candidate"]);
  const { all, unsafe: told } = candidateEarning(bare, postingsOf(stream, bare), stream);
  const rubric = { ...bare, learnt };
  return { rubric, stream, passages: all, told, reading: learntReading(rubric, stream)!, keys: Object.keys(learnt.elements).filter((key) => !isStatementKey(key)), matched: matchStation(station, bare).elements.map(({ item, element }) => `${item}/${element}`) };
}

function casesAt(saying: ReadSaying, key: string, place: number, truth: Truth, { rubric, stream, passages, reading }: Seen): Case[] {
  const own = passages.filter(({ element }) => `${element.item}/${element.element}` === key);
  const here = own.filter((passage) => holdsHalf(saying, passage));
  const likeliest = (chosen: Passage[]) => chosen.sort((a, b) => (b.likelihood ?? 0) - (a.likelihood ?? 0))[0];
  const right = likeliest(here.filter((passage) => passage.verdict === "right" && counts(passage)));
  const held = likeliest(here.filter(({ verdict }) => verdict === "wrong"));
  const cases: Case[] = [];
  // What asks tells nothing, and what tells asks nothing: the program does not look for it there.
  const element = rubric.elements.find((one) => `${one.item}/${one.element}` === key)!;
  const mayStandAlone = asksOnly(saying, stream) === isAsked(element);
  const add = (kind: Case["kind"], weighed: Weighed | null, unlessFits?: Weighed) => {
    if (weighed !== null && (kind !== "alone" || mayStandAlone)) cases.push({ kind, ...weighed, truth, ...(unlessFits === undefined ? {} : { unlessFits }) });
  };
  if (right !== undefined) {
    const fits = turnedSigns(right, turnedBy(besideOf(right, stream, rubric.elements)), rubric, stream);
    add("turned", fits);
    const dropped = own.map((passage) => (passage.verdict === "right" && passage.closed.length === 0 ? { ...passage, closed: ["turned" as const] } : passage));
    if (fits !== null && held === undefined) add("alone", { company: saying.company, signs: aloneSigns(saying, place, dropped, reading) }, fits);
  }
  if (held !== undefined) add("held", heldSigns(held, rubric, stream));
  const number = asksOnly(saying, stream) ? null : wrongNumberIn(stream, saying, element);
  if (number !== null) add("number", { company: saying.company, signs: numberSigns(number, element, saying, place, own, rubric, reading) });
  if (right === undefined && held === undefined) add("alone", { company: saying.company, signs: aloneSigns(saying, place, own, reading) });
  return cases;
}
