import type { Finding } from "../problem/problem.ts";
import type { Elicitation } from "../matching/types.ts";
import type { Severity } from "../rubric/schema.ts";
import type { Role } from "../station/types.ts";
import type { Seconds, TranscriptFormat } from "../transcript/types.ts";

/** First axis of a mark. `not-offered` and `not-applicable` leave the denominator; so does `cannot-tell`, which makes the result provisional. */
export type Content = "complete" | "partial" | "incorrect" | "absent" | "cannot-tell" | "not-offered" | "not-applicable";

/** Words `first` up to, not including, `end` of the transcript, ready to be shown and played. */
export interface Evidence {
  first: number;
  end: number;
  /** The speaker's words as written; an ellipsis stands for what somebody else said in between. */
  quote: string;
  /** The same speaker's words right before and after, where the quote alone has too few to tell anything. */
  before?: string;
  after?: string;
  line: number;
  start: Seconds | null;
  endTime: Seconds | null;
  /** True when the times are interpolated. */
  estimated: boolean;
  /** Set when `start` is the file's own all the same: only the words behind it are interpolated. */
  startGiven?: true;
  role: Role;
}

export interface ElementResult {
  id: string;
  label: string;
  content: "complete" | "incorrect" | "absent" | "cannot-tell";
  elicitation: Elicitation | null;
  evidence: Evidence[];
  confidence: number;
  /** One clause where the words alone do not say it: "said 30 minutes, the rubric has 30 seconds". */
  reason?: string;
}

export interface ItemResult {
  id: string;
  section: string;
  label: string;
  critical: boolean;
  weight: number;
  content: Content;
  elicitation: Elicitation | null;
  /** 0 to `weight`. */
  earned: number;
  /** Enough elements for a pass of this item. */
  met: boolean;
  elements: ElementResult[];
  confidence: number;
  /** A person should listen: the mark is unsure. */
  listen: boolean;
  /** Earlier slips put right, a value that differs from this station's guidance, what came after the limit. */
  remarks: string[];
  /** When it was first said, for the order and for time by section. */
  firstSaid: Evidence | null;
  /** How elements came about for which the rubric gives less than full credit; left out where it gives full. */
  reduced?: Elicitation[];
  /** A person overruled the mark: by whom, when, and the mark that the tool gave. The elements are the tool's. */
  overruled?: { by: string; when: string; tool: ToolMark };
}

/** A mark of the tool's own that a person overruled. */
export interface ToolMark {
  content: Content;
  elicitation: Elicitation | null;
  earned: number;
  met: boolean;
  confidence: number;
}

/** Where a person heard it: as the sheet and its reports name places. */
export type HeardAt = { time: Seconds } | { /** Of the transcript, 1-based. */ line: number };

/** One line of the audit: of an item, or of an unsafe statement that a person says was or was not said. */
export type CorrectionResult = { label: string; by: string; when: string; why: string; /** Of the corrections file. */ line: number } & (
  | { item: string; content: Content; earned: number; met: boolean; weight: number; said?: string[]; tool: ToolMark }
  | { unsafe: string; content: "said" | "absent"; /** Of what was said. */ at?: HeardAt; corrected?: boolean; tool: { /** Places where the tool found it. */ found: number; /** Of them, those neither put right nor left to a listener. */ standing: number } }
);

export interface SectionResult {
  id: string;
  title: string;
  earned: number;
  available: number;
  /** Per cent; null when nothing in it counts. */
  coverage: number | null;
  /** Seconds of the candidate's talk on it; null without times. */
  seconds: Seconds | null;
}

export interface StatementResult {
  id: string;
  label: string;
  severity: Severity;
  evidence: Evidence;
  confidence: number;
  /** Put right before the station ended: listed, not counted. */
  corrected: boolean;
  /** Rests on a sound-alike: to be listened to, not counted. */
  listen: boolean;
  /** A person heard it, there; the evidence is what the transcript has near by. */
  overruled?: { by: string; when: string; at: HeardAt };
}

export interface IncorrectResult {
  item: string;
  element: string;
  label: string;
  evidence: Evidence;
  reason: string;
  corrected: boolean;
  confidence: number;
}

export interface ClaimResult {
  /** A statement with a number that no element of the rubric covers: for the coach. */
  evidence: Evidence;
}

export interface QuestionResult {
  id: string;
  /** A scripted wording in ordinary words; of a question that the rubric does not script, the patient's own. */
  label: string;
  asked: Evidence | null;
  answer: "answered" | "incorrect" | "deferred" | "ignored" | "cannot-tell" | "not-asked";
  evidence: Evidence | null;
  /** False for a question the patient asked that the rubric does not script. */
  scripted: boolean;
}

export interface TeachBackResult {
  asked: Evidence | null;
  answered: Evidence | null;
  /** What the patient repeated wrongly. */
  errors: { evidence: Evidence; label: string; noticed: Evidence | null; corrected: Evidence | null }[];
}

