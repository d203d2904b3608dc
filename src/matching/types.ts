import type { QuantityMention } from "../language/quantity.ts";
import type { WordSpan } from "../station/types.ts";

/** A gate that can close on words that otherwise fit. */
export type Gate = "polarity" | "quantity" | "speech-act" | "speaker" | "must" | "not-with" | "played-down" | "aside" | "faulted" | "contradicted" | "direction" | "rule" | "others" | "look-alike" | "unsafe-words" | "sound-alike" | "turned";

/** What a passage does to an element of the rubric. */
export type Verdict =
  /** Says it rightly. */
  | "right"
  /** Says it wrongly: denied, a wrong number, or one of the element's incorrect statements. */
  | "wrong"
  /** Right in another country, not by this station's guidance. */
  | "elsewhere"
  /** Cannot be told from the words: garbled, a sound-alike that changes the meaning. */
  | "unclear"
  /** Pointed at or shown, not said ("like this, you see"). */
  | "shown";

/** What a saying does to an element, by both readers: how likely each is, 0 to 1. The rest is that it does not speak of it. */
export interface Judgement {
  right: number;
  wrong: number;
}

/** How it came to be said: the design's second axis. */
export type Elicitation = "offered" | "after-question" | "prompted" | "confirmed";

/** One place where an element was (or may have been) said. */
export interface Match {
  item: string;
  element: string;
  verdict: Verdict;
  /** Word positions of the transcript that carry it. */
  span: WordSpan;
  /** The whole clauses that the span stands in. */
  clause: WordSpan;
  /** The word, before the span, where the denial begins that it stands under. */
  deniedFrom?: number;
  /** 0 to 1: how much of the best acceptable response the words cover, by weight. Informs, never earns. */
  score: number;
  /** 0 to 1, calibrated: the chance that a careful reader gives the same verdict. */
  confidence: number;
  /** Where the recogniser doubts words that carry it: how far they were heard, 0 to 1. The confidence is less by as much. */
  heard?: number;
  /** What the confidence was read from (matching/confidence.ts). */
  signs: number[];
  elicitation: Elicitation;
  /** The patient's words that were confirmed or that asked or prompted. */
  elicitedBy?: WordSpan;
  /** The number said, where the element has one. */
  quantity?: QuantityMention;
  /** The acceptable (or incorrect) response that fitted best, as written in the rubric. */
  response: string;
  /** Why the verdict is not plainly right: one clause for the sheet. */
  reason?: string;
  /** Said wrongly, and taken back at once: a slip that stands against nobody. */
  takenBack?: boolean;
  /** Of the patient's: wrong, and the candidate said yes to it. */
  affirmed?: true;
}

/** A statement of the rubric's unsafe list, found. */
export interface UnsafeMatch {
  statement: string;
  span: WordSpan;
  score: number;
  confidence: number;
  /** `unclear` when only a sound-alike makes it unsafe: to be listened to, never counted. */
  verdict: "unsafe" | "unclear";
  response: string;
  /** Where the candidate took it back. */
  correctedBy?: WordSpan;
}

/** One of the patient's scripted questions, asked. */
export interface QuestionMatch {
  question: string;
  span: WordSpan;
  score: number;
}

/** A passage that was tried for an element and why it did not count: what `explain` prints. */
export interface Attempt {
  item: string;
  element: string;
  span: WordSpan;
  score: number;
  response: string;
  /** Terms of the response that were found, each with the words that carry it. */
  aligned: { term: string; words: WordSpan }[];
  missing: string[];
  closed: Gate[];
  /** Where the recogniser doubts words of the passage: how far they were heard, 0 to 1. */
  heard?: number;
}

/** What the patient tells back of what was taught. */
export interface Telling {
  /** The candidate's request. */
  request: WordSpan;
  /** All that the patient said in reply. */
  answer: WordSpan;
  /** How many elements it is known by. */
  elements: number;
}

/** A word that carries something of what was said. */
export interface SaidWord {
  /** What it stands for: its stem, the set of words that are the same by the lexicon, or `#10` for a number. */
  sense: string;
  /** 0 to 1: how much it says (language/lexicon/weights.yaml). */
  weight: number;
  /** Position in `Transcript.words`. */
  word: number;
  number: boolean;
  denies: boolean;
  /** It stands for one of the weighty words of what the rubric asks for. */
  asked: boolean;
}

/** A clause of one role's talk, whatever the rubric has to say of it. */
export interface SaidClause extends WordSpan {
  /** Place among the role's turns, and among its sentences. */
  turn: number;
  sentence: number;
  /** Any of it asks. */
  asks: boolean;
  /** All words, as the matcher reads them. */
  texts: string[];
  words: SaidWord[];
}

/** All that matching finds in one station. Word positions are those of the transcript. */
export interface Matches {
  elements: Match[];
  unsafe: UnsafeMatch[];
  questions: QuestionMatch[];
  /** Questions of the patient, scripted or not, in order. */
  asked: WordSpan[];
  /** How well scripted questions fit what the patient asks, best first; the same stretch and the same question may stand there several times. */
  fits: QuestionMatch[];
  /** Items whose cue the patient delivered. */
  cues: { item: string; span: WordSpan }[];
  /** What the patient says about elements, rightly or wrongly: for teach-back and confirmation. */
  patient: Match[];
  /** Where the patient, asked, tells back several things that were taught. */
  tellings: Telling[];
  /** For each element that was not found, the passage that came nearest. */
  nearest: Attempt[];
  /** For each element that the second reader knows, how likely the likeliest saying says it rightly, and wrongly, by both readers. */
  judged: (Judgement & { item: string; element: string })[];
  /** Clauses of the candidate that state a number which belongs to nothing above. */
  claims: WordSpan[];
  /** All that the candidate said, in order, and all that the patient did. */
  said: SaidClause[];
  heard: SaidClause[];
  /** Passages of the scripted questions' own answers. */
  answers: { question: string; verdict: "right" | "wrong"; span: WordSpan; score: number }[];
}
