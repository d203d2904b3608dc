import type { FindingLog } from "./finding-log.ts";
import labelsYaml from "./labels.yaml";
import { MAX_LABEL_LENGTH } from "./limits.ts";

/** What may be a speaker's label at the head of a line, to be judged against the whole file. */
export interface LabelCandidate {
  /** As written, without its colon. */
  label: string;
  /** Place of the text that follows, in the text given. */
  restAt: number;
  /** Set off from the text by more than a colon: bold, in brackets, beside a time. */
  strong: boolean;
}

interface LabelVocabulary {
  roles: string[];
  speech: string[];
  frontMatter: string[];
}

const vocabulary = labelsYaml as LabelVocabulary;
const ROLES = new Set(vocabulary.roles);
const SPEECH = new Set(vocabulary.speech.filter((entry) => !entry.endsWith("*")));
const SPEECH_STARTS = new Set(vocabulary.speech.filter((entry) => entry.endsWith("*")).map((entry) => entry.slice(0, -1)));
const FRONT_MATTER = new Set(vocabulary.frontMatter);

/** Most words of a label: "Dr Anna van Dijk (pharmacist)". */
const MOST_LABEL_WORDS = 5;
/** Share of lines with a label from which a name that stands once is believed too: every line of the file has one. */
const ALL_LABELLED = 0.8;
/** Share from which a single recurring name is believed: a file in which only one voice is labelled. */
const OFTEN_LABELLED = 0.4;

const LABEL = `[\\p{L}\\p{N}][\\p{L}\\p{N}\\p{M} .'’_#&/()-]{0,${MAX_LABEL_LENGTH - 1}}?`;
const BOLD = new RegExp(`^\\s*(\\*\\*|__)\\s*(${LABEL})\\s*(?::\\s*\\1|\\1\\s*:)\\s*`, "u");
const BRACKETED = new RegExp(`^\\s*[\\[(<]\\s*(${LABEL})\\s*[\\])>]\\s*:\\s*`, "u");
const PLAIN = new RegExp(`^\\s*(${LABEL})\\s*:(?=\\s|$|\\p{L}|["“'‘\\[(*])\\s*`, "u");
/** "[Speaker 1] hello": the only label without a colon, because nothing else reads so. */
const NUMBERED = /^\s*[[(]\s*((?:speaker|voice|person|participant)[ _-]*[\p{N}\p{L}]{1,3})\s*[\])]\s*/iu;

/** The label that the text may begin with, or null. */
export function findLabel(text: string): LabelCandidate | null {
  for (const [pattern, group, strong] of [[BOLD, 2, true], [BRACKETED, 1, true], [NUMBERED, 1, true], [PLAIN, 1, false]] as const) {
    const match = pattern.exec(text);
    const label = match?.[group]?.trim();
    if (match !== null && label !== undefined && isLabelShape(label)) return { label, restAt: match[0].length, strong };
  }
  return null;
}

/** A point within a label only shortens a title or a first name: "Dr. Lee", "J. Lee". */
const SENTENCE_END = /(?<!\b(?:dr|mr|mrs|ms|mx|prof|st|\p{L}))\.\s/iu;

/** False for what is too long, a bare number (a clock time, a ratio), or holds the end of a sentence. */
function isLabelShape(label: string): boolean {
  const words = label.split(/\s+/);
  return words.length <= MOST_LABEL_WORDS && /\p{L}/u.test(label) && !SENTENCE_END.test(label) && !/^https?$/i.test(label);
}

/** A role's word, alone or with a number or letter: believed on sight. */
export function isRoleLabel(label: string): boolean {
  const plain = label.toLowerCase().replace(/[_#.]+/g, " ").replace(/\s+/g, " ").trim();
  const bare = plain.replace(/^(the )/, "").replace(/[ -]?(?:\d{1,3}|[a-z])$/, "").trim();
  return ROLES.has(plain) || ROLES.has(bare);
}

/** What people say before a colon: "Remember:", "Step one:". */
export function isSpeechOpening(label: string): boolean {
  const plain = label.toLowerCase().replace(/[’]/g, "'").trim();
  const first = (plain.split(/[\s,]+/)[0] ?? "").replace(/\.$/, "");
  if (SPEECH.has(plain)) return true;
  // A single capital ("A:", "I:") is a label in the manner of question-and-answer transcripts, if it recurs.
  return SPEECH_STARTS.has(first) && !/^\p{Lu}\.?$/u.test(label);
}

/** Each word begins with a capital or a number, or joins names ("van", "de"). */
export function isNameLike(label: string): boolean {
  return label
    .replace(/[()_#&/-]/g, " ")
    .split(/\s+/)
    .filter((word) => word !== "")
    .every((word, at) => /^[\p{Lu}\p{Lt}\p{Lo}\p{N}'’]/u.test(word) || (at > 0 && /^(van|von|de|der|den|la|le|da|di|bin|al|the|of|no)$/.test(word)));
}

export function isFrontMatterKey(key: string): boolean {
  return FRONT_MATTER.has(key.toLowerCase().trim());
}

export interface LabelJudge {
  accepts(candidate: LabelCandidate): boolean;
  /** True when a candidate looks like a name but was judged to be speech: worth telling. */
  doubts(candidate: LabelCandidate): boolean;
  /** Whether the file has labels at all. */
  labelled: boolean;
}

/**
 * Judges candidates by the whole file. `lines` holds one entry for each line that could carry a label. A label is
 * believed when it names a role, or is set off and looks like a name, or recurs beside another or on many lines;
 * a name that stands once is believed only where every line has a label. Openings of speech never are.
 */
export function judgeLabels(lines: readonly (LabelCandidate | null)[]): LabelJudge {
  const counts = new Map<string, number>();
  for (const line of lines) if (line !== null && !isSpeechOpening(line.label)) counts.set(key(line), (counts.get(key(line)) ?? 0) + 1);
  const sure = (line: LabelCandidate): boolean => !isSpeechOpening(line.label) && (isRoleLabel(line.label) || (line.strong && isNameLike(line.label)));
  const recurs = (line: LabelCandidate): boolean => (counts.get(key(line)) ?? 0) >= 2;
  const candidates = lines.filter((line) => line !== null && !isSpeechOpening(line.label));
  const share = candidates.length / Math.max(lines.length, 1);
  const certain = new Set(candidates.filter((line) => line !== null && (sure(line) || (recurs(line) && isNameLike(line.label)))).map((line) => key(line as LabelCandidate)));
  const often = share >= OFTEN_LABELLED || certain.size >= 2;

  const accepts = (line: LabelCandidate): boolean => {
    if (isSpeechOpening(line.label)) return false;
    if (sure(line)) return true;
    if (recurs(line)) return isNameLike(line.label) ? often : share >= ALL_LABELLED;
    return isNameLike(line.label) && share >= ALL_LABELLED;
  };
  return {
    accepts,
    doubts: (line) => !isSpeechOpening(line.label) && isNameLike(line.label) && !accepts(line),
    labelled: candidates.some((line) => line !== null && accepts(line)),
  };
}

function key(candidate: LabelCandidate): string {
  return candidate.label.toLowerCase();
}

/** Says that a name-like opening was left in the speech. */
export function tellDoubt(label: LabelCandidate, line: number, log: FindingLog): void {
  log.add({
    code: "SW-T17",
    severity: "info",
    line,
    kind: "label",
    message: `"${label.label}:" was read as speech, not as a speaker's label`,
    mend: "Label every line, or write the label in bold (**Name:**), if it names a speaker.",
  });
}