export interface OrderResult {
  /** Pairs said the wrong way round. */
  broken: { first: string; then: string; severity: Severity; reason: string; firstSaid: Evidence; thenSaid: Evidence }[];
  /** Items said in the rubric's order (longest increasing subsequence) over items said; null below two items. */
  inOrder: { longest: number; said: number } | null;
}

export interface RepeatResult {
  label: string;
  firstSaid: Evidence;
  again: Evidence;
  /** Null without times. */
  seconds: Seconds | null;
  words: number;
}

/** Talk of the candidate's that is not the station's business, to be looked at by a person. */
export interface AsideResult {
  evidence: Evidence;
  words: number;
  /** Null without times. */
  seconds: Seconds | null;
}

/** A figure that may be not measurable, and why. */
export type Measured<T> = { value: T; estimated: boolean } | { value: null; why: string };

export interface TimeResult {
  limit: Seconds;
  target: Seconds;
  /** Station start to end. */
  used: Measured<Seconds>;
  /** Positive when over. */
  overTarget: Measured<Seconds>;
  overLimit: Measured<Seconds>;
  /** Candidate's words over the whole station time. */
  wordsPerMinute: Measured<number>;
  /** Candidate's words over the candidate's own talking time. */
  articulation: Measured<number>;
  /** Candidate's words a minute, window by window. */
  curve: { from: Seconds; to: Seconds; wordsPerMinute: number }[];
  candidateWords: number;
  patientWords: number;
  /** Patient's words over candidate's and patient's together, 0 to 1. */
  patientShare: number | null;
  pauses: Measured<{ count: number; seconds: Seconds; longest: { at: Seconds; seconds: Seconds }[] }>;
  fillers: { count: number; perHundredWords: number | null; commonest: { word: string; count: number }[] };
  technicalWords: { word: string; evidence: Evidence; plain: string }[];
  /** Flesch-Kincaid grade of the candidate's speech. */
  readingGrade: Measured<number>;
  /** What the candidate said after the limit. */
  afterLimit: { evidence: Evidence[]; words: number; items: string[] } | null;
}

export interface TimePlan {
  /** What each costs, in seconds and words; null seconds without times. */
  costs: { what: "repeats" | "fillers" | "asides" | "pauses"; words: number; seconds: Seconds | null }[];
  /** Station time without them. */
  projected: Measured<Seconds>;
  /** Words to leave out at the present pace to meet the target; 0 when it is met. */
  wordsToCut: Measured<number>;
  /** The pace that would meet the target with all words kept; null value when it is met already. */
  paceNeeded: Measured<number>;
  /** Said when the pace needed is faster than people follow, with its source. */
  caution: string | null;
}

export interface Change {
  /** One instruction: "Say how long to hold the breath (10 seconds) before the first dose." */
  advice: string;
  /** Why it is worth it: marks, a critical item, seconds. */
  worth: string;
  item?: string;
}

export type Outcome = "pass" | "fail" | "provisional" | "not-decided";

export interface MarkSheet {
  form: "saidwell/mark-sheet@1";
  version: string;
  candidate: string | null;
  transcript: {
    file: string;
    format: TranscriptFormat;
    words: number;
    timing: "word" | "segment" | "none";
    duration: Seconds | null;
  };
  rubric: { id: string; title: string; version: number; hash: string; file: string };
  scenario: { task: string; counselled: "patient" | "carer" };
  station: {
    start: { time: Seconds | null; line: number; reason: string; confidence: number };
    end: { time: Seconds | null; line: number; reason: string; confidence: number };
    restarts: number;
    roles: { role: Role; words: number; confidence: number }[];
    roleSource: "labels" | "model" | "told" | "mixed";
    labelRoles: { label: string; role: Role; confidence: number }[];
  };
  items: ItemResult[];
  /** Marks that a person overruled, and the file that says so; null when none was. Totals and result are computed from them. */
  corrections: { file: string; applied: CorrectionResult[] } | null;
  sections: SectionResult[];
  total: { earned: number; available: number; percent: number | null; provisional: boolean };
  /** `doubted`: those of `missed` that listening may well find said, which fail nobody by themselves. */
  critical: { total: number; met: number; missed: string[]; doubted: string[]; unsure: string[] };
  /** `statements`: all that the rubric lists; sheets of earlier versions do not have it. */
  unsafe: { listed: number; statements?: { id: string; label: string; severity: Severity }[]; found: StatementResult[] };
  incorrect: IncorrectResult[];
  differs: IncorrectResult[];
  claims: ClaimResult[];
  questions: QuestionResult[];
  teachBack: TeachBackResult;
  order: OrderResult;
  repeats: RepeatResult[];
  asides: AsideResult[];
  time: TimeResult;
  plan: TimePlan;
  changes: Change[];
  result: { outcome: Outcome; reasons: string[]; rule: string };
  /** Repairs and guesses of the transcript and the station, in order. */
  findings: Finding[];
  caution: string;
}
